// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/places.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/triangles/rims.hpp"
#include "solver/spots.hpp"

namespace quoin::solver {
namespace {

using geometry::Border;
using geometry::Point;

constexpr std::uint32_t none = geometry::Triangle::none;

/// Places of two levels no farther apart than this, m, are the same spot.
constexpr double same_spot = 1e-3;

double distance(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

/// The band of a value from the level before; before there is one it is boundless.
Estimate against_before(const Reading& now, const std::vector<Reading>& readings) {
  const auto known = std::find_if(readings.begin(), readings.end(), [&](const Reading& one) {
    return distance(one.place, now.place) < same_spot;
  });
  if (known != readings.end()) return estimate_of(known->value, now.value);
  return {now.value.value, std::numeric_limits<double>::infinity(), false};
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

/// How many times as wide as wanted a band is; of one that is not known yet, and of very wide ones,
/// what asks for triangles some steps smaller.
double shortfall(double band, double wanted) {
  return std::isfinite(band) ? std::min(band / wanted, 30.0) : 4.0;
}

double span_of(const SpaceTemperatures& spaces) {
  const auto [low, high] = std::minmax_element(spaces.begin(), spaces.end());
  return *high - *low;
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
                                        std::optional<double> band, std::vector<Reading>& readings,
                                        Lack& lack) {
  const geometry::NodedTriangles& nodes = level.nodes();
  const std::vector<double> warmth = level.warmth(temperatures);
  const Flux gap = level.gap(temperatures);
  std::vector<geometry::Surface> own;
  for (geometry::Surface& surface : geometry::surfaces(nodes, physics.air)) {
    if (surface.air == air) own.push_back(std::move(surface));
  }
  if (own.empty()) return std::nullopt;
  constexpr double prominence = 0.0025;  // of the span: what a good thermometer tells apart
  std::vector<Reading> now;
  AirSurface result{air, {}, {}};
  std::optional<Spot> coldest;
  std::vector<double> blame;
  for (const LocalMinimum& minimum :
       local_minima(own, warmth, physics.is_fabric, prominence * span_of(temperatures))) {
    const geometry::Surface& surface = own[minimum.surface];
    const std::size_t node = surface.node(minimum.position);
    const Flux influence = level.influence_gap(borders_at(nodes, node));
    const std::vector<double> parts = level.conduction().product_by_element(gap, influence);
    TwoSided value{warmth[node], 0.0, 0.0};
    for (const double part : parts) {
      value.lacks += part / 2;
      value.gap += std::abs(part) / 2;
    }
    now.push_back({nodes.places[node], value});
    Spot spot;
    spot.place = nodes.places[node];
    spot.space = surface.faces[minimum.face].space;
    spot.region = surface.faces[minimum.face].region;
    spot.along = surface.along[minimum.position];
    spot.temperature = against_before(now.back(), readings);
    spot.thermometer = minimum.thermometer;
    result.cold_spots.push_back(spot);
    const bool is_fabric = physics.is_fabric[spot.region] != 0;
    const bool was_fabric = coldest && physics.is_fabric[coldest->region] != 0;
    if (!coldest || (is_fabric && !was_fabric) ||
        (is_fabric == was_fabric && spot.temperature.value < coldest->temperature.value)) {
      coldest = spot;
      blame = parts;
    }
  }
  readings.insert(readings.begin(), now.begin(), now.end());
  std::stable_sort(
      result.cold_spots.begin(), result.cold_spots.end(),
      [](const Spot& a, const Spot& b) { return a.temperature.value < b.temperature.value; });
  result.coldest = *coldest;
  if (!band) return result;
  double sum = 0.0;
  for (double& part : blame) {
    part = std::abs(part);
    sum += part / 2;
  }
  if (coldest->temperature.band <= *band) {
    lack.add(blame, 0.5 / *band);
    return result;
  }
  lack.reached = false;
  // Where the step from the level before is what makes the band wide, it still asks for a finer one.
  const double wanted = shortfall(coldest->temperature.band, *band) * *band;
  if (sum > 0.0) lack.add(blame, 0.5 * std::max(1.0, wanted / sum) / *band);
  return result;
}

ProbeValue probe_on(const TriangleLevel& level, const PlaceFinder& finder,
                    const std::vector<double>& warmth, Point place, std::optional<double> band,
                    std::vector<Reading>& readings, Lack& lack) {
  const PlaceFinder::Place where = finder.find(place);
  const Reading now{place, {finder.value(warmth, where), 0.0, 0.0}};
  ProbeValue result{place, against_before(now, readings)};
  readings.insert(readings.begin(), now);
  if (!band || result.temperature.band <= *band) return result;
  lack.reached = false;
  std::vector<double> blame(level.nodes().elements.size(), 0.0);
  blame[where.element] = shortfall(result.temperature.band, *band);
  lack.add(blame, 1.0);
  return result;
}

}  // namespace quoin::solver
