// SPDX-License-Identifier: Apache-2.0
#include "geometry/surface.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <numbers>
#include <numeric>
#include <utility>

namespace quoin::geometry {
namespace {

/// Positive where walking b after a turns left.
double turn(const Mesh& mesh, const Face& a, const Face& b) {
  const Point p = mesh.place(a.from), q = mesh.place(a.to), r = mesh.place(b.to);
  return (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x);
}

/// Whether a slope is nearer than 30 degrees to the upright, so that heat crosses it sideways.
/// Source: ISO 6946 (memory).
bool is_steep(Point a, Point b) {
  return std::abs(b.x - a.x) < std::abs(b.y - a.y) * std::numbers::inv_sqrt3;
}

/// How much longer the true edge is than the face between two nodes that stands for it.
double lengthening(const Mesh& mesh, std::size_t from, std::size_t to) {
  if (mesh.section.lengthening.empty()) return 1.0;
  // The stretch of the section that the face is part of: the lines at or before and at or after it.
  const auto stretch = [&](std::size_t a, std::size_t b, const std::vector<double>& nodes,
                           const std::vector<double>& lines) {
    const double low = std::min(nodes[a], nodes[b]), high = std::max(nodes[a], nodes[b]);
    const auto first = std::upper_bound(lines.begin(), lines.end(), low) - lines.begin() - 1;
    const auto last = std::lower_bound(lines.begin(), lines.end(), high) - lines.begin();
    return std::pair{static_cast<std::size_t>(first), static_cast<std::size_t>(last)};
  };
  const std::size_t nx = mesh.nx();
  const auto [west, east] = stretch(from % nx, to % nx, mesh.x, mesh.section.x);
  const auto [south, north] = stretch(from / nx, to / nx, mesh.y, mesh.section.y);
  const bool rising = (from % nx < to % nx) == (from / nx < to / nx);
  const Crossing one = {west, rising || south == north ? south : north};
  const Crossing other = {east, rising || south == north ? north : south};
  const auto known = mesh.section.lengthening.find(std::minmax(one, other));
  return known != mesh.section.lengthening.end() ? known->second : 1.0;
}

/// The cells of a mesh that may face the one before them, or that are divided. Cut from one cell of
/// the section, undivided, are two that cannot.
class CellsThatFace {
 public:
  explicit CellsThatFace(const Mesh& mesh) : mesh_(mesh), all_(mesh.columns()) {
    std::iota(all_.begin(), all_.end(), std::size_t{0});
    for (const std::size_t i : all_) {
      if (begins(mesh.section_column, i)) first_.push_back(i);
    }
  }

  /// Columns, ascending.
  [[nodiscard]] const std::vector<std::size_t>& of_row(std::size_t row) const {
    return begins(mesh_.section_row, row) ? all_ : first_;
  }

 private:
  /// Whether a cell of the section begins here, or cells are told one by one.
  [[nodiscard]] bool begins(const std::vector<std::uint32_t>& strips, std::size_t at) const {
    return !mesh_.cells.empty() || at == 0 || strips[at] != strips[at - 1];
  }

  const Mesh& mesh_;
  std::vector<std::size_t> all_;
  std::vector<std::size_t> first_;  // of each column of the section
};

}  // namespace

std::vector<Face> faces(const Mesh& mesh) {
  std::vector<Face> all;
  // Most neighbours are alike, so the nodes between two fills are asked for only where they face.
  const auto add = [&](const Fill& left, const Fill& right, const auto& nodes, Facing facing) {
    const auto* region = std::get_if<RegionId>(&left);
    const auto* space = std::get_if<SpaceId>(&right);
    if (region == nullptr || space == nullptr) return;
    const auto [from, to] = nodes();
    const Point a = mesh.place(from), b = mesh.place(to);
    const double length =
        std::hypot(b.x - a.x, b.y - a.y) * lengthening(mesh, mesh.on_grid(from), mesh.on_grid(to));
    all.push_back({*space, *region, from, to, length, facing});
  };
  const CellsThatFace cells(mesh);
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (const std::size_t i : cells.of_row(j)) {
      const Cell& here = mesh.cell(i, j);
      // Each face has the nodes of its own material.
      const auto corner = [&](bool east, bool north) { return mesh.corner(i, j, east, north); };
      if (j > 0) {
        const Fill& beyond = mesh.cell(i, j - 1).at(CellSide::north);
        const auto below = [&](bool east) { return mesh.corner(i, j - 1, east, true); };
        add(
            here.at(CellSide::south), beyond,
            [&] {
              return std::pair{corner(false, false), corner(true, false)};
            },
            Facing::down);
        add(
            beyond, here.at(CellSide::south),
            [&] {
              return std::pair{below(true), below(false)};
            },
            Facing::up);
      }
      if (i > 0) {
        const Fill& beyond = mesh.cell(i - 1, j).at(CellSide::east);
        const auto before = [&](bool north) { return mesh.corner(i - 1, j, true, north); };
        add(
            beyond, here.at(CellSide::west),
            [&] {
              return std::pair{before(false), before(true)};
            },
            Facing::sideways);
        add(
            here.at(CellSide::west), beyond,
            [&] {
              return std::pair{corner(false, true), corner(false, false)};
            },
            Facing::sideways);
      }
      if (here.split == Split::none) continue;
      const bool rising = here.split == Split::rising;
      const std::size_t west = corner(false, !rising), east = corner(true, rising);
      const bool steep = is_steep(mesh.place(west), mesh.place(east));
      add(
          here.above, here.below,
          [&] {
            return std::pair{west, east};
          },
          steep ? Facing::sideways : Facing::down);
      add(
          here.below, here.above,
          [&] {
            return std::pair{east, west};
          },
          steep ? Facing::sideways : Facing::up);
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
