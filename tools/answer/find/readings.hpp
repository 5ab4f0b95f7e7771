// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// A temperature read on site beside the computed one.
struct ComparedReading {
  std::string probe;
  double read = 0.0;        ///< degC
  double plus_minus = 0.0;  ///< K
  double with_surface =
      0.0;                 ///< computed with the surface resistances for surface temperature, degC
  double with_heat = 0.0;  ///< computed with those for heat flow, degC
  double computed = 0.0;   ///< between the two, as far for every reading of the variant, degC
  bool explained = false;  ///< the reading, give or take, meets what is computed
};

/// The readings of a variant beside its solution. The surface resistance of the day of a survey is
/// not known; it mostly lies between that for surface temperature and that for heat flow. One and
/// the same is taken for all readings: that which explains most of them, and of these the one that
/// leaves the least. Common practice, no source. No standard covers this comparison.
[[nodiscard]] std::vector<ComparedReading> compared_readings(const SolvedVariant& solved);

/// Whether a variant may be the state that the readings of the first were taken in: drawn alike, in
/// the same air. What is built or aired otherwise was not read.
[[nodiscard]] bool may_have_been_read(const SolvedVariant& first, const SolvedVariant& later);

}  // namespace quoin::tools
