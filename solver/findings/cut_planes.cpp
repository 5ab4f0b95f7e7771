// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/cut_planes.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solver/findings/plane_wall.hpp"

namespace quoin::solver {
namespace {

using geometry::CellSide;
using geometry::Fill;
using geometry::Mesh;
using geometry::Point;

/// A mesh seen along one axis or with its axes exchanged, so that one walk serves both kinds of
/// plane.
class View {
 public:
  View(const Mesh& mesh, bool turned) : mesh_(mesh), turned_(turned) {}

  [[nodiscard]] std::size_t across() const { return turned_ ? mesh_.rows() : mesh_.columns(); }
  [[nodiscard]] std::size_t along() const { return turned_ ? mesh_.columns() : mesh_.rows(); }
  /// What touches the near or far side of a cell across the planes; nothing beyond the grid.
  [[nodiscard]] Fill fill(std::size_t a, std::size_t b, bool far) const {
    if (a >= across() || b >= along()) return std::monostate{};
    const CellSide side = turned_ ? (far ? CellSide::north : CellSide::south)
                                  : (far ? CellSide::east : CellSide::west);
    return turned_ ? mesh_.cell(b, a).at(side) : mesh_.cell(a, b).at(side);
  }
  [[nodiscard]] std::size_t node(std::size_t a, std::size_t b) const {
    return turned_ ? mesh_.node(b, a) : mesh_.node(a, b);
  }
  [[nodiscard]] double depth(std::size_t b) const {
    return turned_ ? mesh_.x[b + 1] - mesh_.x[b] : mesh_.y[b + 1] - mesh_.y[b];
  }
  [[nodiscard]] Facing facing(bool forward) const {
    if (turned_) return Facing::sideways;
    return forward ? Facing::up : Facing::down;
  }

 private:
  const Mesh& mesh_;
  bool turned_;
};

const RegionId* region_of(const Fill& fill) { return std::get_if<RegionId>(&fill); }

double distance(Point from, Point to, Point place) {
  const double dx = std::max({from.x - place.x, 0.0, place.x - to.x});
  const double dy = std::max({from.y - place.y, 0.0, place.y - to.y});
  return std::hypot(dx, dy);
}

/// Departure from the plane wall along the run of cells [begin, end) of a column, on its near or
/// far side.
double departure(const View& view, const Field& field, const Physics& physics, std::size_t column,
                 bool far, std::size_t begin, std::size_t end) {
  const std::size_t line = far ? column + 1 : column;
  const Fill before = begin > 0 ? view.fill(column, begin - 1, far) : Fill{};
  const Fill after = view.fill(column, end, far);
  const auto* start = std::get_if<SpaceId>(&before);
  const auto* finish = std::get_if<SpaceId>(&after);
  if (start == nullptr || finish == nullptr) return std::numeric_limits<double>::quiet_NaN();

  const RegionId first = *region_of(view.fill(column, begin, far));
  const RegionId last = *region_of(view.fill(column, end - 1, far));
  PlaneWall wall{physics.air[*start], physics.air[*finish], {}, 0.0};
  double passed = physics.surface_resistance(*start, first, view.facing(false));
  wall.nodes.push_back({view.node(line, begin), passed});
  for (std::size_t b = begin; b < end; ++b) {
    passed += view.depth(b) / physics.conductivity[*region_of(view.fill(column, b, far))];
    wall.nodes.push_back({view.node(line, b + 1), passed});
  }
  wall.total = passed + physics.surface_resistance(*finish, last, view.facing(true));
  return departure_from(wall, field.basis, field.airs);
}

}  // namespace

std::vector<CutPlane> cut_planes(const Field& field, const Physics& physics, Point coldest) {
  std::vector<CutPlane> planes;
  for (const bool turned : {false, true}) {
    const View view(field.mesh, turned);
    for (std::size_t column = 0; column < view.across(); ++column) {
      for (const bool far : {false, true}) {  // the near and the far side of this column of cells
        const std::size_t line = far ? column + 1 : column;
        const auto cut_at = [&](std::size_t b) {
          const Fill beyond = far          ? view.fill(column + 1, b, false)
                              : column > 0 ? view.fill(column - 1, b, true)
                                           : Fill{};
          return region_of(view.fill(column, b, far)) != nullptr &&
                 std::holds_alternative<std::monostate>(beyond);
        };
        for (std::size_t b = 0; b < view.along();) {
          if (!cut_at(b)) {
            ++b;
            continue;
          }
          const std::size_t begin = b;
          while (b < view.along() && cut_at(b)) ++b;
          CutPlane plane;
          plane.from = field.mesh.place(view.node(line, begin));
          plane.to = field.mesh.place(view.node(line, b));
          plane.departure = departure(view, field, physics, column, far, begin, b);
          plane.fabric = false;
          for (std::size_t k = begin; k < b; ++k) {
            plane.fabric =
                plane.fabric || physics.is_fabric[*region_of(view.fill(column, k, far))] != 0;
          }
          plane.distance = distance(plane.from, plane.to, coldest);
          planes.push_back(plane);
        }
      }
    }
  }
  return planes;
}

}  // namespace quoin::solver
