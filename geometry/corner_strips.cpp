// SPDX-License-Identifier: Apache-2.0
#include "geometry/corner_strips.hpp"

#include <algorithm>
#include <cstddef>

#include "geometry/cell.hpp"

namespace quoin::geometry {
namespace {

/// A cell by column and row; signed, so that it may lie outside the section.
struct Place {
  std::ptrdiff_t i = 0;
  std::ptrdiff_t j = 0;
};

/// A step from cell to cell along an axis.
struct Step {
  int i = 0;
  int j = 0;
  [[nodiscard]] Step back() const { return {-i, -j}; }
};

Place operator+(Place place, Step step) { return {place.i + step.i, place.j + step.j}; }

CellSide side_towards(Step step) {
  if (step.i != 0) return step.i > 0 ? CellSide::east : CellSide::west;
  return step.j > 0 ? CellSide::north : CellSide::south;
}

/// One face of a corner, walked from the corner along the cells of the space.
struct Leg {
  Place first;   ///< the cell in the corner
  Step along;    ///< away from the corner
  Step towards;  ///< from the space into the material
  double length = 0.0;
  bool protrudes = false;  ///< ends in a convex corner
};

class Corners {
 public:
  Corners(const Section& section, SpaceId space, const Per<RegionId, char>& is_frame)
      : section_(section), space_(space), is_frame_(is_frame) {}

  [[nodiscard]] std::vector<Outline> strips() const {
    std::vector<Outline> all;
    for (std::size_t j = 0; j < section_.rows(); ++j) {
      for (std::size_t i = 0; i < section_.columns(); ++i) {
        const Place cell{static_cast<std::ptrdiff_t>(i), static_cast<std::ptrdiff_t>(j)};
        for (const Step up_or_down : {Step{0, -1}, Step{0, 1}}) {
          for (const Step left_or_right : {Step{-1, 0}, Step{1, 0}}) {
            if (!is_faced(cell, up_or_down) || !is_faced(cell, left_or_right)) continue;
            add(leg(cell, left_or_right.back(), up_or_down),
                leg(cell, up_or_down.back(), left_or_right), all);
          }
        }
      }
    }
    return all;
  }

 private:
  [[nodiscard]] const Cell* at(Place place) const {
    const bool within = place.i >= 0 && place.j >= 0 &&
                        place.i < static_cast<std::ptrdiff_t>(section_.columns()) &&
                        place.j < static_cast<std::ptrdiff_t>(section_.rows());
    if (!within) return nullptr;
    return &section_.cell(static_cast<std::size_t>(place.i), static_cast<std::size_t>(place.j));
  }

  [[nodiscard]] bool is_space(Place place) const {
    const Cell* cell = at(place);
    return cell != nullptr && *cell == undivided(space_);
  }

  /// What a cell shows at a side; nothing outside the section.
  [[nodiscard]] Fill shown(Place place, CellSide side) const {
    const Cell* cell = at(place);
    return cell == nullptr ? Fill{} : cell->at(side);
  }

  /// Whether a cell of the space touches frame or glazing in a direction.
  [[nodiscard]] bool is_faced(Place place, Step towards) const {
    if (!is_space(place)) return false;
    const Fill beyond = shown(place + towards, side_towards(towards.back()));
    const auto* region = std::get_if<RegionId>(&beyond);
    return region != nullptr && is_frame_[*region] != 0;
  }

  /// The extent of a cell along the axis of a step, m.
  [[nodiscard]] double extent(Place place, Step step) const {
    const std::vector<double>& lines = step.i != 0 ? section_.x : section_.y;
    const auto k = static_cast<std::size_t>(step.i != 0 ? place.i : place.j);
    return lines[k + 1] - lines[k];
  }

  [[nodiscard]] Leg leg(Place corner, Step along, Step towards) const {
    Leg leg{corner, along, towards};
    Place cell = corner;
    for (; is_faced(cell, towards); cell = cell + along) leg.length += extent(cell, along);
    const auto is_air = [](const Fill& fill) { return std::holds_alternative<SpaceId>(fill); };
    leg.protrudes = is_air(shown(cell, side_towards(towards))) &&
                    is_air(shown(cell + towards, side_towards(towards.back())));
    return leg;
  }

  /// How thick a strip of a length can be drawn without touching what lies opposite.
  [[nodiscard]] double thickness(const Leg& leg, double length) const {
    double thickness = strip_thickness;
    Place cell = leg.first;
    for (double walked = 0.0; walked < length - snap; cell = cell + leg.along) {
      double clear = 0.0;
      for (Place above = cell; is_space(above); above = above + leg.towards.back())
        clear += extent(above, leg.towards);
      thickness = std::min(thickness, clear / 2);
      walked += extent(cell, leg.along);
    }
    return thickness;
  }

  void add(const Leg& one, const Leg& other, std::vector<Outline>& all) const {
    if (!one.protrudes && !other.protrudes) return;
    const bool first = one.protrudes && (!other.protrudes || one.length <= other.length);
    const Leg& protruding = first ? one : other;
    const Leg& beside = first ? other : one;
    const double depth = protruding.length;
    all.push_back(outline(protruding, depth));
    all.push_back(outline(beside, std::min({depth, strip_reach, beside.length})));
  }

  [[nodiscard]] Outline outline(const Leg& leg, double length) const {
    const double thick = thickness(leg, length);
    const auto i = static_cast<std::size_t>(leg.first.i), j = static_cast<std::size_t>(leg.first.j);
    const int right = leg.along.i + leg.towards.back().i, up = leg.along.j + leg.towards.back().j;
    const double wide = leg.along.i != 0 ? length : thick, high = leg.along.i != 0 ? thick : length;
    const Point corner{right > 0 ? section_.x[i] : section_.x[i + 1],
                       up > 0 ? section_.y[j] : section_.y[j + 1]};
    const Point far{corner.x + right * wide, corner.y + up * high};
    return rectangle(std::min(corner.x, far.x), std::max(corner.x, far.x),
                     std::min(corner.y, far.y), std::max(corner.y, far.y));
  }

  const Section& section_;
  SpaceId space_;
  const Per<RegionId, char>& is_frame_;
};

}  // namespace

std::vector<Outline> corner_strips(const Section& section, SpaceId space,
                                   const Per<RegionId, char>& is_frame) {
  return Corners(section, space, is_frame).strips();
}

}  // namespace quoin::geometry
