// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/canvas.hpp"

#include <utility>

#include "tools/draw/canvas/xml.hpp"

namespace quoin::tools {

void Canvas::append(const Canvas& other) {
  items_.insert(items_.end(), other.items_.begin(), other.items_.end());
}

void Canvas::line(Point from, Point to, const Stroke& stroke) { polyline({from, to}, stroke); }

void Canvas::polyline(Line line, const Stroke& stroke) {
  items_.push_back(Path{{std::move(line)}, false, {{}, stroke}});
}

void Canvas::rectangle(Point corner, double width, double height, const Ink& ink, double rounding) {
  items_.push_back(Rectangle{corner, width, height, rounding, ink});
}

void Canvas::circle(Point centre, double radius, const Ink& ink) {
  items_.push_back(Disc{centre, radius, ink});
}

void Canvas::area(std::vector<Line> outlines, const Ink& ink) {
  items_.push_back(Path{std::move(outlines), true, ink});
}

void Canvas::text(Point at, std::string_view words, const Lettering& lettering) {
  items_.push_back(Words{at, printable(words), lettering});
}

void Canvas::inset(std::shared_ptr<const Canvas> canvas, Point corner, double scale) {
  items_.push_back(Inset{std::move(canvas), corner, scale});
}

void Canvas::begin(std::string_view part) { items_.push_back(Mark{std::string(part), true}); }

void Canvas::end(std::string_view part) { items_.push_back(Mark{std::string(part), false}); }

}  // namespace quoin::tools
