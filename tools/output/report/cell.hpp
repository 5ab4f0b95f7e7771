// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "tools/answer/results/outcome.hpp"

namespace quoin::tools::report {

/// What a cell of a table says: words, or a number with its digits and band. Its unit stands in the
/// heading of the column, but for what has none of its own.
struct Cell {
  std::string words;            ///< where there is no number
  std::optional<double> value;  ///< NaN: not known
  int decimals = 0;
  std::optional<double> band;  ///< give or take, in the unit of the value
  std::optional<double> bar;   ///< a place on a bar instead: 0 the dew point, 1 the limit
  Tone tone = Tone::plain;

  bool operator==(const Cell&) const = default;
};

[[nodiscard]] Cell words_cell(std::string_view words, Tone tone = Tone::plain);
/// A number said in words or with its unit, set like one.
[[nodiscard]] Cell figure_cell(std::string words, Tone tone = Tone::plain);
[[nodiscard]] Cell number_cell(double value, int decimals, Tone tone = Tone::plain);
[[nodiscard]] Cell band_cell(double value, double band, int decimals);
[[nodiscard]] Cell bar_cell(double place);

/// Whether it is set to the right.
[[nodiscard]] bool is_number(const Cell& cell);

/// The cell as every rendering prints it; a dash where nothing is known. A bar as a line of signs.
[[nodiscard]] std::string text_of(const Cell& cell);

}  // namespace quoin::tools::report
