// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "solver/findings/findings.hpp"
#include "solver/triangles/places.hpp"
#include "solver/triangles/proof.hpp"

namespace quoin::solver {

/// A point of the triangles, with four unknowns and a direct method, takes as much time as so many
/// nodes of a grid.
inline constexpr std::size_t nodes_a_point = 12;

/// What is asked of a sheet in triangles. Bands are half widths; absent: do not care.
struct Claim {
  geometry::Sheet sheet;
  Physics physics;
  SpaceTemperatures temperatures;
  std::vector<SpaceId> rooms;             ///< airs with thermometers and cold spots
  std::vector<double> spot_bands;         ///< wanted of the coldest spot of each room, K; or empty
  std::vector<double> thermometer_bands;  ///< wanted of each room's, K; empty: no thermometers
  std::optional<double> coupling_band;    ///< wanted, by the largest coupling
  std::vector<geometry::Point> probes;
  std::optional<double> probe_band;  ///< K
  std::vector<Thermometer> guessed;  ///< where `next` of each is likely to be the coldest window
  bool cold_spots = true;            ///< whether to look for them; false: thermometers alone
  std::size_t node_limit = 200'000;  ///< of the points of the mesh
  std::size_t patience = 2'500;      ///< points beyond which one step that hardly helps is the last
};

/// What was found, and the last mesh with what is solved on it.
struct Answer {
  geometry::Triangles triangles;
  std::unique_ptr<TriangleLevel> level;
  std::vector<Coupling> couplings;
  std::vector<Thermometer> thermometers;
  std::vector<AirSurface> airs;  ///< of the rooms that have a surface
  std::vector<ProbeValue> probes;
  int meshes = 0;
  bool reached = true;
};

/// Solves on finer and finer triangles until all that is wanted is reached or the limit of nodes
/// is. Throws: SolveError.
[[nodiscard]] Answer answer_of(const Claim& claim);

}  // namespace quoin::solver
