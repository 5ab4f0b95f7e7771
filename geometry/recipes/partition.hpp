// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// An internal wall or a party wall that meets the outside wall, in plan.
struct Partition {
  static constexpr std::string_view name = "partition";
  static constexpr std::string_view about =
      "an internal wall or a party wall meeting the outside wall, in plan";

  std::vector<Layer> layers;     ///< of the outside wall, behind any lining
  std::vector<Layer> lining;     ///< on its inside, up to the partition; may be empty
  std::optional<double> wall;    ///< of the outside wall on either side of the partition, m
  std::vector<Layer> partition;  ///< from side to side
  double bond = 0.0;             ///< how far the partition reaches into the outside wall, m
  std::optional<double> length;  ///< of the partition, from the outside wall to the cut plane, m
  std::vector<Layer> on_sides;   ///< the lining returned along both its sides; may be empty
  double return_length = 0.3;    ///< from the lining of the outside wall, m
  SpaceId beyond;                ///< the air on its right; not valid: the same as on its left
  SpaceId inside;
  SpaceId outside;
};

template <class Visitor>
void describe(Visitor& visit, Partition& junction) {
  visit.layers("layers", junction.layers,
               "of the outside wall, from the inside out, without a lining that stops at the "
               "partition");
  visit.optional_layers("lining", junction.lining,
                        "on the inside of that wall up to the partition, from its face inwards",
                        "[{material: wood fibre board, thickness: 40}]");
  visit.length("wall length", junction.wall, 0.05, 20.0,
               "of the outside wall on either side; by default 1 m or three of its thicknesses");
  visit.layers("partition", junction.partition, "of the partition, from its left to its right",
               "[[lime plaster, 15], [wall brick, 102], [lime plaster, 15]]");
  visit.length("bond", junction.bond, 0.0, 2.0, "how far it reaches into the outside wall");
  visit.length("partition length", junction.length, 0.05, 20.0,
               "from the outside wall to the cut plane; by default 1 m or three of its thicknesses "
               "beyond the linings");
  visit.optional_layers("return", junction.on_sides,
                        "the lining returned along both its sides, from its face inwards",
                        "[{material: wood fibre board, thickness: 20}]");
  visit.length("return length", junction.return_length, 0.01, 5.0,
               "of the return, from the lining of the outside wall");
  visit.optional_space("beyond", junction.beyond, "porch",
                       "the space on its right, where that is another air");
  visit.space("inside", junction.inside, "inside", "the space inside, on its left");
  visit.space("outside", junction.outside, "outside", "the space outside");
}

/// Why a partition cannot be built as described; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to(const Partition& junction);

/// The drawing of a partition. The outside wall has its inside face, without the lining, on y = 0
/// and its outside at y = -t; the middle of the partition lies on x = 0.
[[nodiscard]] Drawing drawing_of(const Partition& junction);

}  // namespace quoin::geometry
