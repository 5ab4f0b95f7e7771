// SPDX-License-Identifier: Apache-2.0
#include "materials/laws/per_volume_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quoin::materials {

double conductivity(const PerVolumeTable& law, const Basis& dry, double moisture) {
  const double percent = 100.0 * moisture;
  const auto above = std::find_if(law.factors.begin(), law.factors.end(),
                                  [&](const auto& row) { return row.first >= percent; });
  if (above == law.factors.end()) return dry.conductivity * law.factors.back().second;
  if (above == law.factors.begin()) return dry.conductivity * above->second;
  const auto [left, low] = *std::prev(above);
  const auto [right, high] = *above;
  return dry.conductivity * std::lerp(low, high, (percent - left) / (right - left));
}

TrustedRange trusted(const PerVolumeTable& law, const Basis& dry) {
  const double last_row = law.factors.back().first / 100.0;
  if (last_row < fullest(dry)) return {last_row, "the table ends there; its last factor is kept"};
  return {fullest(dry), "it holds no more water"};
}

std::optional<std::string> flaw(const PerVolumeTable& law, const Basis& /*dry*/) {
  if (law.factors.size() < 2) return "the table of factors needs two rows or more";
  if (law.factors.front() != std::pair{0.0, 1.0}) {
    return "the table of factors must begin with moisture 0 and factor 1";
  }
  for (std::size_t i = 1; i < law.factors.size(); ++i) {
    const auto [moisture, factor] = law.factors[i];
    if (moisture <= law.factors[i - 1].first) {
      return fmt::format("the moistures of the table must grow, but {} % follows {} %", moisture,
                         law.factors[i - 1].first);
    }
    if (factor < law.factors[i - 1].second) {
      return fmt::format(
          "the factors of the table must not fall, but {} follows {}: water conducts better than "
          "the air it displaces",
          factor, law.factors[i - 1].second);
    }
  }
  return std::nullopt;
}

}  // namespace quoin::materials
