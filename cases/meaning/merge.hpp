// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// Replaces in a map the keys that another map has: maps are merged key by key, everything else is
/// replaced as a whole, `~` removes a key. Fault: a key to remove that is not there.
void merge(Node& base, const Node& by, FaultList& faults);

}  // namespace quoin::cases
