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

/// The integral of the temperature along a course, from its start to anywhere.
class Integral {
 public:
  explicit Integral(const WarmthAlong& course) : course_(course), until_{0.0} {
    for (std::size_t k = 0; k < course.warmth.size(); ++k) {
      const auto [a, m, b] = course.warmth[k];
      until_.push_back(until_.back() +
                       (course.along[k + 1] - course.along[k]) * (a + 4 * m + b) / 6);
    }
  }

  [[nodiscard]] double to(double place) const {
    const auto [index, s] = within(place);
    const auto [a, m, b] = course_.warmth[index];
    return until_[index] +
           (course_.along[index + 1] - course_.along[index]) * s *
               (a + s * (4 * m - 3 * a - b) / 2 + s * s * (2 * a + 2 * b - 4 * m) / 3);
  }

  [[nodiscard]] Point point(double place) const {
    const auto [index, s] = within(place);
    const Point a = course_.places[index], b = course_.places[index + 1];
    return {a.x + s * (b.x - a.x), a.y + s * (b.y - a.y)};
  }

 private:
  /// The piece a place falls on, and how far along it, from 0 to 1.
  [[nodiscard]] std::pair<std::size_t, double> within(double place) const {
    const std::vector<double>& along = course_.along;
    const auto after = std::upper_bound(along.begin() + 1, along.end() - 1, place);
    const auto index = static_cast<std::size_t>(after - along.begin()) - 1;
    const double length = along[index + 1] - along[index];
    return {index, std::clamp((place - along[index]) / length, 0.0, 1.0)};
  }

  const WarmthAlong& course_;
  std::vector<double> until_;
};

WarmthAlong warmth_along(const NodedTriangles& nodes, const Run& run,
                         const std::vector<double>& warmth) {
  WarmthAlong course{run.is_fabric, run.along, {}, {}};
  for (const std::uint32_t b : run.borders) {
    const auto& node = nodes.borders[b].node;
    course.places.push_back(nodes.places[node[0]]);
    course.warmth.push_back({warmth[node[0]], warmth[node[1]], warmth[node[2]]});
  }
  course.places.push_back(nodes.places[nodes.borders[run.borders.back()].node[2]]);
  return course;
}

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

std::optional<Window> coldest_window(const std::vector<WarmthAlong>& courses) {
  const bool any_fabric = std::any_of(courses.begin(), courses.end(),
                                      [](const WarmthAlong& course) { return course.is_fabric; });
  std::optional<Window> coldest;
  for (const WarmthAlong& course : courses) {
    if (any_fabric && !course.is_fabric) continue;
    const Integral integral(course);
    const double length = course.along.back(), width = std::min(thermometer_width, length);
    const auto look = [&](double start) {
      const double from = std::clamp(start, 0.0, length - width);
      const double mean = (integral.to(from + width) - integral.to(from)) / width;
      if (coldest && mean >= coldest->mean) return;
      coldest = {integral.point(from), integral.point(from + width),
                 integral.point(from + width / 2), mean, width};
    };
    for (const double end : course.along) {
      look(end);
      look(end - width);
    }
  }
  return coldest;
}

std::optional<Window> coldest_window(const NodedTriangles& nodes, const std::vector<Run>& runs,
                                     const std::vector<double>& warmth) {
  std::vector<WarmthAlong> courses;
  for (const Run& run : runs) courses.push_back(warmth_along(nodes, run, warmth));
  return coldest_window(courses);
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
