// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/draw/canvas/picture.hpp"
#include "tools/draw/section/callouts.hpp"

namespace quoin::tools {

/// What every picture of a case has around and on its drawing.

/// Title and a line below it, each wrapped. Returns where the drawing may begin.
double draw_heading(Canvas& canvas, std::string_view title, std::string_view line);

/// Words of a key beside a mark at `at`, wrapped. Returns where the next mark goes.
double draw_key_words(Canvas& canvas, Point at, std::string_view words);

/// Names spaces that hold no letters beside them.
void call_out_spaces(Callouts& callouts, const View& view, const cases::Variant& variant,
                     const std::vector<geometry::SpaceId>& spaces);

/// Marks the probes; `words` stand beside their names where given. Shape: empty or one a probe.
void draw_probes(Canvas& canvas, const View& view, const cases::Variant& variant,
                 const std::vector<std::string>& words, Callouts& callouts, TakenRoom& taken);

/// Where the picture of a variant breaks its section off: all of it, small, with a frame around
/// what is shown, from `corner` on and `width` units wide; a caption beside it, or below it where
/// it is narrow. Returns where it ends.
double draw_whole(Canvas& canvas, const cases::Variant& variant, const geometry::Section& section,
                  Point corner, double width);
/// The same beside the drawing where there is room to the right of `right`, else below `bottom`.
/// Returns where the picture ends.
double draw_whole_beside(Canvas& canvas, const cases::Variant& variant, const View& view,
                         const geometry::Section& section, double right, double bottom);

/// The section in words, for those who cannot see it.
[[nodiscard]] std::string description_of(const cases::Variant& variant);

}  // namespace quoin::tools
