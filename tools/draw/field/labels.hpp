// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "tools/draw/canvas/lettering.hpp"

namespace quoin::tools {

/// A line on the picture with words set into a gap of it.
struct LabelledLine {
  std::vector<Line> pieces;  ///< the line without its gap
  bool labelled = false;
  Point at;           ///< of the foot of the words, their middle
  double turn = 0.0;  ///< degrees
};

/// Whether letters may stand in a box: asked before any is placed. None: none may anywhere.
using Allowed = std::function<bool(const Box&)>;

/// Sets words into the straightest run of the longest of some lines that has room, and takes the
/// room. Where there is none the lines stay whole.
[[nodiscard]] LabelledLine labelled(const std::vector<Line>& lines, std::string_view words,
                                    double size, const Allowed& allowed, TakenRoom& taken);

}  // namespace quoin::tools
