// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "cases/fault_list.hpp"
#include "cases/written.hpp"
#include "cases/yaml_tree.hpp"

namespace quoin::cases {

/// The outline of a painted area, from x and y or from its corners. Faults: neither or both given,
/// too thin to be seen, an outline that crosses itself.
[[nodiscard]] std::optional<geometry::Outline> outline_of(const WrittenPatch& patch,
                                                          const Node& node, FaultList& faults);

}  // namespace quoin::cases
