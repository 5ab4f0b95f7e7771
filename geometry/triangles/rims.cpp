// SPDX-License-Identifier: Apache-2.0
#include "geometry/triangles/rims.hpp"

namespace quoin::geometry {
namespace {

constexpr std::uint32_t none = Triangle::none;

}  // namespace

std::vector<Surface> surfaces(const NodedTriangles& nodes, const Per<SpaceId, SpaceId>& air) {
  const auto air_at = [&](std::uint32_t b) {
    return nodes.borders[b].space ? air[*nodes.borders[b].space] : SpaceId();
  };
  std::vector<std::uint32_t> starting(nodes.corners, none), ending(nodes.corners, none);
  for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
    starting[nodes.borders[b].node[0]] = b;
    ending[nodes.borders[b].node[2]] = b;
  }
  std::vector<char> used(nodes.borders.size(), 0);
  std::vector<Surface> result;
  const auto walk = [&](std::uint32_t first) {
    Surface surface{air_at(first), false, {}, {0.0}};
    for (std::uint32_t b = first; used[b] == 0 && air_at(b) == surface.air;
         b = starting[nodes.borders[b].node[2]]) {
      used[b] = 1;
      const Border& border = nodes.borders[b];
      for (std::size_t half = 0; half < 2; ++half) {
        surface.faces.push_back({*border.space, nodes.elements[border.element].region,
                                 border.node[half], border.node[half + 1], border.length / 2,
                                 border.facing});
        surface.along.push_back(surface.along.back() + border.length / 2);
      }
    }
    surface.closed = surface.faces.back().to == surface.faces.front().from;
    result.push_back(std::move(surface));
  };
  for (const bool open : {true, false}) {  // open surfaces first, from where they begin
    for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
      if (used[b] != 0 || !air_at(b).valid()) continue;
      if (!open || air_at(ending[nodes.borders[b].node[0]]) != air_at(b)) walk(b);
    }
  }
  return result;
}

}  // namespace quoin::geometry
