// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// A temperature read on site beside the computed ones.
struct ComparedReading {
  std::string probe;
  double read = 0.0;        ///< degC
  double plus_minus = 0.0;  ///< K
  double with_surface =
      0.0;                 ///< computed with the surface resistances for surface temperature, degC
  double with_heat = 0.0;  ///< computed with those for heat flow, degC
  bool explained = false;  ///< the reading, give or take, meets the span between the two
};

/// The readings of a variant beside its solution. The surface resistance of the day of a survey is
/// not known; it mostly lies between that for surface temperature and that for heat flow, so the
/// model is taken to say a span. Common practice, no source. No standard covers this comparison.
[[nodiscard]] std::vector<ComparedReading> compared_readings(const SolvedVariant& solved);

}  // namespace quoin::tools
