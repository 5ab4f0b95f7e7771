// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// Faults of spaces that ask for strips in their frame corners.
void check_frame_corners(const std::vector<Named<WrittenSpace>>& written,
                         const Per<SpaceId, Space>& spaces, FaultList& faults);

/// Paints the strips that spaces ask for over the sheet of a variant. They belong to a space of the
/// same air, which is added where there is none yet.
void paint_frame_corners(Variant& variant);

/// The space of the strips in the frame corners of a space; not valid where there are none.
[[nodiscard]] SpaceId strips_of(const Per<SpaceId, Space>& spaces, SpaceId space);

}  // namespace quoin::cases
