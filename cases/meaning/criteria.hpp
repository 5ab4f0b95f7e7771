// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written_criterion.hpp"
#include "cases/grammar/written_space.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/named.hpp"

namespace quoin::cases {

/// The criteria as written, guides looked up; mould where none is written and a humidity is known.
/// `humid`: whether that of some space inside is, be it by the months of a climate alone.
[[nodiscard]] std::vector<Criterion> criteria_of(
    const std::vector<Named<WrittenCriterion>>& written, bool humid, FaultList& faults);

/// Whether the humidity of a space inside is stated or follows from its household, or would if it
/// were written without a fault. Shape: `written` as spaces.
[[nodiscard]] bool any_humid(const std::vector<Named<WrittenSpace>>& written,
                             const Per<SpaceId, Space>& spaces);

/// Refuses thresholds stated for another inside surface resistance than that of the spaces the
/// section shows: a factor means nothing without its resistance. Call once the sheet is painted.
void check_resistances(const std::vector<Named<WrittenCriterion>>& written, const Variant& variant,
                       FaultList& faults);

}  // namespace quoin::cases
