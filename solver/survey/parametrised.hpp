// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#include "geometry/surface.hpp"
#include "solver/linear/linear.hpp"

namespace quoin::solver {

using geometry::SpaceId;

/// A section on one mesh whose conductivities and surface resistances may still take any value.
struct Parametrised {
  geometry::Mesh mesh;
  std::size_t regions = 0;             ///< each with a conductivity
  std::vector<geometry::Face> faces;   ///< of the mesh
  std::vector<std::size_t> group;      ///< of each face: those of one surface resistance
  std::vector<std::size_t> group_air;  ///< of each group: which of the airs
  std::size_t airs = 0;
};

/// One value for each parameter.
struct Setting {
  std::vector<double> conductivity;  ///< of each region, W/(m K)
  std::vector<double> conductance;   ///< of each group of faces, 1/R, W/(m2 K)
};

/// A weighted sum of the temperatures of some nodes.
using Watched = std::vector<std::pair<std::size_t, double>>;

/// The conductances of a section that conduct for one unit of each parameter.
struct UnitOperator {
  struct Link {
    std::size_t from = 0;
    std::size_t to = 0;  ///< the same as `from`: to the air
    double conductance = 0.0;
  };
  std::vector<Link> links;
};

/// Of each region and then of each group of faces.
[[nodiscard]] std::vector<UnitOperator> unit_operators(const Parametrised& section);

/// What each air counts for in each thing watched, solved in full on the mesh; the shares of all
/// airs in a mean of nodes add to one. Shape: watched by airs. Throws: SolveError.
[[nodiscard]] std::vector<double> full_shares(const Parametrised& section, const Setting& setting,
                                              const std::vector<Watched>& watched,
                                              const LinearOptions& options);

/// The same where the operators of units are at hand.
[[nodiscard]] std::vector<double> full_shares(const Parametrised& section,
                                              const std::vector<UnitOperator>& units,
                                              const Setting& setting,
                                              const std::vector<Watched>& watched,
                                              const LinearOptions& options);

/// The fields of all airs but the last, each at 1 and all others at 0, at every node.
/// Shape: airs - 1 by nodes. Throws: SolveError.
[[nodiscard]] std::vector<std::vector<double>> full_fields(const Parametrised& section,
                                                           const Setting& setting,
                                                           const LinearOptions& options);

/// The same where the operators of units are at hand.
[[nodiscard]] std::vector<std::vector<double>> full_fields(const Parametrised& section,
                                                           const std::vector<UnitOperator>& units,
                                                           const Setting& setting,
                                                           const LinearOptions& options);

}  // namespace quoin::solver
