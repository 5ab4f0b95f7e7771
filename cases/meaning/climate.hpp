// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "cases/grammar/written_climate.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/files.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// The year as written in lists or in a table beside the case file, checked; absent with a fault.
/// `entry`: the key of the climate with what was written.
[[nodiscard]] std::optional<Climate> climate_of(const WrittenClimate& written, const Entry& entry,
                                                const Per<SpaceId, Space>& spaces,
                                                const Files& files, FaultList& faults);

}  // namespace quoin::cases
