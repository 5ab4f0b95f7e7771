// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// A syntax error as a person would put it, at the place where it most likely was made.
struct SyntaxError {
  Mark mark;
  Complaint complaint;
};

/// Looks for the slip behind a parser's message: a tab, a missing space after a colon, an open
/// bracket or quote.
[[nodiscard]] SyntaxError syntax_error(const std::string& message, Mark mark,
                                       const std::vector<std::string_view>& lines);

}  // namespace quoin::cases
