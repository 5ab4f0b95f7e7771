// SPDX-License-Identifier: Apache-2.0
#include "solver/plain.hpp"

#include <algorithm>

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

Resistances resistances_of(const Flank& flank, const Physics& physics) {
  Resistances r;
  r.inside =
      physics.surface_resistance(flank.inside, flank.layers.front().region, Facing::sideways);
  r.outside =
      physics.surface_resistance(flank.outside, flank.layers.back().region, Facing::sideways);
  for (const geometry::Layer& layer : flank.layers) {
    r.layers += layer.thickness / physics.conductivity[layer.region];
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
                                                       const Solution& heat) {
  const bool meets = std::any_of(flanks.begin(), flanks.end(),
                                 [](const Flank& flank) { return flank.external > 0.0; });
  if (!meets) return {};
  const SpaceId inside = heat.physics.air[flanks.front().inside];
  const SpaceId outside = heat.physics.air[flanks.front().outside];
  const auto coupling = std::find_if(
      heat.couplings.begin(), heat.couplings.end(),
      [&](const Coupling& c) { return std::minmax(c.a, c.b) == std::minmax(inside, outside); });
  if (coupling == heat.couplings.end()) return {};
  std::vector<LinearTransmittance> result;
  for (const Dimensions dimensions :
       {Dimensions::internal, Dimensions::overall_internal, Dimensions::external}) {
    double plane = 0.0;
    for (const Flank& flank : flanks) {
      plane += length_of(flank, dimensions) / resistances_of(flank, heat.physics).total();
    }
    result.push_back(
        {dimensions, {coupling->value - plane, (coupling->high - coupling->low) / 2, true}});
  }
  return result;
}

}  // namespace quoin::solver
