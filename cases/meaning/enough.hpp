// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written_climate.hpp"
#include "cases/meaning/palette.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// What a variant wants changed until its criteria just hold. `node`: the map it was read from.
[[nodiscard]] Enough enough_of(const WrittenEnough& written, const Node& node,
                               const Palette& palette, FaultList& faults);

/// Where a variant asks for it.
struct AskedEnough {
  Mark thickness, moisture;
};
[[nodiscard]] AskedEnough asked_enough(const Node& tree);

/// Faults of what cannot be answered: of a material that no variant that asks for it shows, and of
/// the moisture of one that is not known to hold any. Shape: `asked` as variants.
void check_enough(const std::vector<Variant>& variants, const std::vector<AskedEnough>& asked,
                  FaultList& faults);

}  // namespace quoin::cases
