// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/plain.hpp"

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

double resistance_of(const std::vector<geometry::Layer>& layers, const Physics& physics) {
  double sum = 0.0;
  for (const geometry::Layer& layer : layers)
    sum += layer.thickness / physics.conductivity[layer.region];
  return sum;
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
  r.layers = resistance_of(flank.layers, physics);
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

/// The coupling of two airs; null where they are not coupled.
const Coupling* coupling_of(SpaceId one, SpaceId other, const Solution& heat) {
  const auto found = std::find_if(
      heat.couplings.begin(), heat.couplings.end(),
      [&](const Coupling& c) { return std::minmax(c.a, c.b) == std::minmax(one, other); });
  return found == heat.couplings.end() ? nullptr : &*found;
}

/// Of the airs that a flank lies between.
const Coupling* coupling_of(const Flank& flank, const Solution& heat) {
  return coupling_of(heat.physics.air[flank.inside], heat.physics.air[flank.outside], heat);
}

/// What a void loses to the air outside other than through the section, W/(m K); nothing where
/// that is not known, or is not all that it loses.
std::optional<double> ventilation_of(const Flank& floor, const Physics& physics,
                                     const std::vector<OtherLoss>& losses) {
  const SpaceId beneath = physics.air[floor.outside];
  std::optional<double> sum;
  for (const OtherLoss& loss : losses) {
    if (physics.air[loss.from] != beneath) continue;
    if (physics.air[loss.to] != physics.air[floor.over_void->outside]) return std::nullopt;
    sum = sum.value_or(0.0) + loss.by_metre;
  }
  return sum;
}

/// U of a floor over a void from inside to outside.
double suspended_transmittance(const Flank& floor, double ventilation, const Physics& physics) {
  const geometry::FloorOverVoid& lies = *floor.over_void;
  const SpaceId beneath = floor.outside;
  const auto surface = [&](SpaceId space, RegionId region, Facing facing) {
    return physics.surface_resistance(space, region, facing);
  };
  const double walls = surface(beneath, lies.walls.front().region, Facing::sideways) +
                       resistance_of(lies.walls, physics) +
                       surface(lies.outside, lies.walls.back().region, Facing::sideways);
  return materials::transmittance_of(
      materials::SuspendedFloor{surface(floor.inside, floor.layers.front().region, Facing::up) +
                                    resistance_of(floor.layers, physics) +
                                    surface(beneath, floor.layers.back().region, Facing::down),
                                {lies.below.width, lies.below.wall_thickness,
                                 surface(beneath, lies.below.ground, Facing::up) +
                                     surface(lies.outside, lies.below.ground, Facing::up),
                                 physics.conductivity[lies.below.ground]},
                                lies.height,
                                1 / walls,
                                ventilation});
}

/// What passes from inside to outside past a void and through it, in series with what it loses.
double through_void(double past, double into, double out) {
  return into + out > 0 ? past + into * out / (into + out) : past;
}

/// psi beside a floor over a void; empty where the void's heat balance is not known.
std::vector<LinearTransmittance> beside_void(const std::vector<Flank>& flanks, const Flank& floor,
                                             const Solution& heat,
                                             const std::vector<OtherLoss>& losses) {
  const Physics& physics = heat.physics;
  const auto ventilation = ventilation_of(floor, physics, losses);
  const SpaceId outside = physics.air[floor.over_void->outside];
  const Coupling* past = coupling_of(physics.air[floor.inside], outside, heat);
  const Coupling* into = coupling_of(floor, heat);
  const Coupling* out = coupling_of(physics.air[floor.outside], outside, heat);
  if (!ventilation || past == nullptr || into == nullptr || out == nullptr) return {};
  // It grows with each of the three, so their bounds are its bounds.
  const auto with = [&](double Coupling::*bound) {
    return through_void(past->*bound, into->*bound, out->*bound + *ventilation);
  };
  const double band = (with(&Coupling::high) - with(&Coupling::low)) / 2;
  const double u = suspended_transmittance(floor, *ventilation, physics);
  std::vector<LinearTransmittance> result;
  for (const Dimensions dimensions :
       {Dimensions::internal, Dimensions::overall_internal, Dimensions::external}) {
    double plane = 0.0;
    for (const Flank& flank : flanks) {
      plane += length_of(flank, dimensions) *
               (&flank == &floor ? u : 1 / resistances_of(flank, physics).total());
    }
    result.push_back(
        {dimensions, {with(&Coupling::value) - plane, band, true}, FloorLoss::by_formula});
  }
  return result;
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
                                                       const Solution* floor_alone,
                                                       const std::vector<OtherLoss>& losses) {
  const bool meets = std::any_of(flanks.begin(), flanks.end(),
                                 [](const Flank& flank) { return flank.external > 0.0; });
  if (!meets) return {};
  for (const Flank& flank : flanks) {
    if (flank.over_void) return beside_void(flanks, flank, heat, losses);
  }
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
