// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/ask/physics.hpp"

#include <optional>

#include "geometry/shape.hpp"
#include "materials/cavity.hpp"

namespace quoin::tools {
namespace {

materials::Side side_of(cases::SpaceKind kind) {
  switch (kind) {
    case cases::SpaceKind::inside:
      return materials::Side::inside;
    case cases::SpaceKind::outside:
      return materials::Side::outside;
    case cases::SpaceKind::unheated:
      return materials::Side::unheated;
  }
  return materials::Side::inside;
}

/// In a plan every surface stands upright, whichever way it looks on the paper.
materials::Facing facing_in(cases::Cut cut, geometry::Facing on_paper) {
  if (cut == cases::Cut::horizontal) return materials::Facing::sideways;
  switch (on_paper) {
    case geometry::Facing::sideways:
      return materials::Facing::sideways;
    case geometry::Facing::up:
      return materials::Facing::up;
    case geometry::Facing::down:
      return materials::Facing::down;
  }
  return materials::Facing::sideways;
}

double resistance_of(const cases::Variant& variant, const cases::Space& space,
                     const cases::Region& region, geometry::Facing facing,
                     materials::Purpose purpose) {
  // What stands before a wall is no part of the building: heat flows are those without it.
  const bool furniture = space.behind && purpose == materials::Purpose::heat_flow;
  if (space.resistance && !furniture) return *space.resistance;
  return materials::surface_resistance(
      {side_of(space.is), facing_in(variant.cut, facing), region.part, space.wind, space.heat},
      purpose);
}

/// Gives the air cavities of a frame the conductivities that their shapes tell.
void give_cavities(const cases::Variant& variant,
                   Per<RegionId, materials::Conductivity>& conductivity) {
  std::optional<geometry::Section> section;
  for (const RegionId id : geometry::ids(variant.regions)) {
    const std::optional<materials::Cavity>& cavity = variant.regions[id].material.cavity;
    if (!cavity) continue;
    if (!section) section = geometry::section_of(variant.sheet);
    const geometry::Shape shape = geometry::shape_of(*section, id);
    if (shape.pieces == 0) continue;  // painted over
    conductivity[id] = {
        materials::cavity_conductivity(*cavity, shape.area, shape.width, shape.height),
        materials::cavity_law, std::nullopt};
  }
}

}  // namespace

Per<RegionId, materials::Conductivity> conductivities(const cases::Variant& variant) {
  Per<RegionId, materials::Conductivity> result;
  for (const cases::Region& region : variant.regions) {
    result.add(materials::conductivity_of(region.material, region.moisture));
  }
  give_cavities(variant, result);
  return result;
}

solver::Physics physics_of(const cases::Variant& variant, materials::Purpose purpose) {
  solver::Physics physics;
  for (const materials::Conductivity& conductivity : conductivities(variant)) {
    physics.conductivity.add(conductivity.value);
  }
  for (const cases::Region& region : variant.regions) {
    physics.is_fabric.add(materials::is_fabric(region.part));
  }
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const cases::Space& space = variant.spaces[id];
    physics.air.add(space.air);
    Per<RegionId, std::array<double, 3>> by_region;
    for (const cases::Region& region : variant.regions) {
      std::array<double, 3> by_facing{};
      for (const geometry::Facing facing :
           {geometry::Facing::sideways, geometry::Facing::up, geometry::Facing::down}) {
        by_facing[static_cast<std::size_t>(facing)] =
            resistance_of(variant, space, region, facing, purpose);
      }
      by_region.add(by_facing);
    }
    physics.resistance.add(std::move(by_region));
  }
  return physics;
}

SpaceId outside_of(const cases::Variant& variant) {
  SpaceId best;
  const auto colder_outside = [&](SpaceId one, SpaceId other) {
    const cases::Space& a = variant.spaces[one];
    const cases::Space& b = variant.spaces[other];
    const bool a_outside = a.is == cases::SpaceKind::outside;
    const bool b_outside = b.is == cases::SpaceKind::outside;
    return a_outside != b_outside ? a_outside : a.temperature < b.temperature;
  };
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    if (!best.valid() || colder_outside(id, best)) best = id;
  }
  return variant.spaces[best].air;
}

solver::SpaceTemperatures temperatures_of(const cases::Variant& variant) {
  solver::SpaceTemperatures temperatures;
  for (const cases::Space& space : variant.spaces)
    temperatures.add(space.temperature - space.cooling);
  return temperatures;
}

}  // namespace quoin::tools
