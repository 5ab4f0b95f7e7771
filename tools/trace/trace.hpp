// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tools/trace/drawn_things.hpp"

namespace quoin::tools {

/// How a drawing is taken over; lengths in mm.
struct TraceWish {
  std::optional<double> unit;  ///< what one unit of the drawing is, mm; absent: as it says itself
  double close = 1.0;          ///< gaps and overlaps up to this are closed, each is told
  double chord = 0.5;          ///< how far a chord may be from its curve
};

/// A case in sheet form, and what was done to the drawing.
struct Traced {
  std::string text;
  std::vector<std::string> notes;
};

/// Gaps and overlaps between --close and this, mm, are slips: nobody builds them.
inline constexpr double widest_slip = 5.0;

/// Makes a case of a drawing. `layers` is a case file without a section that says under `layers`
/// what each layer of the drawing is: a material, a space, or nothing (~) where it is left out.
/// Throws: InputError with all faults of the layers file, or else of the drawing.
[[nodiscard]] Traced traced(const ReadDrawing& drawing, const std::string& drawing_file,
                            std::string_view layers, const std::string& layers_file,
                            const TraceWish& wish);

}  // namespace quoin::tools
