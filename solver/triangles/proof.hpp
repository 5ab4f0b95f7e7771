// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "geometry/triangles/nodes.hpp"
#include "solver/findings.hpp"
#include "solver/physics.hpp"
#include "solver/triangles/conduction.hpp"
#include "solver/triangles/window.hpp"

namespace quoin::solver {

/// What a thermometer would read on the coldest part of the surfaces of an air, proved.
struct Thermometer {
  SpaceId air;
  Window
      window;  ///< found, not proved to be the coldest; its mean is that of the temperature field
  double temperature = 0.0;  ///< middle of low and high, degC
  double low = 0.0;          ///< the mean over the window lies between low and high
  double high = 0.0;
};

/// What is to be proved of a sheet.
struct Claim {
  geometry::Sheet sheet;
  Physics physics;
  SpaceTemperatures temperatures;
  std::vector<SpaceId> rooms;            ///< airs with a thermometer
  std::vector<double> thermometer_band;  ///< wanted half width for each, K; empty: no thermometers
  std::optional<double> coupling_band;   ///< wanted half width by the largest coupling
  std::vector<geometry::Point> places;   ///< that shall be nodes
  std::size_t node_limit = 200'000;      ///< of the points of the mesh
};

/// What was proved, and the fields on the last mesh.
struct Proof {
  geometry::NodedTriangles nodes;
  std::vector<SpaceId> airs;        ///< those that touch material, in order of their ids
  std::vector<TwoFields> fields;    ///< of each air at 1, all others at 0
  std::vector<Coupling> couplings;  ///< of all pairs, low and high proved, by the second degree
  std::vector<Thermometer> thermometers;
  std::vector<std::pair<SpaceId, SpaceId>> touching;  ///< see Conduction::touching
  double identity = 0.0;     ///< worst of |gap - (upper - lower)| / upper: rounding, or a fault
  std::size_t unknowns = 0;  ///< of the temperature on the last mesh
  int meshes = 0;
  bool reached = true;
};

/// Solves on finer and finer triangles until all half widths are reached or the limit of nodes is.
/// Throws: SolveError where the identity of the gap does not hold, or the factorisation fails.
[[nodiscard]] Proof proof_of(const Claim& claim);

}  // namespace quoin::solver
