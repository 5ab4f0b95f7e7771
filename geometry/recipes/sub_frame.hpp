// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

#include "geometry/ids.hpp"

namespace quoin::geometry {

/// What stands between the structural opening and the frame of a window: a timber ground, a batten,
/// a profile of metal or plastic. It is fabric: judged with the wall, not with the window.
struct SubFrame {
  RegionId region;                ///< not valid: none
  std::optional<double> width;    ///< from the structural opening to the frame, m
  std::optional<double> depth;    ///< through the wall, m; absent: that of the frame
  std::optional<double> setback;  ///< from the outside face of the wall, m; absent: the frame's
};

template <class Visitor>
void describe_sub_frame(Visitor& visit, SubFrame& sub) {
  visit.optional_material("sub-frame", sub.region, "softwood across the grain",
                          "between the structural opening and the frame: a timber ground, a "
                          "profile of metal; judged with the wall");
  visit.length("sub-frame width", sub.width, 0.001, 0.5,
               "from the structural opening to the frame; by default 30 mm", 0.036);
  visit.length("sub-frame depth", sub.depth, 0.001, 1.0,
               "through the wall; by default that of the frame", 0.084);
  visit.length("sub-frame setback", sub.setback, 0.0, 2.0,
               "from the outside face of the wall; by default that of the frame", 0.12);
}

/// Something that stands in an opening, by the depths of its faces below the inside face of the
/// wall, m.
struct InDepth {
  double inside = 0.0;
  double outside = 0.0;
};

/// Where a sub-frame stands in a wall of some thickness; of no width where there is none.
struct SubFrameAt {
  double width = 0.0;  ///< m
  InDepth faces;
};
[[nodiscard]] SubFrameAt placed(const SubFrame& sub, const InDepth& frame, double wall_thickness);

/// Why a sub-frame cannot stand in a wall beside a frame; nothing where it can, or there is none.
[[nodiscard]] std::optional<std::string> objection_to_sub_frame(const SubFrame& sub,
                                                                const InDepth& frame,
                                                                double wall_thickness);

}  // namespace quoin::geometry
