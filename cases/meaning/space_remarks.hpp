// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/model/case.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// Remarks, no faults, on what the spaces of a variant leave uncertain or unjudged. `document`: as
/// it was read.

/// A factor from readings divides by the difference of the temperatures when they were taken.
void remark_on_small_difference(const Document& document, const Per<SpaceId, Space>& spaces,
                                std::vector<Remark>& remarks);

/// Inside spaces that no humidity criterion can judge, where others are judged.
void remark_on_unknown_humidity(const Document& document, const Variant& variant,
                                std::vector<Remark>& remarks);

/// Rules for the moisture inside that the months of a climate take the place of. `climate`: its
/// entry in the tree.
void remark_on_overruled_moisture(const Variant& variant, const Entry& climate,
                                  std::vector<Remark>& remarks);

/// Spaces that ask for strips in frame corners where there are no such corners.
void remark_on_missing_corners(const Document& document, Variant& variant);

}  // namespace quoin::cases
