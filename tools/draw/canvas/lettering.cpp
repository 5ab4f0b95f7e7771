// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/lettering.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "cases/utf8.hpp"

namespace quoin::tools {
namespace {

/// Width of a character in sizes of the font. Measured on an open sans-serif font of wide set.
double advance(char32_t code) {
  constexpr std::string_view thin = "ijl.,:;|!'I";
  constexpr std::string_view slim = " ftr()[]-/";
  constexpr std::string_view broad = "mwMW%@";
  if (code >= 0x80)
    return code == U'°' || code == U'·' ? 0.5 : static_cast<double>(cases::width(code)) * 0.7;
  const char letter = static_cast<char>(code);
  if (thin.find(letter) != std::string_view::npos) return 0.32;
  if (slim.find(letter) != std::string_view::npos) return 0.4;
  if (broad.find(letter) != std::string_view::npos) return 0.95;
  if (letter >= 'A' && letter <= 'Z') return 0.72;
  return 0.62;
}

struct Axis {
  double x, y;
};

std::array<Axis, 2> axes(const Box& box) {
  const double angle = -box.turn * std::numbers::pi / 180.0;  // y points down
  return {Axis{std::cos(angle), std::sin(angle)}, Axis{-std::sin(angle), std::cos(angle)}};
}

/// Half the width of a box seen along an axis.
double reach(const Box& box, const Axis& axis) {
  const auto [along, across] = axes(box);
  return box.width / 2 * std::abs(along.x * axis.x + along.y * axis.y) +
         box.height / 2 * std::abs(across.x * axis.x + across.y * axis.y);
}

/// Whether a line square to one of a's sides keeps the boxes apart.
bool apart(const Box& a, const Box& b) {
  const auto own = axes(a);
  return std::any_of(own.begin(), own.end(), [&](const Axis& axis) {
    const double distance =
        std::abs((b.centre.x - a.centre.x) * axis.x + (b.centre.y - a.centre.y) * axis.y);
    return distance > reach(a, axis) + reach(b, axis);
  });
}

/// The box of a thin line.
Box box_along(Point from, Point to) {
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  const double turn = -std::atan2(to.y - from.y, to.x - from.x) * 180.0 / std::numbers::pi;
  return {{(from.x + to.x) / 2, (from.y + to.y) / 2}, length, 1.0, turn};
}

}  // namespace

double text_width(std::string_view text, double size) {
  double width = 0.0;
  while (!text.empty()) {
    const cases::Character next = cases::first_character(text);
    width += advance(next.bytes == 0 ? U'\uFFFD' : next.code);
    text.remove_prefix(std::max<std::size_t>(next.bytes, 1));
  }
  return width * size;
}

std::string fitted(std::string_view text, double size, double width) {
  if (text.size() <= 400 && text_width(text, size) <= width) return std::string(text);
  std::size_t kept = 0;
  double used = advance(U'…') * size;
  while (kept < text.size()) {
    const cases::Character next = cases::first_character(text.substr(kept));
    used += advance(next.bytes == 0 ? U'\uFFFD' : next.code) * size;
    if (used > width) break;
    kept += std::max<std::size_t>(next.bytes, 1);
  }
  if (kept >= text.size()) return std::string(text);
  while (kept > 0 && text[kept - 1] == ' ') --kept;
  return std::string(text.substr(0, kept)) + "…";
}

std::vector<std::string> wrapped(std::string_view text, double size, double width,
                                 std::size_t most) {
  std::vector<std::string> lines;
  while (!text.empty() && lines.size() < most) {
    if (lines.size() + 1 == most) {
      lines.push_back(fitted(text, size, width));
      break;
    }
    std::size_t end = std::min(text.find(' '), text.size());
    while (end < text.size()) {
      const std::size_t next = std::min(text.find(' ', end + 1), text.size());
      if (text_width(text.substr(0, next), size) > width) break;
      end = next;
    }
    lines.push_back(fitted(text.substr(0, end), size, width));
    text.remove_prefix(end);
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  }
  return lines;
}

bool overlap(const Box& a, const Box& b) { return !apart(a, b) && !apart(b, a); }

Box box_of(Point at, std::string_view words, const Lettering& lettering) {
  const double width = text_width(words, lettering.size);
  const double along = lettering.anchor == Anchor::start    ? width / 2
                       : lettering.anchor == Anchor::middle ? 0.0
                                                            : -width / 2;
  const double up = 0.35 * lettering.size;  // from the base line to the middle of the letters
  const double angle = lettering.turn * std::numbers::pi / 180.0;
  return {{at.x + along * std::cos(angle) - up * std::sin(angle),
           at.y - along * std::sin(angle) - up * std::cos(angle)},
          width,
          lettering.size,
          lettering.turn};
}

bool TakenRoom::is_free(const Box& box) const {
  return std::none_of(boxes_.begin(), boxes_.end(),
                      [&](const Box& taken) { return overlap(taken, box); });
}

bool TakenRoom::is_free(Point from, Point to) const { return is_free(box_along(from, to)); }

void TakenRoom::take(Point from, Point to) { take(box_along(from, to)); }

}  // namespace quoin::tools
