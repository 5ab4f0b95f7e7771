// SPDX-License-Identifier: Apache-2.0
#include "geometry/slopes.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::geometry {
namespace {

constexpr double same_line = 2e-5;  // m: nearer lines would only make slivers

struct Edge {
  Point a;
  Point b;

  [[nodiscard]] bool slopes() const { return a.x != b.x && a.y != b.y; }
  [[nodiscard]] double length() const { return std::hypot(b.x - a.x, b.y - a.y); }
  [[nodiscard]] Point at(double t) const { return {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)}; }
};

std::vector<Edge> edges_of(const Outline& outline) {
  std::vector<Edge> edges;
  for (std::size_t k = 0; k < outline.size(); ++k) {
    edges.push_back({outline[k], outline[(k + 1) % outline.size()]});
  }
  return edges;
}

std::size_t nearest(const std::vector<double>& lines, double at) {
  const auto above = std::lower_bound(lines.begin(), lines.end(), at);
  if (above == lines.begin()) return 0;
  if (above == lines.end()) return lines.size() - 1;
  const auto k = static_cast<std::size_t>(above - lines.begin());
  return at - lines[k - 1] <= lines[k] - at ? k - 1 : k;
}

Crossing nearest(const Lines& lines, Point place) {
  return {nearest(lines.x, place.x), nearest(lines.y, place.y)};
}

Point place_of(const Lines& lines, Crossing crossing) {
  return {lines.x[crossing.i], lines.y[crossing.j]};
}

/// Where an edge crosses a line of one axis and how far the nearest line of the other axis is from
/// there.
struct Miss {
  double gap = 0.0;
  double wanted = 0.0;   ///< the line of the other axis that would meet it
  bool upright = false;  ///< whether that line is one of constant x
};

Miss worst_miss(const std::vector<Edge>& sloping, const Lines& lines, bool may_add_x,
                bool may_add_y) {
  Miss worst;
  const auto look = [&](const std::vector<double>& crossed, const std::vector<double>& others,
                        double a, double b, double other_a, double other_b, bool upright) {
    const auto [low, high] = std::minmax(a, b);
    for (auto line = std::upper_bound(crossed.begin(), crossed.end(), low);
         line != crossed.end() && *line < high; ++line) {
      const double wanted = other_a + (*line - a) / (b - a) * (other_b - other_a);
      const double gap = std::abs(others[nearest(others, wanted)] - wanted);
      if (gap > worst.gap) worst = {gap, wanted, upright};
    }
  };
  for (const Edge& edge : sloping) {
    if (may_add_y) look(lines.x, lines.y, edge.a.x, edge.b.x, edge.a.y, edge.b.y, false);
    if (may_add_x) look(lines.y, lines.x, edge.a.y, edge.b.y, edge.a.x, edge.b.x, true);
  }
  return worst;
}

double distance(const Edge& edge, Point place) {
  return std::abs((edge.b.x - edge.a.x) * (place.y - edge.a.y) -
                  (edge.b.y - edge.a.y) * (place.x - edge.a.x)) /
         edge.length();
}

/// The crossings nearest to an edge, from its start up to but without its end.
std::vector<Crossing> crossings_along(const Edge& edge, const Lines& lines) {
  std::vector<double> steps = {0.0};  // share of the edge at which it meets a line
  const auto meet = [&steps](const std::vector<double>& all, double from, double to) {
    for (const double at : all) {
      const double t = (at - from) / (to - from);
      if (t > 0.0 && t < 1.0) steps.push_back(t);
    }
  };
  meet(lines.x, edge.a.x, edge.b.x);
  meet(lines.y, edge.a.y, edge.b.y);
  std::sort(steps.begin(), steps.end());
  std::vector<Crossing> path;
  for (const double t : steps) {
    const Crossing next = nearest(lines, edge.at(t));
    if (path.empty() || path.back() != next) path.push_back(next);
  }
  if (path.size() > 1 && path.back() == nearest(lines, edge.b)) path.pop_back();
  return path;
}

}  // namespace

void add_lines_for_slopes(const std::vector<Outline>& outlines, Lines& lines) {
  std::vector<Edge> sloping;
  for (const Outline& outline : outlines) {
    for (const Edge& edge : edges_of(outline)) {
      if (edge.slopes()) sloping.push_back(edge);
    }
  }
  if (sloping.empty()) return;
  // The worst first, so that where not all lines can be had the edges are followed evenly.
  std::size_t added_x = 0;
  std::size_t added_y = 0;
  for (;;) {
    const Miss miss = worst_miss(sloping, lines, added_x < most_lines, added_y < most_lines);
    if (miss.gap <= same_line) return;
    // Lines that close a lattice may be close together, others had better not.
    if (miss.gap < closest_lines && added_x + added_y >= most_lines / 2) return;
    std::vector<double>& others = miss.upright ? lines.x : lines.y;
    others.insert(std::lower_bound(others.begin(), others.end(), miss.wanted), miss.wanted);
    ++(miss.upright ? added_x : added_y);
  }
}

Crossing crossing_at(const Lines& lines, Point place) { return nearest(lines, place); }

Chain chain_of(const Outline& outline, const Lines& lines) {
  Chain chain;
  for (const Edge& edge : edges_of(outline)) {
    if (!edge.slopes()) {
      chain.corners.push_back(nearest(lines, edge.a));
      continue;
    }
    std::vector<Crossing> path = crossings_along(edge, lines);
    path.push_back(nearest(lines, edge.b));
    double length = 0.0;
    for (std::size_t k = 0; k + 1 < path.size(); ++k) {
      const Point from = place_of(lines, path[k]);
      const Point to = place_of(lines, path[k + 1]);
      length += std::hypot(to.x - from.x, to.y - from.y);
      chain.deviation = std::max(chain.deviation, distance(edge, from));
    }
    for (std::size_t k = 0; k + 1 < path.size(); ++k) {
      chain.corners.push_back(path[k]);
      chain.stretches.push_back({path[k], path[k + 1], edge.length() / length});
    }
  }
  return chain;
}

}  // namespace quoin::geometry
