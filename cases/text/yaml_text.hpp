// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// A tree as text in one spelling: equal trees give equal texts, and the text reads as the same
/// tree. What stands at the top of a map is a line each, all below it in brackets.
[[nodiscard]] std::string yaml_text(const Node& tree);

/// A value in one line.
[[nodiscard]] std::string yaml_line(const Node& value);

}  // namespace quoin::cases
