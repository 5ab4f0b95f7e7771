// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/labels.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace quoin::tools {
namespace {

/// Distances along a line from its start.
std::vector<double> distances(const Line& line) {
  std::vector<double> along{0.0};
  for (std::size_t k = 1; k < line.size(); ++k) {
    along.push_back(along.back() +
                    std::hypot(line[k].x - line[k - 1].x, line[k].y - line[k - 1].y));
  }
  return along;
}

Point point_at(const Line& line, const std::vector<double>& along, double distance) {
  const auto next = static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(
      std::upper_bound(along.begin(), along.end(), distance) - along.begin(), 1,
      static_cast<std::ptrdiff_t>(line.size()) - 1));
  const double step = along[next] - along[next - 1];
  const double t = step > 0.0 ? (distance - along[next - 1]) / step : 0.0;
  return {line[next - 1].x + t * (line[next].x - line[next - 1].x),
          line[next - 1].y + t * (line[next].y - line[next - 1].y)};
}

/// The part of a line between two distances from its start.
Line part(const Line& line, const std::vector<double>& along, double from, double to) {
  Line piece{point_at(line, along, from)};
  for (std::size_t k = 0; k < line.size(); ++k) {
    if (along[k] > from && along[k] < to) piece.push_back(line[k]);
  }
  piece.push_back(point_at(line, along, to));
  return piece;
}

/// How far a part of a line strays from its chord.
double bend(const Line& piece) {
  const Point a = piece.front(), b = piece.back();
  const double length = std::max(std::hypot(b.x - a.x, b.y - a.y), 1e-9);
  double most = 0.0;
  for (const Point p : piece) {
    most = std::max(most, std::abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length);
  }
  return most;
}

struct Gap {
  std::size_t line = 0;
  double from = 0.0, to = 0.0;
  Box box;
};

Box box_between(Point a, Point b, double width, double height) {
  double turn = -std::atan2(b.y - a.y, b.x - a.x) * 180.0 / std::numbers::pi;
  if (turn > 100.0) turn -= 180.0;  // upright lines are read from the right
  if (turn <= -80.0) turn += 180.0;
  return {{(a.x + b.x) / 2, (a.y + b.y) / 2}, width, height, turn};
}

}  // namespace

LabelledLine labelled(const std::vector<Line>& lines, std::string_view words, double size,
                      const Allowed& allowed, TakenRoom& taken) {
  if (!allowed) return {lines, false, {}, 0.0};
  constexpr double clear = 4.0, stride = 5.0, straight_enough = 2.5;
  const double width = text_width(words, size) + 2 * clear;
  std::optional<Gap> best;
  double least = straight_enough;
  for (std::size_t l = 0; l < lines.size(); ++l) {
    const std::vector<double> along = distances(lines[l]);
    const double length = along.back();
    for (double from = clear; from + width + clear <= length; from += stride) {
      const double off_middle = std::abs(from + width / 2 - length / 2) / length;
      const double cost =
          bend(part(lines[l], along, from, from + width)) + off_middle - 0.001 * length;
      if (cost >= least) continue;
      const Box box = box_between(point_at(lines[l], along, from),
                                  point_at(lines[l], along, from + width), width, size + 1.0);
      if (!taken.is_free(box) || !allowed(box)) continue;
      least = cost;
      best = Gap{l, from, from + width, box};
    }
  }
  LabelledLine result;
  for (std::size_t l = 0; l < lines.size(); ++l) {
    if (!best || best->line != l) {
      result.pieces.push_back(lines[l]);
      continue;
    }
    const std::vector<double> along = distances(lines[l]);
    result.pieces.push_back(part(lines[l], along, 0.0, best->from));
    result.pieces.push_back(part(lines[l], along, best->to, along.back()));
    taken.take(best->box);
    result.labelled = true;
    result.turn = best->box.turn;
    const double angle = result.turn * std::numbers::pi / 180.0;
    const double drop = 0.36 * size;
    result.at = {best->box.centre.x + drop * std::sin(angle),
                 best->box.centre.y + drop * std::cos(angle)};
  }
  return result;
}

}  // namespace quoin::tools
