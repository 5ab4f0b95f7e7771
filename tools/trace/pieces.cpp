// SPDX-License-Identifier: Apache-2.0
#include "tools/trace/pieces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::tools {
namespace {

constexpr double rounding = 1e-4;  // mm, of drawings that were meant exactly

double distance(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

/// The nearest end among lines to a place, but for the line itself.
struct End {
  std::size_t line = 0;
  bool at_front = false;
  double away = std::numeric_limits<double>::infinity();
};

End nearest_end(const std::vector<Outline>& lines, std::size_t own) {
  End nearest;
  const Point from = lines[own].back();
  for (std::size_t k = 0; k < lines.size(); ++k) {
    for (const bool front : {true, false}) {
      if (k == own && !front) continue;  // the end itself
      const double away = distance(from, front ? lines[k].front() : lines[k].back());
      if (away < nearest.away) nearest = {k, front, away};
    }
  }
  return nearest;
}

void tell_gap(double away, Point place, const Say& closed) {
  if (away > rounding) closed(fmt::format("a gap of {:.2g} mm was closed", away), place);
}

std::vector<Outline*> rings_of(Piece& piece) {
  std::vector<Outline*> rings{&piece.area.outline};
  for (Outline& hole : piece.area.holes) rings.push_back(&hole);
  return rings;
}

/// Moves a corner onto another ring where that is near; the ring gets the place as a corner, too.
/// Returns how far it moved.
double attach(Point& corner, Outline& ring, double close) {
  Point* nearest = nullptr;
  for (Point& other : ring) {
    if (distance(corner, other) <= close &&
        (nearest == nullptr || distance(corner, other) < distance(corner, *nearest)))
      nearest = &other;
  }
  if (nearest != nullptr) {
    const double moved = distance(corner, *nearest);
    corner = *nearest;
    return moved;
  }
  Nearest best{std::numeric_limits<double>::infinity(), {}};
  std::size_t behind = 0;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    const Nearest on = nearest_on(ring[k], ring[(k + 1) % ring.size()], corner);
    if (on.distance >= best.distance) continue;
    best = on;
    behind = k + 1;
  }
  if (best.distance > close) return 0.0;
  corner = best.place;
  ring.insert(ring.begin() + static_cast<std::ptrdiff_t>(behind), best.place);
  return best.distance;
}

}  // namespace

std::vector<Outline> closed_outlines(std::vector<Outline> lines, double close, const Say& closed,
                                     const Say& open) {
  std::vector<Outline> result;
  while (!lines.empty()) {
    const End end = nearest_end(lines, 0);
    if (end.away > close) {
      std::reverse(lines[0].begin(), lines[0].end());
      const End other = nearest_end(lines, 0);
      if (other.away > close) {
        const bool is_near = end.away < other.away;
        const Point place = is_near ? lines[0].front() : lines[0].back();
        const double gap = std::min(end.away, other.away);
        open(std::isfinite(gap)
                 ? fmt::format("this line is open: the next end is {:.3g} mm away", gap)
                 : "this line is open",
             place);
        lines.erase(lines.begin());
      }
      continue;
    }
    tell_gap(end.away, lines[0].back(), closed);
    if (end.line == 0) {
      lines[0].pop_back();  // the first point again
      result.push_back(std::move(lines[0]));
      lines.erase(lines.begin());
      continue;
    }
    Outline next = std::move(lines[end.line]);
    lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(end.line));
    if (!end.at_front) std::reverse(next.begin(), next.end());
    lines[0].insert(lines[0].end(), next.begin() + 1, next.end());
  }
  return result;
}

void bring_together(std::vector<Piece>& pieces, double close, const Say& closed) {
  for (std::size_t a = 0; a < pieces.size(); ++a) {
    for (std::size_t b = 0; b < pieces.size(); ++b) {
      if (a == b) continue;
      for (Outline* ring : rings_of(pieces[a])) {
        for (std::size_t k = 0; k < ring->size(); ++k) {
          for (Outline* other : rings_of(pieces[b])) {
            const double moved = attach((*ring)[k], *other, close);
            if (moved > rounding)
              closed(fmt::format("{:.2g} mm between '{}' and '{}' were closed", moved,
                                 pieces[a].fill, pieces[b].fill),
                     (*ring)[k]);
          }
        }
      }
    }
  }
}

}  // namespace quoin::tools
