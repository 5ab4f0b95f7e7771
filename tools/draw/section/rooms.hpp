// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "tools/draw/section/view.hpp"

namespace quoin::tools {

/// The largest rectangle that shows nothing but one space, on the picture.
[[nodiscard]] std::optional<Box> room_of(const View& view, geometry::SpaceId space);

/// What `room_of` tells of a space, for each part of it that is drawn apart, such as above and
/// below a floor.
[[nodiscard]] std::vector<Box> rooms_of(const View& view, geometry::SpaceId space);

}  // namespace quoin::tools
