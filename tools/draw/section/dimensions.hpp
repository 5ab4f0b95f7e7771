// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/draw/section/view.hpp"

namespace quoin::tools {

/// Which side of the drawing a chain of dimensions stands on.
enum class Side { below, left, above, right };

/// Places along one axis at which dimensions end, ascending, m.
using Chain = std::vector<double>;

/// The layers that meet one side of the material, as places along it; empty if fewer than two.
[[nodiscard]] Chain layers_along(const geometry::Section& section, const Extent& material,
                                 Side side);

/// The corners of the outline of the material, as places along an axis (x for below and above).
[[nodiscard]] Chain corners_along(const geometry::Section& section, Side side);

/// How much room a chain takes across its line, units.
[[nodiscard]] double chain_room(const View& view, Side side, const Chain& chain);

/// Draws a chain with its line `distance` units from the material; its figures go on a canvas of
/// their own, to lie on top of the lines of all chains.
void draw_chain(Canvas& lines, Canvas& figures, const View& view, Side side, const Chain& chain,
                double distance);

/// How far beyond the material the margin of a side reaches, units.
[[nodiscard]] double margin_at(const View& view, Side side);

/// A length as drawings state it: mm without a unit, with at most one decimal.
[[nodiscard]] std::string length_in_mm(double metres);

}  // namespace quoin::tools
