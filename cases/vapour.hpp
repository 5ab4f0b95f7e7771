// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/case.hpp"
#include "cases/fault_list.hpp"
#include "cases/palette.hpp"
#include "cases/written.hpp"
#include "cases/yaml_tree.hpp"

namespace quoin::cases {

/// Reads what is asked about vapour into the variant, whose section is drawn, and checks that
/// everything it takes is known: humidities, vapour resistances, the year.
void ask_about_vapour(const Node& tree, const Document& document, const Palette& palette,
                      Variant& variant, FaultList& faults);

}  // namespace quoin::cases
