// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/isotherms.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace quoin::tools {
namespace {

using geometry::Cell;
using geometry::Fill;
using geometry::Outline;
using geometry::Point;
using geometry::RegionId;
using geometry::Split;

bool is_material(const Fill& fill) { return std::holds_alternative<RegionId>(fill); }

/// Numbers the places where isotherms have corners: the nodes, and one crossing on each mesh line
/// between two nodes (eastward, northward, and the two diagonals).
class Places {
 public:
  explicit Places(const geometry::Mesh& mesh) : mesh_(mesh), nodes_(mesh.nx() * mesh.ny()) {}

  [[nodiscard]] std::size_t crossing(std::size_t a, std::size_t b) const {
    const std::size_t first = std::min(a, b), second = std::max(a, b), nx = mesh_.nx();
    const bool upright = first % nx == second % nx;
    const std::size_t way = first / nx == second / nx  ? 1
                            : upright                  ? 2
                            : first % nx < second % nx ? 3
                                                       : 4;
    return way * nodes_ + first;
  }

  [[nodiscard]] bool is_crossing(std::size_t place) const { return place >= nodes_; }

  [[nodiscard]] Point point(std::size_t place, const std::vector<double>& field,
                            double level) const {
    if (!is_crossing(place)) return mesh_.place(place);
    const std::size_t a = place % nodes_;
    const std::array<std::size_t, 5> step = {0, 1, mesh_.nx(), mesh_.nx() + 1, mesh_.nx() - 1};
    const std::size_t b = a + step[place / nodes_];
    const double t = (level - field[a]) / (field[b] - field[a]);
    const Point p = mesh_.place(a), q = mesh_.place(b);
    return {p.x + t * (q.x - p.x), p.y + t * (q.y - p.y)};
  }

 private:
  const geometry::Mesh& mesh_;
  std::size_t nodes_;
};

/// The corners of the solid parts of a cell, counter-clockwise: a rectangle, or up to two
/// triangles.
struct Parts {
  std::array<std::array<std::size_t, 4>, 2> corners{};
  std::size_t count = 0;
  std::size_t sides = 4;
};

Parts solid_parts(const geometry::Mesh& mesh, std::size_t i, std::size_t j) {
  const Cell& cell = mesh.cell(i, j);
  const std::size_t sw = mesh.node(i, j), se = sw + 1, nw = sw + mesh.nx(), ne = nw + 1;
  Parts parts;
  if (cell.split == Split::none) {
    if (is_material(cell.below)) parts.corners[parts.count++] = {sw, se, ne, nw};
    return parts;
  }
  parts.sides = 3;
  const bool rising = cell.split == Split::rising;
  if (is_material(cell.below)) parts.corners[parts.count++] = {sw, se, rising ? ne : nw, sw};
  if (is_material(cell.above)) parts.corners[parts.count++] = {rising ? sw : se, ne, nw, nw};
  return parts;
}

/// Adds the edges by which an isotherm crosses one part, with the warmer side on their left.
void cross(const std::array<std::size_t, 4>& corners, std::size_t sides,
           const std::vector<double>& field, double level, const Places& places,
           std::vector<Edge>& edges) {
  std::array<std::size_t, 4> leave{},
      enter{};  // where the walk round the part turns colder, warmer
  std::size_t left = 0, entered = 0;
  double sum = 0.0;
  for (std::size_t k = 0; k < sides; ++k) {
    const std::size_t a = corners[k], b = corners[(k + 1) % sides];
    sum += field[a];
    const bool warm_a = field[a] >= level, warm_b = field[b] >= level;
    if (warm_a && !warm_b) leave[left++] = places.crossing(a, b);
    if (!warm_a && warm_b) enter[entered++] = places.crossing(a, b);
  }
  if (left == 1) {
    edges.push_back({leave[0], enter[0]});
    return;
  }
  // A saddle: the middle of the part says whether the warm corners hang together.
  const bool together = sum / static_cast<double>(sides) >= level;
  const bool warm_first = field[corners[0]] >= level;
  for (std::size_t k = 0; k < left; ++k) {
    // `leave` and `enter` alternate round the part; after leaving k comes entering k if the walk
    // began warm, else k + 1.
    const std::size_t next = warm_first ? k : (k + 1) % left;
    edges.push_back({leave[k], enter[together ? next : (next + left - 1) % left]});
  }
}

/// The open or closed runs of a loop that cross the material.
void add_lines(const std::vector<std::size_t>& loop, const Places& places,
               const std::vector<double>& field, double level, std::vector<Outline>& lines) {
  const std::size_t n = loop.size();
  const auto is_line = [&](std::size_t k) {  // the edge from k to k + 1
    return places.is_crossing(loop[k % n]) && places.is_crossing(loop[(k + 1) % n]);
  };
  std::size_t start = 0;
  while (start < n && is_line(start)) ++start;  // just before a run, or n where all is one line
  Outline line;
  for (std::size_t step = 0; step < n; ++step) {
    const std::size_t k = (start + step) % n;
    if (is_line(k)) {
      if (line.empty()) line.push_back(places.point(loop[k], field, level));
      line.push_back(places.point(loop[(k + 1) % n], field, level));
    } else if (!line.empty()) {
      lines.push_back(std::move(line));
      line.clear();
    }
  }
  if (!line.empty()) lines.push_back(std::move(line));
}

double distance(Point p, Point a, Point b) {
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  if (length == 0.0) return std::hypot(p.x - a.x, p.y - a.y);
  return std::abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
}

}  // namespace

IsothermFinder::IsothermFinder(const geometry::Mesh& mesh)
    : mesh_(mesh),
      surface_(boundary(
          mesh.columns(), mesh.rows(),
          [&](std::size_t i, std::size_t j) -> const Cell& { return mesh.cell(i, j); },
          is_material)) {}

std::vector<Isotherm> IsothermFinder::isotherms(const std::vector<double>& field,
                                                const std::vector<double>& levels) const {
  const Places places(mesh_);
  std::vector<std::vector<Edge>> edges(levels.size());
  for (std::size_t j = 0; j < mesh_.rows(); ++j) {
    for (std::size_t i = 0; i < mesh_.columns(); ++i) {
      const Parts parts = solid_parts(mesh_, i, j);
      for (std::size_t p = 0; p < parts.count; ++p) {
        const auto& corners = parts.corners[p];
        double low = field[corners[0]], high = low;
        for (const std::size_t corner : corners) {
          low = std::min(low, field[corner]);
          high = std::max(high, field[corner]);
        }
        for (std::size_t l = 0; l < levels.size(); ++l) {
          if (low < levels[l] && levels[l] <= high) {
            cross(corners, parts.sides, field, levels[l], places, edges[l]);
          }
        }
      }
    }
  }
  std::vector<Isotherm> all;
  for (std::size_t l = 0; l < levels.size(); ++l) {
    const double level = levels[l];
    for (const Edge& edge : surface_) {
      const bool from = field[edge.from] >= level, to = field[edge.to] >= level;
      if (from && to) edges[l].push_back(edge);
      if (from && !to) edges[l].push_back({edge.from, places.crossing(edge.from, edge.to)});
      if (!from && to) edges[l].push_back({places.crossing(edge.from, edge.to), edge.to});
    }
    Isotherm isotherm{level, {}, {}};
    for (const auto& loop : loops(std::move(edges[l]))) {
      add_lines(loop, places, field, level, isotherm.lines);
      Outline outline;
      outline.reserve(loop.size());
      for (const std::size_t place : loop) outline.push_back(places.point(place, field, level));
      isotherm.warmer.push_back(std::move(outline));
    }
    all.push_back(std::move(isotherm));
  }
  return all;
}

std::vector<double> round_levels(double low, double high, std::size_t most) {
  if (!(high > low) || most == 0) return {};
  const auto inside = [&](double step) {
    std::vector<double> levels;
    const double first = std::floor(low / step) + 1;
    for (double k = first; k * step < high && levels.size() <= most; ++k) {
      levels.push_back(k * step);
    }
    return levels;
  };
  double power = std::pow(10.0, std::floor(std::log10((high - low) / static_cast<double>(most))));
  for (;; power *= 10.0) {
    for (const double factor : {1.0, 2.0, 5.0}) {
      std::vector<double> levels = inside(factor * power);
      if (levels.size() <= most) return levels;
    }
  }
}

Outline simplified(const Outline& line, double tolerance) {
  if (line.size() < 3) return line;
  std::vector<char> kept(line.size());
  kept.front() = kept.back() = 1;
  std::vector<std::pair<std::size_t, std::size_t>> open{{0, line.size() - 1}};
  while (!open.empty()) {
    const auto [first, last] = open.back();
    open.pop_back();
    std::size_t farthest = first;
    double most = tolerance;
    for (std::size_t k = first + 1; k < last; ++k) {
      const double away = distance(line[k], line[first], line[last]);
      if (away > most) {
        most = away;
        farthest = k;
      }
    }
    if (farthest == first) continue;
    kept[farthest] = 1;
    open.push_back({first, farthest});
    open.push_back({farthest, last});
  }
  Outline simple;
  for (std::size_t k = 0; k < line.size(); ++k) {
    if (kept[k] != 0) simple.push_back(line[k]);
  }
  return simple;
}

}  // namespace quoin::tools
