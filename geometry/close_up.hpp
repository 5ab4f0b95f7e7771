// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "geometry/section.hpp"

namespace quoin::geometry {

/// The part of a section within an upright rectangle, to look at: its cut edges are no cut planes.
/// Strips that a sloping edge crosses are kept whole.
[[nodiscard]] Section close_up(const Section& section, const Outline& rectangle);

}  // namespace quoin::geometry
