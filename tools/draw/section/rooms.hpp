// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/draw/section/view.hpp"

namespace quoin::tools {

/// What `room_of` tells of a space, for each part of it that is drawn apart, such as above and
/// below a floor.
[[nodiscard]] std::vector<Box> rooms_of(const View& view, geometry::SpaceId space);

}  // namespace quoin::tools
