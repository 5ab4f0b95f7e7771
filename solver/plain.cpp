// SPDX-License-Identifier: Apache-2.0
#include "solver/plain.hpp"

#include <algorithm>

#include "materials/ground_floor.hpp"

namespace quoin::solver {
namespace {

using geometry::Dimensions;
using geometry::Flank;

struct Resistances {
  double inside = 0.0;
  double layers = 0.0;
  double outside = 0.0;

  [[nodiscard]] double total() const { return inside + layers + outside; }
};

/// Where the far face of a plane part looks.
Facing opposite(Facing facing) {
  if (facing == Facing::sideways) return facing;
  return facing == Facing::up ? Facing::down : Facing::up;
}

Resistances resistances_of(const Flank& flank, const Physics& physics) {
  const bool on_ground = flank.on_ground.has_value();
  const geometry::RegionId ground = on_ground ? flank.on_ground->ground : geometry::RegionId();
  Resistances r;
  r.inside = physics.surface_resistance(
      flank.inside, flank.layers.empty() ? ground : flank.layers.front().region, flank.looks);
  r.outside =
      physics.surface_resistance(flank.outside, on_ground ? ground : flank.layers.back().region,
                                 on_ground ? Facing::up : opposite(flank.looks));
  for (const geometry::Layer& layer : flank.layers) {
    r.layers += layer.thickness / physics.conductivity[layer.region];
  }
  if (on_ground) {  // the ground is as good as one more layer
    const materials::GroundFloor floor{flank.on_ground->width, flank.on_ground->wall_thickness,
                                       r.total(), physics.conductivity[ground]};
    r.layers += 1 / materials::transmittance_of(floor) - r.total();
  }
  return r;
}

double length_of(const Flank& flank, Dimensions dimensions) {
  switch (dimensions) {
    case Dimensions::internal:
      return flank.internal;
    case Dimensions::overall_internal:
      return flank.overall_internal;
    case Dimensions::external:
      return flank.external;
  }
  return 0.0;
}

/// The coupling of the airs that a flank lies between; null where they are not coupled.
const Coupling* coupling_of(const Flank& flank, const Solution& heat) {
  const SpaceId inside = heat.physics.air[flank.inside];
  const SpaceId outside = heat.physics.air[flank.outside];
  const auto found = std::find_if(
      heat.couplings.begin(), heat.couplings.end(),
      [&](const Coupling& c) { return std::minmax(c.a, c.b) == std::minmax(inside, outside); });
  return found == heat.couplings.end() ? nullptr : &*found;
}

/// What the plane parts conduct, those on the ground only where wanted, W/(m K).
double plane_parts(const std::vector<Flank>& flanks, const Physics& physics, Dimensions dimensions,
                   bool with_floor) {
  double sum = 0.0;
  for (const Flank& flank : flanks) {
    if (flank.on_ground && !with_floor) continue;
    sum += length_of(flank, dimensions) / resistances_of(flank, physics).total();
  }
  return sum;
}

}  // namespace

PlainPart plain_part(const Flank& flank, const Physics& surface, const Physics& heat,
                     const SpaceTemperatures& temperatures) {
  const Resistances r = resistances_of(flank, surface);
  PlainPart part{flank.name, 1 / resistances_of(flank, heat).total(), 1 - r.inside / r.total(),
                 0.0};
  const double inside = temperatures[flank.inside];
  const double outside = temperatures[flank.outside];
  part.surface_temperature = outside + part.surface_factor * (inside - outside);
  return part;
}

std::vector<LinearTransmittance> linear_transmittances(const std::vector<Flank>& flanks,
                                                       const Solution& heat,
                                                       const Solution* floor_alone) {
  const bool meets = std::any_of(flanks.begin(), flanks.end(),
                                 [](const Flank& flank) { return flank.external > 0.0; });
  if (!meets) return {};
  const Coupling* coupling = coupling_of(flanks.front(), heat);
  if (coupling == nullptr) return {};
  const double band = (coupling->high - coupling->low) / 2;
  const bool on_ground = std::any_of(
      flanks.begin(), flanks.end(), [](const Flank& flank) { return flank.on_ground.has_value(); });
  std::vector<LinearTransmittance> result;
  for (const Dimensions dimensions :
       {Dimensions::internal, Dimensions::overall_internal, Dimensions::external}) {
    const double plane = plane_parts(flanks, heat.physics, dimensions, true);
    result.push_back({dimensions,
                      {coupling->value - plane, band, true},
                      on_ground ? FloorLoss::by_formula : FloorLoss::none});
  }
  if (!on_ground || floor_alone == nullptr) return result;
  if (const Coupling* floor = coupling_of(flanks.front(), *floor_alone)) {
    const double plane = plane_parts(flanks, heat.physics, Dimensions::internal, false);
    result.push_back(
        {Dimensions::internal,
         {coupling->value - plane - floor->value, band + (floor->high - floor->low) / 2, true},
         FloorLoss::solved});
  }
  return result;
}

}  // namespace quoin::solver
