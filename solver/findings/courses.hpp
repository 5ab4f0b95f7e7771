// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/findings.hpp"

namespace quoin::solver {

/// The temperature along one developed surface, whatever the mesh.
struct Course {
  geometry::Surface surface;
  std::vector<geometry::Point> place;  ///< of each node along it. Shape: surface.along
  std::vector<double> temperature;     ///< there, degC
};

/// The courses of every surface of a solution.
[[nodiscard]] std::vector<Course> courses_of(const Solution& solution);

}  // namespace quoin::solver
