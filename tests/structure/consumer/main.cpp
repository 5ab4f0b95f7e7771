// SPDX-License-Identifier: Apache-2.0
#include <array>
#include <cmath>
#include <cstdio>
#include <utility>

#include "cases/read.hpp"
#include "geometry/mesh.hpp"
#include "geometry/section.hpp"
#include "materials/catalogue_text.hpp"
#include "solver/scheme/field.hpp"

/// A wall of 300 mm and 0.5 W/(m K), 1 m of it, from case file to coupling coefficient.
int main() {
  using namespace quoin;
  const auto wall = cases::case_of(R"(
quoin: 1
title: A plain wall
spaces:
  room: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: 0}
materials:
  stone: {conductivity: 0.5, density: 1800}
section:
  sheet:
    - {fill: room, x: [-100, 0], y: [0, 1000]}
    - {fill: stone, x: [0, 300], y: [0, 1000]}
    - {fill: yard, x: [300, 400], y: [0, 1000]}
)",
                                   "wall.yaml")
                        .variants.front();

  const auto section = geometry::section_of(wall.sheet);
  auto mesh = geometry::mesh_of(section, geometry::subdivision_of(section, 20.0));

  solver::Physics physics;
  for (const auto& region : wall.regions) {
    physics.conductivity.add(region.material.conductivity.value);
  }
  for (const auto& space : wall.spaces) {
    const double resistance = space.is == cases::SpaceKind::inside ? 0.13 : 0.04;
    physics.air.add(space.air);
    physics.resistance.add(geometry::Per<geometry::RegionId, std::array<double, 3>>(
        wall.regions.size(), {resistance, resistance, resistance}));
  }

  const auto field = solver::field_of(std::move(mesh), physics, solver::LinearOptions{});
  const double exact = 1.0 / (0.13 + 0.3 / 0.5 + 0.04);
  const double found = std::abs(field.coupling[1]);
  std::printf("%zu bytes of catalogue, L2D %.9f W/(m K), exact %.9f\n",
              materials::catalogue_text().size(), found, exact);
  // Series conductances are exact in one dimension: only rounding remains.
  return std::abs(found - exact) <= 1e-9 * exact && !materials::catalogue_text().empty() ? 0 : 1;
}
