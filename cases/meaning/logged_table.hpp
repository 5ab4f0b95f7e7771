// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/grammar/written_space.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/files.hpp"

namespace quoin::cases {

/// Replaces the tables of readings that spaces name by their means: of the temperatures, and of the
/// vapour pressures as the humidity at the mean temperature. Remarks tell the means.
void fetch_logs(std::vector<Named<WrittenSpace>>& spaces, const Files& files, FaultList& faults,
                std::vector<Remark>& remarks);

}  // namespace quoin::cases
