// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

// A path says where a value stands in a tree: keys of maps and positions in lists, from 0, joined
// by
// '/'. A '~' or '/' within a key is written ~0 or ~1.

/// The steps of a path. Shape: at least one.
[[nodiscard]] std::vector<std::string> steps_of(std::string_view path);

/// The value at the end of some steps; null where there is none.
[[nodiscard]] Node* value_at(Node& tree, const std::vector<std::string>& steps);

/// The path of everything in a tree but the tree itself, in the order of the text.
[[nodiscard]] std::vector<std::string> paths_of(const Node& tree);

}  // namespace quoin::cases
