// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/scheme/checks.hpp"
#include "solver/scheme/field.hpp"

namespace quoin::solver {

/// How easily vapour moves through still air, kg/(m s Pa). Source: ISO 13788 (memory).
inline constexpr double air_permeability = 2.0e-10;

/// Everything about materials and surfaces that steady diffusion of vapour needs. Surfaces have no
/// resistance but what is told here.
struct VapourPhysics {
  Per<RegionId, double> openness;            ///< 1 / mu; 0 lets nothing through
  Per<SpaceId, Per<RegionId, double>> coat;  ///< sd of what lies on the surface, m; 0: nothing
  Per<SpaceId, SpaceId> air;                 ///< of each space: itself, or the space it is like
  Per<RegionId, char> wet;                   ///< kept at saturation whatever leaves it
  Per<geometry::MembraneId, double> membrane = {};  ///< sd, m; infinite: tight
};

/// Vapour pressure of each space, Pa.
using SpacePressures = Per<SpaceId, double>;

/// Water that lies at the nodes, and for how long the conditions last.
struct Stored {
  std::vector<double> water;  ///< kg/m at each node, at the start
  double seconds = 0.0;
};

/// Steady diffusion through a section whose temperatures are known, with condensation wherever the
/// pressure would pass saturation. Shape: nodes are those of geometry::TwoSided, on either side of
/// membranes; water of nodes that are one lies at their leader.
struct VapourField {
  std::vector<double> pressure;    ///< Pa; NaN where no vapour comes
  std::vector<double> saturation;  ///< pressure at the temperature of each node, Pa
  std::vector<double> condensing;  ///< kg/(m s) at each node; with stored water what is there at
                                   ///< the end by the seconds
  Per<SpaceId, double> flows;      ///< from each space into the section, kg/(m s)
  double from_wet = 0.0;           ///< what wet regions give off, kg/(m s)
  Per<SpaceId, double> dripping;   ///< length of surface below the dew point of its air, m: it is
                                   ///< taken to be just saturated, what runs down it is not counted
  int iterations = 0;              ///< how often the condensing nodes were chosen
  std::vector<Check> checks;
};

/// Diffusion on the mesh of a field of temperatures. Where `stored` is given, water that lies at a
/// node keeps it saturated while it lasts: what is left after the seconds is part of the answer, so
/// one solve takes one step of any length and no water is lost. Throws: SolveError.
[[nodiscard]] VapourField vapour_field(const geometry::Mesh& mesh,
                                       const std::vector<double>& temperature,
                                       const VapourPhysics& physics,
                                       const SpacePressures& pressures,
                                       const LinearOptions& options,
                                       const Stored* stored = nullptr);

}  // namespace quoin::solver
