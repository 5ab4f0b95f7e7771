// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "cases/grammar/written.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// The outline of a painted area, from x and y or from its corners. Faults: neither or both given,
/// too thin to be seen, an outline that crosses itself.
[[nodiscard]] std::optional<geometry::Outline> outline_of(const WrittenPatch& patch,
                                                          const Node& node, FaultList& faults);

}  // namespace quoin::cases
