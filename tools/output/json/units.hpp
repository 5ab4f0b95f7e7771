// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json.hpp>

#include "geometry/sheet.hpp"

/// Lengths and shares as findings tell them, without the last digits that multiplying brings in:
/// 345 mm, not 345.00000000000006.
namespace quoin::tools {

[[nodiscard]] double mm(double metres);
[[nodiscard]] double percent(double fraction);

/// A place as [x, y] in mm.
[[nodiscard]] nlohmann::ordered_json place_json(geometry::Point place);

}  // namespace quoin::tools
