// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

#include "cases/grammar/written.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/files.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// One variant from its tree, as yet without a name. `document`: the keys of the tree, as read;
/// `faults_before`: how many faults were met before it was. With a fault since then the variant is
/// not complete.
[[nodiscard]] Variant variant_of(const Node& tree, const Document& document,
                                 std::size_t faults_before, const Files& files, FaultList& faults);

}  // namespace quoin::cases
