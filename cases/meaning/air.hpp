// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written_space.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/named.hpp"

namespace quoin::cases {

/// Fills in what the file does not state of the air of spaces but what follows from the others: the
/// temperature of unheated ones by b or, as a first guess, by their losses; the humidity inside by
/// what the household adds. Spaces that are `like` another are left alone.
void derive_air(const std::vector<Named<WrittenSpace>>& written, Per<SpaceId, Space>& spaces,
                FaultList& faults, std::vector<Remark>& remarks);

}  // namespace quoin::cases
