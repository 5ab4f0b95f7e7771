// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/places.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quoin::tools {
namespace {

// A point of the trade is as wide as a thermometer; a piece of surface is met where the place lies
// on it.
constexpr double near_point = 0.010;  // m
constexpr double near_piece = 0.001;

}  // namespace

double distance_to(const geometry::NamedPlace& named, geometry::Point place) {
  const double dx = named.to.x - named.from.x;
  const double dy = named.to.y - named.from.y;
  const double length2 = dx * dx + dy * dy;
  const double t =
      length2 == 0.0
          ? 0.0
          : std::clamp(((place.x - named.from.x) * dx + (place.y - named.from.y) * dy) / length2,
                       0.0, 1.0);
  return std::hypot(place.x - named.from.x - t * dx, place.y - named.from.y - t * dy);
}

std::string name_of_place(const cases::Variant& variant, geometry::Point place) {
  for (const geometry::NamedPlace& named : variant.places) {
    const double near = named.from == named.to ? near_point : near_piece;
    if (distance_to(named, place) <= near) return named.name;
  }
  return {};
}

std::string words_for(const SolvedVariant& solved, const solver::Spot& spot) {
  if (std::string name = name_of_place(solved.variant, spot.place); !name.empty()) return name;
  return fmt::format("the {} at {:.0f}, {:.0f} mm", solved.variant.regions[spot.region].name,
                     spot.place.x * 1e3, spot.place.y * 1e3);
}

}  // namespace quoin::tools
