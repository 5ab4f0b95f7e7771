// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "cases/model/case.hpp"
#include "tools/terminal/text_table.hpp"

namespace quoin::tools {

/// The section in letters, one for each material and a figure for each space, with figures along x
/// below it and along y beside it, mm; `*` marks probes, `o` the origin: enough to see a wrong
/// painting order at once. Every strip shows, so thin layers are wider than to scale.
[[nodiscard]] std::string section_sketch(const cases::Variant& variant, const TextStyle& style);

/// What the letters and figures of the sketch stand for, and where its probes lie.
[[nodiscard]] std::string section_legend(const cases::Variant& variant, const TextStyle& style);

/// Both.
[[nodiscard]] std::string section_drawing(const cases::Variant& variant, const TextStyle& style);

}  // namespace quoin::tools
