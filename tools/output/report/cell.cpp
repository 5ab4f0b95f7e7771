// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/cell.hpp"

#include <algorithm>
#include <cmath>

#include "tools/answer/words/figures.hpp"

namespace quoin::tools::report {
namespace {

constexpr int below = 6, between = 6, above = 6;  // signs of a bar

/// "······|··●···|······": the left bar is the dew point, the right one the limit.
std::string bar_of(double place) {
  const int cells = below + between + above;
  const int mark = std::clamp(static_cast<int>(std::floor((place + 1.0) * between)), 0, cells - 1);
  std::string text;
  for (int k = 0; k < cells; ++k) {
    if (k == below || k == below + between) text += "|";
    text += k == mark ? "●" : "·";
  }
  return text;
}

}  // namespace

Cell words_cell(std::string_view words, Tone tone) {
  Cell cell;
  cell.words = words;
  cell.tone = tone;
  return cell;
}

Cell figure_cell(std::string words, Tone tone) {
  Cell cell;
  cell.words = std::move(words);
  cell.value = 0.0;
  cell.tone = tone;
  return cell;
}

Cell number_cell(double value, int decimals, Tone tone) {
  Cell cell;
  // What is not known is written in one way, so that cells compare equal.
  if (std::isfinite(value)) {
    cell.value = value;
  } else {
    return figure_cell("–", tone);
  }
  cell.decimals = decimals;
  cell.tone = tone;
  return cell;
}

Cell band_cell(double value, double band, int decimals) {
  Cell cell = number_cell(value, decimals);
  if (std::isfinite(value)) cell.band = band;
  return cell;
}

Cell bar_cell(double place) {
  Cell cell;
  cell.bar = place;
  return cell;
}

bool is_number(const Cell& cell) { return cell.value.has_value(); }

std::string text_of(const Cell& cell) {
  if (cell.bar) return bar_of(*cell.bar);
  if (!cell.words.empty()) return cell.words;
  if (!cell.value) return "–";
  const std::string value = fixed(*cell.value, cell.decimals);
  return cell.band ? value + " ± " + fixed_band(*cell.band, cell.decimals) : value;
}

}  // namespace quoin::tools::report
