// SPDX-License-Identifier: Apache-2.0
#include "geometry/triangles/arrangement.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>
#include <utility>

#include "geometry/triangles/predicates.hpp"

namespace quoin::geometry {
namespace {

using Edge = std::array<std::uint32_t, 2>;

/// The edges of a drawing while they are being cut.
class Cutting {
 public:
  explicit Cutting(const Raster& raster) : raster_(raster) {}

  /// The number of a point, or of the first one that is nearer to it than `same_point`.
  std::uint32_t point(Point place) {
    place = raster_.on(place);
    const auto column = static_cast<long long>(std::floor(place.x / same_point));
    const auto row = static_cast<long long>(std::floor(place.y / same_point));
    for (long long i = column - 1; i <= column + 1; ++i) {
      for (long long j = row - 1; j <= row + 1; ++j) {
        const auto [begin, end] = raster_cells_.equal_range({i, j});
        for (auto known = begin; known != end; ++known) {
          const Point other = points_[known->second];
          if (std::hypot(other.x - place.x, other.y - place.y) < same_point) return known->second;
        }
      }
    }
    points_.push_back(place);
    const auto number = static_cast<std::uint32_t>(points_.size() - 1);
    raster_cells_.insert({{column, row}, number});
    return number;
  }

  void edge(std::uint32_t a, std::uint32_t b) {
    if (a != b) edges_.push_back({std::min(a, b), std::max(a, b)});
  }

  /// Cuts all edges where points lie on them and where they cross; whether there was any to cut.
  bool cut() {
    sort_edges();
    cuts_.assign(edges_.size(), {});
    cut_at_points();
    if (!apply_cuts()) {
      cut_at_crossings();
      return apply_cuts();
    }
    return true;
  }

  Arrangement arrangement() && {
    sort_edges();
    return {std::move(points_), std::move(edges_)};
  }

 private:
  [[nodiscard]] Point start(std::size_t edge) const { return points_[edges_[edge][0]]; }
  [[nodiscard]] Point end(std::size_t edge) const { return points_[edges_[edge][1]]; }

  void sort_edges() {
    std::sort(edges_.begin(), edges_.end());
    edges_.erase(std::unique(edges_.begin(), edges_.end()), edges_.end());
  }

  void cut_at_points() {
    std::vector<std::pair<double, std::uint32_t>> by_x;
    for (std::uint32_t p = 0; p < points_.size(); ++p) by_x.push_back({points_[p].x, p});
    std::sort(by_x.begin(), by_x.end());
    for (std::size_t e = 0; e < edges_.size(); ++e) {
      const Point a = start(e), b = end(e);
      const auto [west, east] = std::minmax(a.x, b.x);
      const auto [south, north] = std::minmax(a.y, b.y);
      const double length = std::hypot(b.x - a.x, b.y - a.y);
      const Point along = {(b.x - a.x) / length, (b.y - a.y) / length};
      for (auto at = std::lower_bound(by_x.begin(), by_x.end(),
                                      std::pair{west - on_edge, std::uint32_t{0}});
           at != by_x.end() && at->first <= east + on_edge; ++at) {
        const Point p = points_[at->second];
        if (p.y < south - on_edge || p.y > north + on_edge) continue;
        if (at->second == edges_[e][0] || at->second == edges_[e][1]) continue;
        const double s = (p.x - a.x) * along.x + (p.y - a.y) * along.y;
        const double off = (p.y - a.y) * along.x - (p.x - a.x) * along.y;
        if (s > 0 && s < length && std::abs(off) <= on_edge) cuts_[e].push_back({s, at->second});
      }
    }
  }

  void cut_at_crossings() {
    std::vector<std::pair<double, std::size_t>> by_x;
    for (std::size_t e = 0; e < edges_.size(); ++e) {
      by_x.push_back({std::min(start(e).x, end(e).x), e});
    }
    std::sort(by_x.begin(), by_x.end());
    for (std::size_t k = 0; k < by_x.size(); ++k) {
      const std::size_t e = by_x[k].second;
      const Point a = start(e), b = end(e);
      const auto [south, north] = std::minmax(a.y, b.y);
      for (std::size_t l = k + 1; l < by_x.size() && by_x[l].first <= std::max(a.x, b.x); ++l) {
        const std::size_t f = by_x[l].second;
        const Point c = start(f), d = end(f);
        if (std::max(c.y, d.y) < south || std::min(c.y, d.y) > north) continue;
        if (cross(a, b, c, d)) cut_both(e, f);
      }
    }
  }

  void cut_both(std::size_t e, std::size_t f) {
    const Point a = start(e), b = end(e), c = start(f), d = end(f);
    const Point u = {b.x - a.x, b.y - a.y}, v = {d.x - c.x, d.y - c.y};
    const double share = ((c.x - a.x) * v.y - (c.y - a.y) * v.x) / (u.x * v.y - u.y * v.x);
    const std::uint32_t p = point({a.x + share * u.x, a.y + share * u.y});
    for (const std::size_t edge : {e, f}) {
      const Point from = start(edge), at = points_[p];
      cuts_[edge].push_back({std::hypot(at.x - from.x, at.y - from.y), p});
    }
  }

  /// Edges that a crossing next to an end would leave as they are, are moved to that end by the
  /// next look for points on edges.
  bool apply_cuts() {
    bool any = false;
    std::vector<Edge> before;
    before.swap(edges_);
    for (std::size_t e = 0; e < before.size(); ++e) {
      std::sort(cuts_[e].begin(), cuts_[e].end());
      std::uint32_t from = before[e][0];
      for (const auto& [along, p] : cuts_[e]) {
        if (p == before[e][0] || p == before[e][1]) continue;
        any = true;
        edge(from, p);
        from = p;
      }
      edge(from, before[e][1]);
    }
    return any;
  }

  const Raster& raster_;
  std::vector<Point> points_;
  std::vector<Edge> edges_;
  std::vector<std::vector<std::pair<double, std::uint32_t>>> cuts_;  ///< of each edge: how far, at
  std::multimap<std::pair<long long, long long>, std::uint32_t> raster_cells_;
};

}  // namespace

Arrangement arrangement_of(const std::vector<Outline>& outlines, const std::vector<Point>& places,
                           const Raster& raster) {
  Cutting cutting(raster);
  for (const Outline& outline : outlines) {
    std::uint32_t before = cutting.point(outline.back());
    for (const Point corner : outline) {
      const std::uint32_t here = cutting.point(corner);
      cutting.edge(before, here);
      before = here;
    }
  }
  for (const Point place : places) cutting.point(place);
  constexpr int most_rounds = 100;  // random heaps of hundreds of outlines need four
  for (int round = 0; cutting.cut(); ++round) {
    if (round == most_rounds) throw std::runtime_error("the outlines cannot be disentangled");
  }
  return std::move(cutting).arrangement();
}

}  // namespace quoin::geometry
