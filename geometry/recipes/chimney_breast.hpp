// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// A chimney breast that stands into the room before an outside wall, in plan, with a flue.
struct ChimneyBreast {
  static constexpr std::string_view name = "chimney breast";
  static constexpr std::string_view about =
      "a chimney breast standing into the room before the outside wall, in plan";

  std::vector<Layer> layers;   ///< of the outside wall, behind the lining
  std::vector<Layer> lining;   ///< on wall and breast alike; may be empty
  std::optional<double> wall;  ///< of the outside wall on either side of the breast, m
  RegionId breast;
  double breast_width = 1.3;  ///< along the wall, m
  double projection = 0.35;   ///< into the room, m
  SpaceId flue;               ///< the air in it; not valid: none is drawn
  double flue_width = 0.225;  ///< along the wall, m
  double flue_depth = 0.225;  ///< m
  double cover = 0.11;        ///< of masonry between flue and the front of the breast, m
  SpaceId inside;
  SpaceId outside;
};

template <class Visitor>
void describe(Visitor& visit, ChimneyBreast& chimney) {
  visit.layers("layers", chimney.layers,
               "of the outside wall, from the inside out, without what covers wall and breast "
               "alike");
  visit.optional_layers("lining", chimney.lining,
                        "on wall and breast alike, from its face inwards");
  visit.length("wall length", chimney.wall, 0.05, 20.0,
               "of the outside wall on either side; by default 1 m or three thicknesses of the "
               "wall");
  visit.material("breast", chimney.breast, "wall brick", "the material of the breast");
  visit.length("breast width", chimney.breast_width, 0.1, 6.0, "along the wall");
  visit.length("projection", chimney.projection, 0.02, 3.0, "of the breast into the room");
  visit.optional_space("flue", chimney.flue, "flue", "the space in the flue");
  visit.length("flue width", chimney.flue_width, 0.05, 5.0, "along the wall");
  visit.length("flue depth", chimney.flue_depth, 0.05, 3.0, "across the wall");
  visit.length("flue cover", chimney.cover, 0.02, 3.0,
               "of masonry between the flue and the front of the breast");
  visit.space("inside", chimney.inside, "inside", "the space inside");
  visit.space("outside", chimney.outside, "outside", "the space outside");
}

/// Why a chimney breast cannot be built as described; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to(const ChimneyBreast& chimney);

/// The drawing of a chimney breast. The outside wall has its inside face, without the lining, on
/// y = 0 and its outside at y = -t; the middle of breast and flue lies on x = 0.
[[nodiscard]] Drawing drawing_of(const ChimneyBreast& chimney);

}  // namespace quoin::geometry
