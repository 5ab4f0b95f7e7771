// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quoin::tools {

std::string fixed(double value, int decimals) {
  if (!std::isfinite(value)) return "–";
  std::string digits = fmt::format("{:.{}f}", value, decimals);
  const bool nothing = digits.find_first_not_of("-0.") == std::string::npos;
  return nothing && digits[0] == '-' ? digits.substr(1) : digits;
}

int decimals_for(const std::vector<double>& values, int least) {
  constexpr int most = 4;
  for (int decimals = least; decimals < most; ++decimals) {
    bool apart = true;
    for (const double a : values) {
      for (const double b : values)
        apart = apart && (!(a < b) || fixed(a, decimals) != fixed(b, decimals));
    }
    if (apart) return decimals;
  }
  return most;
}

std::string fixed_band(double band, int decimals) {
  if (!std::isfinite(band)) return "–";
  const double unit = std::pow(10.0, -decimals);
  // What is left after rounding up: 0.002 must not become 0.003.
  return fixed(std::max(std::ceil(band / unit - 1e-9), 1.0) * unit, decimals);
}

namespace {

/// So many of 100 cases, with words for what lies below 1, above 99, or just above the limit of
/// what is marginal, which must not be printed for what is beyond it.
std::string counted(double chance, std::string_view below, std::string_view above) {
  const double cases = 100.0 * chance;
  if (cases < 1.0) return fmt::format("{} 1", below);
  if (cases > 99.0) return fmt::format("{} 99", above);
  if (cases > 10.0 && cases < 10.5) return fmt::format("{} 10", above);
  return fmt::format("{:.0f}", cases);
}

}  // namespace

std::string cases_of_100(double chance) { return counted(chance, "under", "over"); }

std::string chance_words(double chance) {
  return fmt::format("in {} of 100 cases", counted(chance, "fewer than", "more than"));
}

}  // namespace quoin::tools
