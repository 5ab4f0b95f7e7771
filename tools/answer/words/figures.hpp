// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace quoin::tools {

/// A number with so many decimals, never "-0"; "–" where it is not finite.
[[nodiscard]] std::string fixed(double value, int decimals);

/// How many decimals, at least `least`, keep numbers that differ in their order when printed beside
/// each other: 11.09 and 11.12 need two. At most four.
[[nodiscard]] int decimals_for(const std::vector<double>& values, int least);

/// Half the width of a band, rounded up so that it is never said to be nothing: "0.001".
[[nodiscard]] std::string fixed_band(double band, int decimals);

/// A chance, 0 to 1, as so many of 100 cases: "40", "under 1".
[[nodiscard]] std::string cases_of_100(double chance);

/// A chance, 0 to 1, as people count: "in 40 of 100 cases".
[[nodiscard]] std::string chance_words(double chance);

}  // namespace quoin::tools
