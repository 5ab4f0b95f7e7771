// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::cases {

/// Something a new case can be started from.
struct StartingPoint {
  std::string_view name;
  std::string_view about;
};

/// Every recipe, and the sheet.
[[nodiscard]] std::vector<StartingPoint> starting_points();

/// A commented case file with a recipe of this name, or a sheet; absent for unknown names. It
/// reads without faults.
[[nodiscard]] std::optional<std::string> starting_case(std::string_view name);

}  // namespace quoin::cases
