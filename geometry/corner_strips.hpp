// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// Drawn thickness of a strip, m. It only says which stretch of a face is meant.
inline constexpr double strip_thickness = 0.001;
/// How far a strip reaches along the face that does not protrude, at most, m.
inline constexpr double strip_reach = 0.03;

/// The strips of poorer surface exchange in the corners of frames: areas of a space that touch the
/// faces. A corner is where two faces of frame or glazing along x and y enclose a right angle of
/// the space. One of its faces protrudes: it ends in a convex corner; of two that do, the shorter.
/// The strip covers all its depth, and of the other face as much, at most `strip_reach`. A corner
/// of which no face ends within the section has no depth and no strip.
/// Shape: `is_frame` says of each region whether it is part of a frame or glazing.
/// Source: EN ISO 10077-2, surfaces of increased resistance (memory); which of two faces: ours.
[[nodiscard]] std::vector<Outline> corner_strips(const Section& section, SpaceId space,
                                                 const Per<RegionId, char>& is_frame);

}  // namespace quoin::geometry
