// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// What an owner needs to know first.
struct Advice {
  std::size_t chosen = 0;          ///< the variant that comes out best; the first where none does
  std::string sentence;            ///< what happens at which spot, and what mends it
  Tone tone = Tone::plain;         ///< of the case as written
  std::vector<std::string> steps;  ///< what to do, in order, each with what it gains
};

/// Only of what the variants of the case show. The case has a variant.
[[nodiscard]] Advice advice_on(const Results& results);

}  // namespace quoin::tools
