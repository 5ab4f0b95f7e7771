// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <utility>
#include <vector>

#include "materials/moist_air.hpp"
#include "solver/vapour/condensation.hpp"
#include "tests/support/problem.hpp"

namespace quoin::testing {

/// A layer of a wall: thickness, m, conductivity, W/(m K), vapour resistance factor.
struct VapourLayer {
  double thickness;
  double conductivity;
  double resistance_factor;
};

/// A wall 1 m high with everything that diffusion needs. Inside (space 0) on its left.
struct VapourWall {
  Problem problem;
  solver::VapourPhysics physics;
  solver::SpacePressures pressures;

  VapourWall(const std::vector<VapourLayer>& layers, double inside, double inside_humidity,
             double outside, double outside_humidity, double inside_resistance = 0.25,
             double outside_resistance = 0.04) {
    const SpaceId room = problem.space(inside, inside_resistance);
    const SpaceId yard = problem.space(outside, outside_resistance);
    double x = 0.0;
    for (const VapourLayer& layer : layers) {
      problem.paint(problem.material(layer.conductivity), x, x + layer.thickness, 0, 1);
      physics.openness.add(1.0 / layer.resistance_factor);
      physics.wet.add(0);
      x += layer.thickness;
    }
    problem.paint(room, -0.1, 0, 0, 1);
    problem.paint(yard, x, x + 0.1, 0, 1);
    for (const SpaceId space : {room, yard}) {
      physics.air.add(space);
      physics.coat.add(geometry::Per<RegionId, double>(layers.size(), 0.0));
    }
    pressures.add(inside_humidity * materials::saturation_pressure(inside));
    pressures.add(outside_humidity * materials::saturation_pressure(outside));
  }

  /// Paints the surfaces of a space.
  void coat(SpaceId space, double sd) {
    for (double& one : physics.coat[space]) one = sd;
  }

  /// Lays a membrane of an sd, m, upright through the wall or part of it, or along any line.
  geometry::MembraneId membrane(double x, double sd, double from = 0.0, double to = 1.0) {
    return membrane(sd, {{x, from}, {x, to}});
  }
  geometry::MembraneId membrane(double sd, geometry::Outline line) {
    const geometry::MembraneId id = physics.membrane.add(sd);
    problem.draw(id, std::move(line));
    return id;
  }

  [[nodiscard]] solver::Field heat(int doublings = 0) const {
    return problem.field(8.0, doublings);
  }

  [[nodiscard]] solver::VapourField vapour(const solver::Field& heat,
                                           const solver::Stored* stored = nullptr) const {
    return solver::vapour_field(heat.mesh, solver::temperatures(heat, problem.temperatures()),
                                physics, pressures, {}, stored);
  }
  [[nodiscard]] solver::VapourField vapour(int doublings = 0) const {
    return vapour(heat(doublings));
  }
};

}  // namespace quoin::testing
