// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/reveal.hpp"

namespace quoin::geometry {
namespace {

constexpr EdgeWords words{"reveal", "lining", "the reveal", "the arris of the reveal",
                          "the wall beside the window"};

}  // namespace

Drawing drawing_of(const Reveal& reveal) {
  Drawing drawing;
  paint_wall(drawing.sheet, reveal, Edge::jamb);
  set_window(drawing, reveal, Edge::jamb, words);
  return drawing;
}

std::optional<std::string> objection_to(const Reveal& reveal) {
  return objection_to_window(reveal, words);
}

}  // namespace quoin::geometry
