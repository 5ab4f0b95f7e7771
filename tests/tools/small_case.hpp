// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <utility>

#include "cases/meaning/drawn.hpp"

namespace quoin::testing {

/// A material of an invented house; all values are invented round figures.
inline materials::Material material(std::string name, double conductivity, double density) {
  materials::Material made;
  made.name = std::move(name);
  made.conductivity.value = conductivity;
  made.density.value = density;
  made.law = materials::Constant{};
  return made;
}

inline cases::Region region(std::string name, materials::Material material) {
  cases::Region made;
  made.name = std::move(name);
  made.material = std::move(material);
  return made;
}

inline cases::Space space(std::string name, cases::SpaceKind kind, double temperature,
                          double humidity, geometry::SpaceId air) {
  cases::Space made;
  made.name = std::move(name);
  made.is = kind;
  made.temperature = temperature;
  made.humidity = humidity;
  made.air = air;
  return made;
}

/// The corner of an invented house, in plan: brick and plaster, with a hall and a yard.
inline cases::Variant corner_variant(std::string name, double moisture, bool lined) {
  using namespace geometry;
  cases::Variant variant;
  variant.name = std::move(name);
  const SpaceId hall(0u), yard(1u);
  variant.spaces.add(space("hall", cases::SpaceKind::inside, 18.0, 0.62, hall));
  variant.spaces.add(space("yard", cases::SpaceKind::outside, 1.0, 0.9, yard));
  const RegionId wall =
      variant.regions.add(region("wall brick", material("test brick", 0.6, 1700.0)));
  materials::Material& brick = variant.regions[wall].material;
  brick.saturation.emplace().value = 0.25;
  brick.law = materials::BetweenDryAndSaturated{1.4};
  variant.regions[wall].moisture = moisture;
  if (moisture > 0.0) variant.regions[wall].state = "damp";
  const RegionId coat =
      variant.regions.add(region("plaster", material("test plaster", 0.7, 1500.0)));
  const RegionId wool = variant.regions.add(region("lining", material("test wool", 0.04, 150.0)));
  Corner corner;
  if (lined) corner.layers.push_back({wool, 0.04});
  corner.layers.push_back({coat, 0.015});
  corner.layers.push_back({wall, 0.33});
  corner.leg = 1.0;
  corner.inside = hall;
  corner.outside = yard;
  variant.recipe = corner;
  cases::show(drawing_of(corner), variant);
  variant.probes = {{"A", {0.345, 0.6}}};
  cases::FactorThreshold factor;
  factor.threshold = 0.75;
  variant.criteria = {{"mould", cases::SurfaceHumidityLimit{}}, {"fRsi", factor}};
  return variant;
}

/// Three variants of the corner.
inline cases::Case small_case() {
  cases::Case gauge;
  gauge.title = "Gauge house, north-east corner";
  gauge.note = "The house, its people and its numbers are invented.";
  gauge.sha256 = std::string(64, 'a');
  gauge.variants = {corner_variant("as found", 0.1, false), corner_variant("dried out", 0.0, false),
                    corner_variant("lined", 0.0, true)};
  return gauge;
}

/// A window jamb.
inline cases::Variant reveal_variant() {
  using namespace geometry;
  cases::Variant variant = corner_variant("reveal", 0.0, false);
  const RegionId frame =
      variant.regions.add(region("frame timber", material("test oak", 0.18, 700.0)));
  Reveal reveal;
  reveal.layers = {{RegionId(1u), 0.015}, {RegionId(0u), 0.33}};
  reveal.lining = {{RegionId(2u), 0.02}};
  reveal.frame = frame;
  reveal.wall = 1.0;
  reveal.inside = SpaceId(0u);
  reveal.outside = SpaceId(1u);
  variant.recipe = reveal;
  cases::show(drawing_of(reveal), variant);
  variant.probes.clear();
  return variant;
}

}  // namespace quoin::testing
