// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/files.hpp"

namespace quoin::cases {

/// The spaces as written, `like` followed, and checked against each other. Those of which it is not
/// clear what they are have no valid air; they are in the list so that names can be looked up.
[[nodiscard]] Per<SpaceId, Space> spaces_of(std::vector<Named<WrittenSpace>> written,
                                            const Files& files, FaultList& faults,
                                            std::vector<Remark>& remarks);

/// The space of a name; not valid where there is none.
[[nodiscard]] SpaceId find_space(const Per<SpaceId, Space>& spaces, std::string_view name);

[[nodiscard]] std::vector<std::string> names_of(const Per<SpaceId, Space>& spaces);

}  // namespace quoin::cases
