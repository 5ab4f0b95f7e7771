// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/window.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/triangles/arrangement.hpp"
#include "solver/findings/spots.hpp"

namespace quoin::solver {
namespace {

using geometry::Border;
using geometry::NodedTriangles;
using geometry::Point;

constexpr std::uint32_t none = geometry::Triangle::none;

/// The temperature along a run: its integral from the start to anywhere, and places.
class Course {
 public:
  Course(const NodedTriangles& nodes, const Run& run, const std::vector<double>& warmth)
      : nodes_(nodes), run_(run), warmth_(warmth), until_{0.0} {
    for (const std::uint32_t b : run.borders) {
      const Border& border = nodes.borders[b];
      until_.push_back(until_.back() + border.length *
                                           (warmth[border.node[0]] + 4 * warmth[border.node[1]] +
                                            warmth[border.node[2]]) /
                                           6);
    }
  }

  [[nodiscard]] double length() const { return run_.along.back(); }

  [[nodiscard]] double integral(double place) const {
    const auto [index, s] = within(place);
    const Border& border = nodes_.borders[run_.borders[index]];
    const double a = warmth_[border.node[0]], m = warmth_[border.node[1]],
                 b = warmth_[border.node[2]];
    return until_[index] +
           border.length * s *
               (a + s * (4 * m - 3 * a - b) / 2 + s * s * (2 * a + 2 * b - 4 * m) / 3);
  }

  [[nodiscard]] Point point(double place) const {
    const auto [index, s] = within(place);
    const Border& border = nodes_.borders[run_.borders[index]];
    const Point a = nodes_.places[border.node[0]], b = nodes_.places[border.node[2]];
    return {a.x + s * (b.x - a.x), a.y + s * (b.y - a.y)};
  }

 private:
  /// The border a place falls on, and how far along it, from 0 to 1.
  [[nodiscard]] std::pair<std::size_t, double> within(double place) const {
    const auto after = std::upper_bound(run_.along.begin() + 1, run_.along.end() - 1, place);
    const auto index = static_cast<std::size_t>(after - run_.along.begin()) - 1;
    const double length = run_.along[index + 1] - run_.along[index];
    return {index, std::clamp((place - run_.along[index]) / length, 0.0, 1.0)};
  }

  const NodedTriangles& nodes_;
  const Run& run_;
  const std::vector<double>& warmth_;
  std::vector<double> until_;
};

bool same(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y) < 1e-8; }

}  // namespace

std::vector<Run> runs_along(const NodedTriangles& nodes, const Physics& physics, SpaceId air,
                            const std::vector<double>& warmth) {
  const auto is_own = [&](std::uint32_t b) {
    return nodes.borders[b].space && physics.air[*nodes.borders[b].space] == air;
  };
  const auto is_fabric = [&](std::uint32_t b) {
    return physics.is_fabric[nodes.elements[nodes.borders[b].element].region] != 0;
  };
  std::vector<std::uint32_t> starting(nodes.corners, none), ending(nodes.corners, none);
  for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
    if (!is_own(b)) continue;
    starting[nodes.borders[b].node[0]] = b;
    ending[nodes.borders[b].node[2]] = b;
  }
  std::vector<char> used(nodes.borders.size(), 0);
  std::vector<Run> runs;
  const auto walk = [&](std::uint32_t first) {
    Run run{{}, {0.0}, is_fabric(first)};
    for (std::uint32_t b = first; b != none && used[b] == 0 && is_fabric(b) == run.is_fabric;
         b = starting[nodes.borders[b].node[2]]) {
      used[b] = 1;
      run.borders.push_back(b);
      run.along.push_back(run.along.back() + nodes.borders[b].length);
    }
    runs.push_back(std::move(run));
  };
  for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
    if (!is_own(b) || used[b] != 0) continue;
    const std::uint32_t last = ending[nodes.borders[b].node[0]];
    if (last == none || is_fabric(last) != is_fabric(b)) walk(b);
  }
  for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
    if (!is_own(b) || used[b] != 0) continue;
    std::uint32_t warmest = b;
    for (std::uint32_t o = starting[nodes.borders[b].node[2]]; o != b;
         o = starting[nodes.borders[o].node[2]]) {
      if (warmth[nodes.borders[o].node[0]] > warmth[nodes.borders[warmest].node[0]]) warmest = o;
    }
    walk(warmest);
  }
  return runs;
}

std::optional<Window> coldest_window(const NodedTriangles& nodes, const std::vector<Run>& runs,
                                     const std::vector<double>& warmth) {
  const bool any_fabric =
      std::any_of(runs.begin(), runs.end(), [](const Run& run) { return run.is_fabric; });
  std::optional<Window> coldest;
  for (const Run& run : runs) {
    if (any_fabric && !run.is_fabric) continue;
    const Course course(nodes, run, warmth);
    const double width = std::min(thermometer_width, course.length());
    const auto look = [&](double start) {
      const double from = std::clamp(start, 0.0, course.length() - width);
      const double mean = (course.integral(from + width) - course.integral(from)) / width;
      if (coldest && mean >= coldest->mean) return;
      coldest = {course.point(from), course.point(from + width), course.point(from + width / 2),
                 mean, width};
    };
    for (const double end : run.along) {
      look(end);
      look(end - width);
    }
  }
  return coldest;
}

std::vector<std::uint32_t> borders_of(const NodedTriangles& nodes, const std::vector<Run>& runs,
                                      const Window& window) {
  for (const Run& run : runs) {
    std::vector<std::uint32_t> found;
    double length = 0.0;
    for (const std::uint32_t b : run.borders) {
      const Border& border = nodes.borders[b];
      if (found.empty() && !same(nodes.places[border.node[0]], window.from)) continue;
      found.push_back(b);
      length += border.length;
      if (length > window.length + 4 * geometry::same_point) break;
      if (same(nodes.places[border.node[2]], window.to)) return found;
    }
  }
  return {};
}

}  // namespace quoin::solver
