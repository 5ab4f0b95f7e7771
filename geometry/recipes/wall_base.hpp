// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// The foot of a wall on the ground in a vertical cut: the wall above the floor, its foundation and
/// footing, a floor on the ground or over a void, and the ground as far as ISO 10211 wants it.
struct WallBase {
  static constexpr std::string_view name = "wall base";
  static constexpr std::string_view about =
      "the foot of a wall in a vertical cut: wall, floor, foundation and ground";
  static constexpr bool vertical = true;

  std::vector<Layer> layers;   ///< of the wall above the floor
  std::optional<double> wall;  ///< from the floor up to the cut plane, m
  std::vector<Layer> foundation;
  RegionId footing;
  double footing_width = 0.45;
  double footing_height = 0.15;
  double footing_depth = 0.6;           ///< from the floor down to its underside, m
  std::vector<Layer> floor;             ///< from its top down; empty: bare ground
  SpaceId beneath;                      ///< the void under a suspended floor; not valid: on ground
  std::optional<double> void_depth;     ///< from the underside of the floor to the ground, m
  double floor_width = 8.0;             ///< between the walls it spans, m
  std::vector<Layer> edge_insulation;   ///< on the inside face of the foundation; may be empty
  double edge_depth = 0.45;             ///< from the floor down to its lower edge, m
  RegionId damp_course;                 ///< not valid: too thin to be drawn
  std::optional<double> course_height;  ///< of the damp course above the floor, m
  double course_thickness = 0.003;      ///< m
  MembraneId course_sheet;              ///< where it is drawn as a sheet; not valid: none
  RegionId ground;
  double ground_level = -0.15;  ///< of the ground outside above the floor, m
  SpaceId inside;
  SpaceId outside;
};

template <class Visitor>
void describe(Visitor& visit, WallBase& base) {
  visit.layers("layers", base.layers, "of the wall above the floor, from the inside out");
  visit.length("wall length", base.wall, 0.05, 20.0,
               "from the floor up to the cut plane; by default 1 m or three thicknesses of the "
               "wall");
  visit.layers("foundation", base.foundation,
               "of the wall below the floor, from the inside out, flush with it outside",
               "[{material: wall brick, thickness: 330}]");
  visit.material("footing", base.footing, "limestone rubble", "the material of the footing");
  visit.length("footing width", base.footing_width, 0.05, 5.0, "centred under the foundation");
  visit.length("footing height", base.footing_height, 0.02, 3.0, "from its underside to its top");
  visit.length("footing depth", base.footing_depth, 0.1, 5.0, "from the floor to its underside");
  visit.optional_layers("floor", base.floor,
                        "from its top down; by default the bare ground is the floor",
                        "[{material: clay tile, thickness: 25}]");
  visit.optional_space("void", base.beneath, "underfloor",
                       "the unheated space under a suspended floor");
  visit.length("void depth", base.void_depth, 0.02, 3.0,
               "from the underside of the floor to the ground under it; by default 300 mm", 0.36);
  visit.length("floor width", base.floor_width, 1.0, 50.0,
               "between the walls it spans, or area / half its perimeter (ISO 13370)");
  visit.optional_layers("edge insulation", base.edge_insulation,
                        "on the inside face of the foundation, from the inside out",
                        "[{material: XPS, thickness: 30}]");
  visit.length("edge depth", base.edge_depth, 0.02, 5.0,
               "from the floor to the lower edge of that insulation");
  visit.optional_material("damp course", base.damp_course, "slate",
                          "the damp-proof course, where it is thick enough to be drawn");
  visit.length("damp course height", base.course_height, -2.0, 5.0,
               "of the damp-proof course above the floor", 0.15);
  visit.length("damp course thickness", base.course_thickness, 0.0005, 0.2, "where it is drawn");
  visit.optional_membrane("damp course sheet", base.course_sheet, "bitumen felt",
                          "what it is to vapour, where it is drawn as a sheet without thickness");
  visit.ground("ground", base.ground, "clay soil", "the material of the ground");
  visit.length("ground level", base.ground_level, -3.0, 3.0,
               "of the ground outside above the floor; below zero: it lies lower");
  visit.space("inside", base.inside, "inside", "the space inside");
  visit.space("outside", base.outside, "outside", "the space outside");
}

/// Whether the ground of a void lies no more than 0.5 m below that outside, as ISO 13370 wants it
/// for the U of a suspended floor (memory); beyond that psi is left out.
[[nodiscard]] bool is_shallow(const WallBase& base);

/// Why a wall base cannot be built as described; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to(const WallBase& base);

/// The drawing of a wall base, y up. The inside face of the wall lies on x = 0, its outside at
/// x = t, the floor on y = 0. It is drawn once for both purposes, so far as the one that asks for
/// more: the ground reaches half the floor's width inwards, and two and a half widths, 3 m and
/// three thicknesses of the wall at least outwards and down. Source: ISO 10211 (memory).
[[nodiscard]] Drawing drawing_of(const WallBase& base);

}  // namespace quoin::geometry
