// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/meaning/palette.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// A section as the file draws it, and where in the file each patch comes from.
struct Drawn {
  geometry::Drawing drawing;  ///< of a hand-drawn sheet only the sheet is known
  std::optional<geometry::Recipe> recipe;
  std::vector<Mark> marks;  ///< Shape: one for each patch of the sheet
  Mark mark;                ///< of the recipe or the sheet
};

/// The section of a node: a recipe or a sheet, and bands over it. What is faulty is left out.
[[nodiscard]] Drawn drawn_section(const Node& node, Palette& palette,
                                  const Per<SpaceId, Space>& spaces, FaultList& faults);

/// Gives a variant what its drawing shows, and what a recipe knows beyond that.
void show(geometry::Drawing drawing, Variant& variant);

/// Checks what only the whole drawing shows: islands, idle spaces, overlaps, probes outside the
/// material. Call it once the drawing is free of faults.
void check_drawing(const Drawn& drawn, const Variant& variant,
                   const std::vector<Named<geometry::Point>>& probes, FaultList& faults,
                   std::vector<Remark>& remarks);

}  // namespace quoin::cases
