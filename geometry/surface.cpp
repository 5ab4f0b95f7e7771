// SPDX-License-Identifier: Apache-2.0
#include "geometry/surface.hpp"

#include <cmath>
#include <map>
#include <optional>

namespace quoin::geometry {
namespace {

std::optional<Face> face_between(const Fill& left, const Fill& right, std::size_t from,
                                 std::size_t to, double length, Facing facing) {
  const auto* region = std::get_if<RegionId>(&left);
  const auto* space = std::get_if<SpaceId>(&right);
  if (region == nullptr || space == nullptr) return std::nullopt;
  return Face{*space, *region, from, to, length, facing};
}

/// Positive where walking b after a turns left.
double turn(const Mesh& mesh, const Face& a, const Face& b) {
  const Point p = mesh.place(a.from), q = mesh.place(a.to), r = mesh.place(b.to);
  return (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x);
}

}  // namespace

std::vector<Face> faces(const Mesh& mesh) {
  std::vector<Face> all;
  const auto add = [&all](const std::optional<Face>& face) {
    if (face) all.push_back(*face);
  };
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const Cell& here = mesh.cell(i, j);
      if (j > 0) {  // the edge to the cell below
        const Cell& below = mesh.cell(i, j - 1);
        const std::size_t west = mesh.node(i, j), east = mesh.node(i + 1, j);
        const double length = mesh.x[i + 1] - mesh.x[i];
        add(face_between(here.below, below.above, west, east, length, Facing::down));
        add(face_between(below.above, here.below, east, west, length, Facing::up));
      }
      if (i > 0) {  // the edge to the cell on the left
        const Cell& left = mesh.cell(i - 1, j);
        const std::size_t south = mesh.node(i, j), north = mesh.node(i, j + 1);
        const double length = mesh.y[j + 1] - mesh.y[j];
        add(face_between(left.below, here.below, south, north, length, Facing::sideways));
        add(face_between(here.below, left.below, north, south, length, Facing::sideways));
      }
    }
  }
  return all;
}

std::vector<Surface> surfaces(const Mesh& mesh, const Per<SpaceId, SpaceId>& air) {
  const std::vector<Face> all = faces(mesh);
  const std::size_t none = all.size();
  std::vector<char> used(all.size());
  std::multimap<std::pair<SpaceId, std::size_t>, std::size_t> leaving;  // (air, node) -> face
  std::multimap<std::pair<SpaceId, std::size_t>, std::size_t> arriving;
  for (std::size_t f = 0; f < all.size(); ++f) {
    leaving.insert({{air[all[f].space], all[f].from}, f});
    arriving.insert({{air[all[f].space], all[f].to}, f});
  }

  std::vector<Surface> result;
  const auto walk = [&](std::size_t first) {
    Surface surface{air[all[first].space], false, {}, {0.0}};
    for (std::size_t f = first; f != none;) {
      used[f] = 1;
      surface.faces.push_back(all[f]);
      surface.along.push_back(surface.along.back() + all[f].length);
      const Face& here = all[f];
      f = none;
      const auto [begin, end] = leaving.equal_range({surface.air, here.to});
      for (auto next = begin; next != end; ++next) {  // hug the material: the leftmost way on
        if (used[next->second] != 0) continue;
        if (f == none || turn(mesh, here, all[next->second]) > turn(mesh, here, all[f])) {
          f = next->second;
        }
      }
    }
    surface.closed = surface.faces.back().to == surface.faces.front().from;
    result.push_back(std::move(surface));
  };
  for (std::size_t f = 0; f < all.size(); ++f) {  // open surfaces first: from where none arrives
    if (used[f] == 0 && arriving.count({air[all[f].space], all[f].from}) == 0) walk(f);
  }
  for (std::size_t f = 0; f < all.size(); ++f) {
    if (used[f] == 0) walk(f);
  }
  return result;
}

}  // namespace quoin::geometry
