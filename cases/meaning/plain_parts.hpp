// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// Gives a section drawn by hand the plain parts that the author names: their layers from the
/// inside out, as the drawing shows them along the line. A recipe knows its own; stating them there
/// is a fault, as is a line that does not go straight from one air through material to another.
void add_plain_parts(const std::vector<Named<WrittenPlainPart>>& written, Variant& variant,
                     FaultList& faults);

}  // namespace quoin::cases
