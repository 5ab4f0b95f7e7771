// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "materials/laws/basis.hpp"

namespace quoin::materials {

/// Dry conductivity times a factor read from a table over moisture by volume, straight between its
/// rows. The initial rows are the classic ones for masonry.
/// Source: up to 10 % a technical note on clay brick; above from memory. At saturation 16 to 36 %
/// above what was measured (Materials 15 (2022) 4001).
struct PerVolumeTable {
  static constexpr std::string_view name = "per volume table";

  /// Moisture in % by volume, and the factor on the dry conductivity there. Begins at 0 with 1.
  std::vector<std::pair<double, double>> factors = {{0, 1.00},  {1, 1.30},  {2, 1.48},
                                                    {3, 1.60},  {5, 1.75},  {10, 2.10},
                                                    {15, 2.35}, {20, 2.55}, {25, 2.75}};
};

template <class Visitor>
void describe(Visitor& visit, PerVolumeTable& law) {
  visit.table("factors", law.factors, "moisture, % by volume", "factor",
              "factor on the dry conductivity; straight between the rows, the first is 0: 1");
}

/// W/(m K); beyond the last row that of the last row.
[[nodiscard]] double conductivity(const PerVolumeTable& law, const Basis& dry, double moisture);

[[nodiscard]] TrustedRange trusted(const PerVolumeTable& law, const Basis& dry);

[[nodiscard]] std::optional<std::string> flaw(const PerVolumeTable& law, const Basis& dry);

}  // namespace quoin::materials
