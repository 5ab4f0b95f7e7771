// SPDX-License-Identifier: Apache-2.0
#include "tools/door/plate.hpp"

#include <utility>

#include "tools/draw/canvas/picture.hpp"
#include "tools/draw/field/bands.hpp"
#include "tools/draw/field/field_drawing.hpp"
#include "tools/draw/section/close_up.hpp"

namespace quoin::door {

tools::View plate_view(const cases::Variant& variant, const geometry::Section& section) {
  return tools::View(tools::shown_part(variant, section), {0.0, 0.0}, tools::page_width,
                     tools::page_width);
}

std::string plate_svg(const tools::SolvedVariant& solved, double letters) {
  const tools::View view = plate_view(solved.variant, solved.surface.field.mesh.section);
  tools::Canvas canvas, limits;
  tools::TakenRoom taken;
  // What moves may have corners: longer pieces are drawn sooner.
  const double longest = tools::FieldDrawing::smooth * (letters > 0.0 ? 1.0 : 2.0);
  tools::FieldDrawing drawing(solved, view, tools::bands_of(solved.variant), longest);
  tools::tint_spaces(canvas, view, solved.variant);
  drawing.draw_bands(canvas);
  tools::draw_edges(canvas, view, solved.variant.regions.size(), {tools::black, 0.9});
  tools::draw_membranes(canvas, view);
  tools::draw_breaks(canvas, view);
  drawing.draw_limits(limits, taken, false);
  drawing.draw_isotherms(canvas, taken, letters);
  canvas.append(limits);
  return tools::Picture(std::move(canvas), view.height(), solved.variant.name, "").svg();
}

}  // namespace quoin::door
