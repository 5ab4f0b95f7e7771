// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/colder_in_months.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solver/findings/courses.hpp"
#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {
namespace {

constexpr double as_cold = 0.01;  // K: two places that differ by less are told as alike

/// A node of a surface where fabric meets the air.
struct Place {
  geometry::Point at;
  geometry::Face face;
  double along = 0.0;
  std::size_t node = 0;
  double stated = 0.0;  ///< degC
};

std::vector<Place> places_of(const SolvedVariant& solved, SpaceId air) {
  std::vector<Place> all;
  for (const solver::Course& course : solver::courses_of(solved.surface)) {
    if (course.surface.air != air) continue;
    const auto& faces = course.surface.faces;
    for (std::size_t k = 0; k < course.place.size(); ++k) {
      for (const std::size_t f : {k, k - 1}) {
        if (f >= faces.size() || solved.surface.physics.is_fabric[faces[f].region] == 0) continue;
        all.push_back({course.place[k], faces[f], course.surface.along[k], course.surface.node(k),
                       course.temperature[k]});
        break;
      }
    }
  }
  return all;
}

/// The temperature of a node of the mesh that surfaces run on.
double temperature_at(const solver::Solution& solution, std::size_t node,
                      const solver::SpaceTemperatures& spaces) {
  const auto& basis = solution.triangles ? solution.triangles->basis : solution.field.basis;
  double sum = 0.0;
  for (std::size_t a = 0; a < basis.size(); ++a)
    sum += basis[a][node] * spaces[solution.field.airs[a]];
  return sum;
}

const Place& nearest(const std::vector<Place>& places, geometry::Point to) {
  return *std::min_element(places.begin(), places.end(), [&](const Place& a, const Place& b) {
    return std::hypot(a.at.x - to.x, a.at.y - to.y) < std::hypot(b.at.x - to.x, b.at.y - to.y);
  });
}

solver::Spot spot_at(const SolvedVariant& solved, const solver::AirSurface& surface,
                     const Place& place) {
  const solver::SpaceTemperatures stated = temperatures_of(solved.variant);
  solver::Spot spot;
  spot.place = place.at;
  spot.space = place.face.space;
  spot.region = place.face.region;
  spot.along = place.along;
  spot.thermometer = place.stated;
  spot.temperature = {place.stated, 0.0, true};
  for (const solver::Spot& known : surface.cold_spots) {
    spot.temperature.band = std::max(spot.temperature.band, known.temperature.band);
    spot.temperature.asymptotic = spot.temperature.asymptotic && known.temperature.asymptotic;
  }
  const double outside = stated[outside_of(solved.variant)], span = stated[surface.air] - outside;
  const double nan = std::numeric_limits<double>::quiet_NaN();
  spot.factor = span == 0.0 ? solver::Estimate{nan, nan, false}
                            : solver::Estimate{(place.stated - outside) / span,
                                               spot.temperature.band / std::abs(span),
                                               spot.temperature.asymptotic};
  return spot;
}

}  // namespace

std::vector<solver::Spot> colder_in_months(const SolvedVariant& solved,
                                           const solver::AirSurface& surface,
                                           const std::vector<solver::SpaceTemperatures>& months) {
  const std::vector<Place> places = places_of(solved, surface.air);
  if (places.empty()) return {};
  std::vector<std::size_t> known;  // nodes
  for (const solver::Spot& spot : surface.cold_spots) {
    if (solved.surface.physics.is_fabric[spot.region] != 0)
      known.push_back(nearest(places, spot.place).node);
  }
  std::vector<solver::Spot> found;
  for (const solver::SpaceTemperatures& spaces : months) {
    const auto warmth = [&](std::size_t node) {
      return temperature_at(solved.surface, node, spaces);
    };
    double least = std::numeric_limits<double>::infinity();
    for (const std::size_t node : known) least = std::min(least, warmth(node));
    const Place& coldest = *std::min_element(
        places.begin(), places.end(),
        [&](const Place& a, const Place& b) { return warmth(a.node) < warmth(b.node); });
    if (!(warmth(coldest.node) < least - as_cold)) continue;
    known.push_back(coldest.node);
    found.push_back(spot_at(solved, surface, coldest));
  }
  return found;
}

}  // namespace quoin::tools
