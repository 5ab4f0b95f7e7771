// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "cases/model/case.hpp"
#include "tools/terminal/text_table.hpp"

namespace quoin::tools {

/// The section in letters, one for each material and a figure for each space, with a legend: enough
/// to see a wrong painting order at once. Every strip shows, so thin layers are wider than to
/// scale.
[[nodiscard]] std::string section_drawing(const cases::Variant& variant, const TextStyle& style);

}  // namespace quoin::tools
