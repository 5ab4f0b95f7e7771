// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "geometry/section.hpp"
#include "tools/answer/results/results.hpp"
#include "tools/draw/section/view.hpp"

namespace quoin::door {

/// How a section lies on a plate: the picture of it without heading, key and margin.
[[nodiscard]] tools::View plate_view(const cases::Variant& variant,
                                     const geometry::Section& section);

/// The temperatures of one variant, of which the surface-temperature purpose is solved, as the text
/// of an SVG file. `letters`: the size of the figures on isotherms, units; 0: none, and curves of
/// longer pieces, for what moves.
[[nodiscard]] std::string plate_svg(const tools::SolvedVariant& solved, double letters);

}  // namespace quoin::door
