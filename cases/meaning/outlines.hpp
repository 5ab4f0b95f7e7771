// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>

#include "cases/grammar/written.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// Of one outline; crossings are sought pair by pair.
inline constexpr std::size_t most_corners = 1000;

/// The outline of a painted area, from x and y or from its corners. Faults: neither or both given,
/// too thin to be seen, an outline that crosses itself.
[[nodiscard]] std::optional<geometry::Outline> outline_of(const WrittenPatch& patch,
                                                          const Node& node, FaultList& faults);

}  // namespace quoin::cases
