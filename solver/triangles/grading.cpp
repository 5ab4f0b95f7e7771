// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/grading.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>

#include "solver/triangles/sides.hpp"

namespace quoin::solver {
namespace {

using geometry::Point;
using geometry::Triangles;
using geometry::Triangulation;

constexpr std::uint32_t none = geometry::Triangle::none;

constexpr double most_parts = 64;   // of one triangle in one step
constexpr double aim = 0.7;         // of the sum wanted
constexpr double slight_bend = 10;  // degrees; chords of an arc bend less
/// Graded areas make this many times as many triangles as even ones: the mean of r^(-14/9).
constexpr double graded_parts = 4.5;

/// What surrounds a point of the net.
struct Surrounding {
  std::vector<Point> ways;  ///< directions of the fixed sides from it, each of length 1
  double angle = 0.0;       ///< of material, rad
  std::uint32_t part = none;
  bool is_mixed = false;  ///< several materials
};

std::vector<Surrounding> surroundings_of(const Triangles& triangles) {
  const Triangulation& net = triangles.net;
  std::vector<Surrounding> all(net.points().size());
  for (std::uint32_t t = 0; t < net.triangles().size(); ++t) {
    const geometry::Triangle& triangle = net.triangles()[t];
    for (int k = 0; k < 3; ++k) {
      Surrounding& own = all[triangle.corner[at(k)]];
      const Point here = net.corner(t, k), right = net.corner(t, geometry::next(k)),
                  left = net.corner(t, geometry::before(k));
      const Point u = {right.x - here.x, right.y - here.y}, v = {left.x - here.x, left.y - here.y};
      // Each side starts from one of its ends in one triangle and from the other in the next.
      if (triangle.fixed[at(geometry::before(k))]) {
        const double length = std::hypot(u.x, u.y);
        own.ways.push_back({u.x / length, u.y / length});
      }
      if (!triangles.is_solid(t)) continue;
      own.angle += std::atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
      own.is_mixed = own.is_mixed || (own.part != none && own.part != triangle.part);
      own.part = triangle.part;
    }
  }
  return all;
}

/// Corners at which the field is not smooth: of several materials, or that reach into one.
std::vector<char> bends_of(const Triangles& triangles) {
  constexpr double slight = slight_bend * std::numbers::pi / 180;
  std::vector<char> bends;
  for (const Surrounding& own : surroundings_of(triangles)) {
    const bool straight =
        own.ways.size() == 2 &&
        own.ways[0].x * own.ways[1].x + own.ways[0].y * own.ways[1].y < -std::cos(slight);
    const bool fixed = !own.ways.empty();
    bends.push_back(
        fixed && !straight && (own.is_mixed || own.angle > std::numbers::pi + slight) ? 1 : 0);
  }
  return bends;
}

/// The elements that bear most of the blame, the worst first.
std::vector<std::size_t> worst_of(const std::vector<double>& blame) {
  std::vector<std::size_t> order(blame.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return blame[a] > blame[b]; });
  const double sum = std::accumulate(blame.begin(), blame.end(), 0.0);
  const double share = sum > 30 ? 0.8 : 0.95;
  double covered = 0.0;
  std::size_t count = 0;
  while (count < order.size() && covered < share * sum) covered += blame[order[count++]];
  order.resize(count);
  return order;
}

/// Every triangle as large as it is.
geometry::AreaMap kept(const Triangles& triangles) {
  geometry::AreaMap map = geometry::even_areas(triangles, 0.0);
  for (std::uint32_t t = 0; t < map.wanted.size(); ++t) {
    map.wanted[t].area = triangles.net.area(t) * (1 + 1e-9);
  }
  return map;
}

double parts(double blame, double unit) {
  return std::clamp(std::cbrt(blame / unit), 1.0, most_parts);
}

}  // namespace

geometry::AreaMap graded_areas(const Triangles& triangles, const geometry::NodedTriangles& nodes,
                               const std::vector<double>& blame) {
  const std::vector<std::size_t> worst = worst_of(blame);
  const double sum = std::accumulate(blame.begin(), blame.end(), 0.0);
  if (sum == 0.0) return kept(triangles);
  // The blame that one triangle may bear, found by halving: the sum predicted shall be the aim, and
  // there shall be no more than four times as many triangles.
  double low = std::log(1e-12 * sum), high = std::log(sum);
  for (int step = 0; step < 60; ++step) {
    const double unit = std::exp((low + high) / 2);
    double predicted = 0.0, made = 0.0;
    for (const double each : blame) {
      const double n = parts(each, unit);
      predicted += each / (n * n);
      made += n;
    }
    const bool finer = predicted > aim && made < 4 * static_cast<double>(blame.size());
    (finer ? high : low) = std::log(unit);
  }
  const double unit = std::exp((low + high) / 2);

  geometry::AreaMap map = kept(triangles);
  const std::vector<char> bends = bends_of(triangles);
  for (const std::size_t e : worst) {
    const std::uint32_t t = nodes.elements[e].triangle;
    const double n = parts(blame[e], unit);
    geometry::WantedArea& wanted = map.wanted[t];
    wanted.area = triangles.net.area(t) / n;
    if (n < 2) continue;
    for (int k = 0; k < 3; ++k) {
      if (bends[triangles.net.triangles()[t].corner[at(k)]] == 0) continue;
      wanted.area *= graded_parts;
      wanted.corner = triangles.net.corner(t, k);
      wanted.size = std::max(triangles.net.length({t, geometry::next(k)}),
                             triangles.net.length({t, geometry::before(k)}));
      break;
    }
  }
  return map;
}

void ask_for_window(geometry::AreaMap& map, const Triangles& triangles, const Window& window) {
  const Triangulation& net = triangles.net;
  const std::uint32_t beside = net.find(window.middle, 0, false).triangle;
  if (beside == none) return;
  // On a surface the walk may end in the space: the material lies beyond one of the sides.
  std::vector<std::uint32_t> holders = {beside};
  for (const std::uint32_t beyond : net.triangles()[beside].beyond) holders.push_back(beyond);
  for (const std::uint32_t t : holders) {
    if (t == none || !triangles.is_solid(t)) continue;
    const double size = std::max({net.length({t, 0}), net.length({t, 1}), net.length({t, 2})});
    const double area =
        window.length * window.length / 2 * std::pow(std::max(1.0, size / window.length), 14.0 / 9);
    if (area < map.wanted[t].area) map.wanted[t] = {area, window.middle, size};
  }
}

}  // namespace quoin::solver
