// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/grading.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>

namespace quoin::solver {
namespace {

using geometry::Point;
using geometry::Triangles;
using geometry::Triangulation;

constexpr double most_parts = 64;   // of one triangle in one step
constexpr double aim = 0.7;         // of the sum wanted
constexpr double slight_bend = 10;  // degrees; chords of an arc bend less

/// Corners at which fixed sides do not simply go straight on, or at which several meet.
std::vector<char> bends_of(const Triangulation& net) {
  std::vector<std::vector<Point>> ways(net.points().size());
  for (std::uint32_t t = 0; t < net.triangles().size(); ++t) {
    for (int k = 0; k < 3; ++k) {
      if (!net.triangles()[t].fixed[static_cast<std::size_t>(k)]) continue;
      // Each side is seen from both its triangles; each tells of the corner it starts from.
      const std::uint32_t a =
          net.triangles()[t].corner[static_cast<std::size_t>(geometry::next(k))];
      const std::uint32_t b =
          net.triangles()[t].corner[static_cast<std::size_t>(geometry::before(k))];
      const double length = net.length({t, k});
      ways[a].push_back({(net.points()[b].x - net.points()[a].x) / length,
                         (net.points()[b].y - net.points()[a].y) / length});
    }
  }
  const double straight = -std::cos(slight_bend * std::numbers::pi / 180);
  std::vector<char> bends(ways.size(), 0);
  for (std::size_t p = 0; p < ways.size(); ++p) {
    if (ways[p].empty()) continue;
    const auto& w = ways[p];
    bends[p] = w.size() != 2 || w[0].x * w[1].x + w[0].y * w[1].y > straight ? 1 : 0;
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
    double predicted = sum, made = static_cast<double>(blame.size());
    for (const std::size_t e : worst) {
      const double n = parts(blame[e], unit);
      predicted += blame[e] / (n * n) - blame[e];
      made += n - 1;
    }
    const bool finer = predicted > aim && made < 4 * static_cast<double>(blame.size());
    (finer ? high : low) = std::log(unit);
  }
  const double unit = std::exp((low + high) / 2);

  geometry::AreaMap map = kept(triangles);
  const std::vector<char> bends = bends_of(triangles.net);
  for (const std::size_t e : worst) {
    const std::uint32_t t = nodes.elements[e].triangle;
    const double n = parts(blame[e], unit);
    geometry::WantedArea& wanted = map.wanted[t];
    wanted.area = triangles.net.area(t) / n;
    if (n < 2) continue;
    for (int k = 0; k < 3; ++k) {
      if (bends[triangles.net.triangles()[t].corner[static_cast<std::size_t>(k)]] == 0) continue;
      wanted.corner = triangles.net.corner(t, k);
      wanted.size = std::max(triangles.net.length({t, geometry::next(k)}),
                             triangles.net.length({t, geometry::before(k)}));
      break;
    }
  }
  return map;
}

}  // namespace quoin::solver
