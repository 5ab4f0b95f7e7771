// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "cases/model/case.hpp"
#include "cases/text/files.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// The case a text describes. `file` names it in faults; `files` holds the tables it names.
/// Throws: InputError with all faults of the text.
[[nodiscard]] Case case_of(std::string_view text, const std::string& file, const Files& files = {});

/// The case of a tree, as if it had been read from `text`. Faults have the places of the tree.
/// Throws: InputError.
[[nodiscard]] Case case_of(const Node& tree, std::string_view text, const std::string& file,
                           const Files& files);

/// The same for a section of a house, whose readings may name what the house's survey holds.
[[nodiscard]] Case case_of_house(std::string_view text, const std::string& file,
                                 const Files& files);

}  // namespace quoin::cases
