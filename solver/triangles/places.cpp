// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/places.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/triangles/rims.hpp"
#include "solver/findings/spots.hpp"
#include "solver/findings/wanted.hpp"

namespace quoin::solver {
namespace {

using geometry::Border;
using geometry::Point;

constexpr std::uint32_t none = geometry::Triangle::none;

/// Places of two levels no farther apart than this, m, are the same spot.
constexpr double same_spot = 1e-3;

double distance(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

/// What a level before knew of the same place; null where there is none.
const TwoSided* known_before(const Reading& now, const std::vector<Reading>& readings) {
  const auto known = std::find_if(readings.begin(), readings.end(), [&](const Reading& one) {
    return distance(one.place, now.place) < same_spot;
  });
  return known != readings.end() ? &known->value : nullptr;
}

/// The borders that meet in a node, or the one whose middle it is.
std::vector<std::uint32_t> borders_at(const geometry::NodedTriangles& nodes, std::size_t node) {
  std::vector<std::uint32_t> met;
  for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
    const Border& border = nodes.borders[b];
    if (border.space &&
        std::find(border.node.begin(), border.node.end(), node) != border.node.end())
      met.push_back(b);
  }
  return met;
}

/// How many times as wide as wanted a band is; of very wide ones, and of one that no second mesh
/// has confirmed, what asks for triangles some steps smaller.
double shortfall(double band, double wanted, bool is_known) {
  return std::clamp(band / wanted, is_known ? 0.0 : 4.0, 30.0);
}

/// A spot and where the mesh keeps it from being surer.
struct Seen {
  Spot spot;
  std::vector<double> blame;  ///< by element, its sum the correction without its signs, K
  bool is_known = false;      ///< on the level before
};

Seen seen(const TriangleLevel& level, const Flux& gap, std::size_t node, double temperature,
          const std::vector<Reading>& readings, std::vector<Reading>& now) {
  const Flux influence = level.influence_gap(borders_at(level.nodes(), node));
  Seen result;
  result.blame = level.conduction().product_by_element(gap, influence);
  TwoSided value{temperature, 0.0, 0.0};
  for (double& part : result.blame) {
    value.lacks += part / 2;
    part = std::abs(part) / 2;
    value.gap += part;
  }
  now.push_back({level.nodes().places[node], value});
  const TwoSided* before = known_before(now.back(), readings);
  result.is_known = before != nullptr;
  result.spot.place = now.back().place;
  result.spot.temperature = estimate_of(before != nullptr ? *before : value, value);
  if (before == nullptr) {
    result.spot.temperature.band += value.gap;
    result.spot.temperature.asymptotic = false;
  }
  return result;
}

/// Asks for what keeps a spot's band wider than wanted. Where the step from the level before makes
/// it wide, the blame is made to ask for a finer mesh all the same.
void ask(const Seen& seen, double wanted, Lack& lack) {
  double sum = 0.0;
  for (const double part : seen.blame) sum += part;
  const double band = seen.spot.temperature.band;
  const bool reached = band <= wanted && (seen.is_known || sum <= 1e-9 * wanted);
  if (!reached) lack.reached = false;
  const double least = reached ? 0.0 : shortfall(band, wanted, seen.is_known) * wanted;
  if (sum > 0.0) lack.add(seen.blame, std::max(1.0, least / sum) / wanted);
}

}  // namespace

PlaceFinder::PlaceFinder(const geometry::Triangles& triangles,
                         const geometry::NodedTriangles& nodes)
    : triangles_(triangles), nodes_(nodes), element_(triangles.net.triangles().size(), none) {
  for (std::uint32_t e = 0; e < nodes.elements.size(); ++e)
    element_[nodes.elements[e].triangle] = e;
}

PlaceFinder::Place PlaceFinder::find(Point place) const {
  const std::uint32_t found = triangles_.net.find(place, last_, false).triangle;
  if (found != none) last_ = found;
  if (found == none || element_[found] == none) return on_border(place);
  const Point a = triangles_.net.corner(found, 0), b = triangles_.net.corner(found, 1),
              c = triangles_.net.corner(found, 2);
  const double twice = 2 * triangles_.net.area(found);
  Place result{element_[found], {}};
  result.share[1] = ((place.x - a.x) * (c.y - a.y) - (place.y - a.y) * (c.x - a.x)) / twice;
  result.share[2] = ((b.x - a.x) * (place.y - a.y) - (b.y - a.y) * (place.x - a.x)) / twice;
  result.share[0] = 1 - result.share[1] - result.share[2];
  return result;
}

PlaceFinder::Place PlaceFinder::on_border(Point place) const {
  Place best;
  double least = std::numeric_limits<double>::infinity();
  for (const Border& border : nodes_.borders) {
    const Point a = nodes_.places[border.node[0]], b = nodes_.places[border.node[2]];
    const double s = std::clamp(((place.x - a.x) * (b.x - a.x) + (place.y - a.y) * (b.y - a.y)) /
                                    (border.length * border.length),
                                0.0, 1.0);
    const double away = distance(place, {a.x + s * (b.x - a.x), a.y + s * (b.y - a.y)});
    if (away >= least) continue;
    least = away;
    best = {border.element, {}};
    best.share[static_cast<std::size_t>(geometry::next(border.side))] = 1 - s;
    best.share[static_cast<std::size_t>(geometry::before(border.side))] = s;
  }
  return best;
}

std::array<double, 6> PlaceFinder::weights(const Place& place) {
  const auto [a, b, c] = place.share;
  return {a * (2 * a - 1), b * (2 * b - 1), c * (2 * c - 1), 4 * b * c, 4 * c * a, 4 * a * b};
}

double PlaceFinder::value(const std::vector<double>& field, const Place& place) const {
  const std::array<double, 6> weight = weights(place);
  double sum = 0.0;
  for (std::size_t k = 0; k < 6; ++k) {
    sum += weight[k] * field[nodes_.elements[place.element].node[k]];
  }
  return sum;
}

std::optional<AirSurface> cold_spots_on(const TriangleLevel& level, const Physics& physics,
                                        const SpaceTemperatures& temperatures, SpaceId air,
                                        std::optional<double> band,
                                        const std::vector<Reading>& before,
                                        std::vector<Reading>& now, Lack& lack) {
  const geometry::NodedTriangles& nodes = level.nodes();
  const std::vector<double> warmth = level.warmth(temperatures);
  const Flux gap = level.gap(temperatures);
  std::vector<geometry::Surface> own;
  for (geometry::Surface& surface : geometry::surfaces(nodes, physics.air)) {
    if (surface.air == air) own.push_back(std::move(surface));
  }
  if (own.empty()) return std::nullopt;
  constexpr double prominence = 0.0025;  // of the span: what a good thermometer tells apart
  std::vector<Seen> all;
  for (const LocalMinimum& minimum :
       local_minima(own, warmth, physics.is_fabric, prominence * span_of(temperatures))) {
    const geometry::Surface& surface = own[minimum.surface];
    const std::size_t node = surface.node(minimum.position);
    all.push_back(seen(level, gap, node, warmth[node], before, now));
    Spot& spot = all.back().spot;
    spot.space = surface.faces[minimum.face].space;
    spot.region = surface.faces[minimum.face].region;
    spot.along = surface.along[minimum.position];
    spot.thermometer = minimum.thermometer;
  }
  std::stable_sort(all.begin(), all.end(), [](const Seen& a, const Seen& b) {
    return a.spot.temperature.value < b.spot.temperature.value;
  });
  const auto fabric = std::find_if(all.begin(), all.end(), [&](const Seen& one) {
    return physics.is_fabric[one.spot.region] != 0;
  });
  const Seen& coldest = fabric != all.end() ? *fabric : all.front();
  AirSurface result{air, coldest.spot, {}};
  for (const Seen& each : all) {
    result.cold_spots.push_back(each.spot);
    if (!band || !is_alike(physics, each.spot, coldest.spot)) continue;
    // Others are to be seen more sharply where they could yet be colder.
    if (&each == &coldest || reach_below(coldest.spot, each.spot) > *band) ask(each, *band, lack);
  }
  return result;
}

ProbeValue probe_on(const TriangleLevel& level, const PlaceFinder& finder,
                    const std::vector<double>& warmth, Point place, std::optional<double> band,
                    const std::vector<Reading>& before, std::vector<Reading>& now, Lack& lack) {
  const PlaceFinder::Place where = finder.find(place);
  now.push_back({place, {finder.value(warmth, where), 0.0, 0.0}});
  const TwoSided own = now.back().value;
  const TwoSided* known = known_before(now.back(), before);
  const bool is_known = known != nullptr;
  ProbeValue result{place, estimate_of(is_known ? *known : own, own)};
  const double found = result.temperature.band;
  if (is_known && (!band || found <= *band)) return result;
  lack.reached = false;
  std::vector<double> blame(level.nodes().elements.size(), 0.0);
  blame[where.element] = band ? shortfall(found, *band, is_known) : 4.0;
  lack.add(blame, 1.0);
  return result;
}

}  // namespace quoin::solver
