// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "tools/trace/outlines.hpp"

namespace quoin::tools {

/// An area with what it is filled with.
struct Piece {
  std::string fill;
  Area area;
};

/// What is told of a drawing: what, and where, mm.
using Say = std::function<void(const std::string& what, Point place)>;

/// Closed outlines from lines whose ends meet within `close`, mm. `closed` hears of each gap that
/// was wider than rounding, `open` of each line that meets nothing.
[[nodiscard]] std::vector<Outline> closed_outlines(std::vector<Outline> lines, double close,
                                                   const Say& closed, const Say& open);

/// Brings edges of pieces that lie within `close` of each other, mm, together. `closed` hears of
/// each.
void bring_together(std::vector<Piece>& pieces, double close, const Say& closed);

}  // namespace quoin::tools
