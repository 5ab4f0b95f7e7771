// SPDX-License-Identifier: Apache-2.0
#include "tools/places.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quoin::tools {
namespace {

constexpr double near = 0.003;  // m: closer than anyone can put a thermometer

double distance(geometry::Point place, const geometry::NamedPlace& named) {
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

}  // namespace

std::string words_for(const SolvedVariant& solved, const solver::Spot& spot) {
  if (solved.variant.recipe) {
    for (const geometry::NamedPlace& named : geometry::drawing_of(*solved.variant.recipe).places) {
      if (distance(spot.place, named) <= near) return named.name;
    }
  }
  return fmt::format("the {} at {:.0f}, {:.0f}", solved.variant.regions[spot.region].name,
                     spot.place.x * 1e3, spot.place.y * 1e3);
}

}  // namespace quoin::tools
