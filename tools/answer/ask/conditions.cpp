// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/ask/conditions.hpp"

#include <algorithm>

#include "cases/model/fixed_resistance.hpp"
#include "materials/clear_sky.hpp"
#include "materials/moist_air.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {
namespace {

/// The first air inside; that outside where none is.
SpaceId inside_of(const cases::Variant& variant) {
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    if (variant.spaces[id].is == cases::SpaceKind::inside) return variant.spaces[id].air;
  }
  return outside_of(variant);
}

}  // namespace

std::vector<solver::OtherLoss> losses_of(const cases::Variant& variant) {
  std::vector<solver::OtherLoss> losses;
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    for (const cases::Loss& loss : variant.spaces[id].losses)
      losses.push_back({id, loss.to, loss.by_metre});
  }
  return losses;
}

namespace {

/// Unheated spaces for which this says so take their share of the difference between the airs, or
/// their heat balance; others stay.
template <class Follows>
solver::SpaceTemperatures following(const SolvedVariant& solved,
                                    const solver::SpaceTemperatures& airs, Follows follows) {
  const auto& spaces = solved.variant.spaces;
  const SpaceId inside = inside_of(solved.variant);
  const SpaceId outside = outside_of(solved.variant);
  solver::SpaceTemperatures result = airs;
  const double span = spaces[inside].temperature - spaces[outside].temperature;
  for (const SpaceId id : geometry::ids(spaces)) {
    const cases::Space& space = spaces[spaces[id].air];
    if (space.is != cases::SpaceKind::unheated || !space.losses.empty() || !follows(space))
      continue;
    const double share =
        span == 0.0 ? 0.0 : (spaces[inside].temperature - space.temperature) / span;
    result[id] = airs[inside] - share * (airs[inside] - airs[outside]);
  }
  return solver::balanced(result, solved.heat.physics.air, losses_of(solved.variant),
                          solved.heat.couplings);
}

}  // namespace

solver::SpaceTemperatures temperatures_with(const SolvedVariant& solved,
                                            const solver::SpaceTemperatures& airs) {
  return following(solved, airs, [](const cases::Space&) { return true; });
}

solver::SpaceTemperatures temperatures_as_stated(const SolvedVariant& solved,
                                                 const solver::SpaceTemperatures& airs) {
  return following(solved, airs, [](const cases::Space& space) { return space.b.has_value(); });
}

solver::SpaceTemperatures temperatures_with_room_at(const SolvedVariant& solved, SpaceId room,
                                                    double inside) {
  const auto& spaces = solved.variant.spaces;
  solver::SpaceTemperatures airs = temperatures_of(solved.variant);
  for (const SpaceId id : geometry::ids(spaces)) {
    if (spaces[id].air == room) airs[id] = inside;
  }
  return temperatures_as_stated(solved, airs);
}

bool states_its_temperature(const cases::Variant& variant, SpaceId air) {
  const cases::Space& space = variant.spaces[air];
  return space.air == air && !space.b && space.losses.empty();
}

solver::SpaceTemperatures airs_in_month(const SolvedVariant& solved, std::size_t month) {
  const cases::Climate& climate = *solved.variant.climate;
  solver::SpaceTemperatures airs;
  for (const cases::Space& space : solved.variant.spaces) {
    const bool stated = space.is == cases::SpaceKind::inside && climate.inside_temperature;
    airs.add(space.is == cases::SpaceKind::outside ? climate.outside_temperature[month]
             : stated                              ? (*climate.inside_temperature)[month]
                                                   : space.temperature);
  }
  return temperatures_with(solved, airs);
}

solver::SpaceTemperatures temperatures_in_month(const SolvedVariant& solved, std::size_t month) {
  solver::SpaceTemperatures temperatures = airs_in_month(solved, month);
  for (const SpaceId id : geometry::ids(temperatures))
    temperatures[id] -= cooling_by_water(solved.variant.spaces[id]);
  return temperatures;
}

double cooling_by_water(const cases::Space& space) {
  if (!space.evaporation) return 0.0;
  if (!space.sky) return space.cooling;
  return space.cooling - materials::cooling_by(*space.sky, cases::fixed_resistance(space));
}

double vapour_pressure_in(const cases::Space& room, double inside, double outside,
                          double outside_humidity) {
  const double humidity = room.moisture
                              ? std::min(1.0, materials::inside_humidity(*room.moisture, inside,
                                                                         outside, outside_humidity))
                              : room.humidity.value_or(0.0);
  return humidity * materials::saturation_pressure(inside);
}

}  // namespace quoin::tools
