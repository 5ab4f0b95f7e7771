// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>

#include "tools/results.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {

/// How much of the report is shown.
enum class Told : std::uint8_t {
  first,  ///< what comes of it, what changes, warnings and cautions
  all,    ///< every section
};

/// The report of a case for the terminal: everything but its pictures.
[[nodiscard]] std::string text_report(const Results& results, const TextStyle& style,
                                      Told told = Told::all);

}  // namespace quoin::tools
