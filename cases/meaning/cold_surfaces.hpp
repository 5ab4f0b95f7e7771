// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written_space.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/named.hpp"

namespace quoin::cases {

/// Fills in how much colder than its air a space is to its surfaces, by a clear sky and by a stated
/// rate of evaporation, each with a remark. What a wet surface loses depends on its temperature and
/// stays to be solved.
void cool_surfaces(const std::vector<Named<WrittenSpace>>& written, Per<SpaceId, Space>& spaces,
                   FaultList& faults, std::vector<Remark>& remarks);

}  // namespace quoin::cases
