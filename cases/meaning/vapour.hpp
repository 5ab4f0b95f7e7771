// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/grammar/written.hpp"
#include "cases/meaning/palette.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// Reads what is asked about vapour into the variant, whose section is drawn, and checks that
/// everything it takes is known: humidities, vapour resistances, the year.
void ask_about_vapour(const Node& tree, const Document& document, const Palette& palette,
                      Variant& variant, FaultList& faults);

}  // namespace quoin::cases
