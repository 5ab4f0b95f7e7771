// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/places.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "geometry/triangles/rims.hpp"
#include "solver/findings/spots.hpp"
#include "solver/findings/wanted.hpp"

namespace quoin::solver {
namespace {

using geometry::Border;
using geometry::Point;

constexpr std::uint32_t none = geometry::Triangle::none;

/// Places of two levels no farther apart than this, m, are the same spot, if there is none nearer:
/// on a straight surface the coldest node lies now here, now there.
constexpr double same_spot = 0.02;

double distance(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

/// What a level before knew of the same place; null where there is none. Where pieces touch in a
/// point there are several at one place: the one with the temperature most like it.
const TwoSided* known_before(const Reading& now, const std::vector<Reading>& readings) {
  const TwoSided* best = nullptr;
  double nearest = same_spot, likest = std::numeric_limits<double>::infinity();
  for (const Reading& one : readings) {
    const double away = distance(one.place, now.place);
    const double unlike = std::abs(one.value.value - now.value.value);
    if (away > nearest || (away == nearest && unlike >= likest)) continue;
    nearest = away;
    likest = unlike;
    best = &one.value;
  }
  return best;
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

/// A place and where the mesh keeps its temperature from being surer.
struct Seen {
  Estimate temperature;
  std::vector<double> blame;  ///< by element, its sum the correction without its signs, K
  bool is_known = false;      ///< on the level before, or exact on this one
};

/// How far a place may be off within an element beside what the mean over it is off, K: a share of
/// the element's part in the gap, as a change of temperature. By trial: a fifth leaves out 1 of 100
/// places in nasty sections.
double local_error(const TriangleLevel& level, const std::vector<double>& own_gap,
                   std::uint32_t element) {
  return 0.35 * std::sqrt(own_gap[element] / level.conduction().conductivity(element));
}

Seen seen(const TriangleLevel& level, const Flux& gap, const Flux& influence, Point place,
          double temperature, double local, const std::vector<Reading>& readings,
          std::vector<Reading>& now) {
  Seen result;
  result.blame = level.conduction().product_by_element(gap, influence);
  TwoSided value{temperature, 0.0, 0.0};
  for (double& part : result.blame) {
    value.lacks += part / 2;
    part = std::abs(part) / 2;
    value.gap += part;
  }
  if (value.gap > 0.0) value.local = local;  // else the temperature is given
  now.push_back({place, value});
  const TwoSided* before = known_before(now.back(), readings);
  result.temperature = estimate_of(before != nullptr ? *before : value, value);
  // On a plane wall the coldest node may lie elsewhere on each mesh, and the gap no longer shrinks:
  // what is exact on one mesh is known.
  constexpr double exact = 1e-5;  // K: more than corners written to a tenth of a micron do
  const bool is_exact = value.gap + value.local <= exact;
  result.is_known = before != nullptr || is_exact;
  if (is_exact) {
    result.temperature.asymptotic = true;
  } else if (before == nullptr) {
    result.temperature.band += value.gap;
    result.temperature.asymptotic = false;
  }
  return result;
}

/// Asks for what keeps a band wider than wanted. Where the step from the level before makes it
/// wide, the blame is made to ask for a finer mesh all the same.
void ask(const Seen& seen, double wanted, Lack& lack) {
  double sum = 0.0;
  for (const double part : seen.blame) sum += part;
  const double band = seen.temperature.band;
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
  const std::vector<double> own_gap = level.conduction().product_by_element(gap, gap);
  std::vector<geometry::Surface> own;
  for (geometry::Surface& surface : geometry::surfaces(nodes, physics.air)) {
    if (surface.air == air) own.push_back(std::move(surface));
  }
  if (own.empty()) return std::nullopt;
  constexpr double prominence = 0.0025;  // of the span: what a good thermometer tells apart
  std::vector<std::pair<Spot, Seen>> all;
  for (const LocalMinimum& minimum :
       local_minima(own, warmth, physics.is_fabric, prominence * span_of(temperatures))) {
    const geometry::Surface& surface = own[minimum.surface];
    const std::size_t node = surface.node(minimum.position);
    const Point place = nodes.places[node];
    const std::vector<std::uint32_t> met = borders_at(nodes, node);
    double local = 0.0;
    for (const std::uint32_t b : met)
      local = std::max(local, local_error(level, own_gap, nodes.borders[b].element));
    all.emplace_back(Spot{}, seen(level, gap, level.influence_gap(met), place, warmth[node],
                                  local + minimum.dip, before, now));
    Spot& spot = all.back().first;
    spot.place = place;
    spot.temperature = all.back().second.temperature;
    spot.space = surface.faces[minimum.face].space;
    spot.region = surface.faces[minimum.face].region;
    spot.along = surface.along[minimum.position];
    spot.thermometer = minimum.thermometer;
  }
  std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
    return a.first.temperature.value < b.first.temperature.value;
  });
  const auto fabric = std::find_if(all.begin(), all.end(), [&](const auto& one) {
    return physics.is_fabric[one.first.region] != 0;
  });
  const auto& coldest = fabric != all.end() ? *fabric : all.front();
  AirSurface result{air, coldest.first, {}};
  for (const auto& each : all) {
    const auto& [spot, seen] = each;
    result.cold_spots.push_back(spot);
    if (!band || !is_alike(physics, spot, coldest.first)) continue;
    // Others are to be seen more sharply where they could yet be colder.
    if (&each == &coldest || reach_below(coldest.first, spot) > *band) ask(seen, *band, lack);
  }
  return result;
}

ProbeValue probe_on(const TriangleLevel& level, const Flux& gap, const std::vector<double>& own_gap,
                    const PlaceFinder& finder, const std::vector<double>& warmth, Point place,
                    std::optional<double> band, const std::vector<Reading>& before,
                    std::vector<Reading>& now, Lack& lack) {
  const PlaceFinder::Place where = finder.find(place);
  const double local = local_error(level, own_gap, where.element);
  const Seen probe = seen(level, gap, level.conduction().influence_gap(where.element), place,
                          finder.value(warmth, where), local, before, now);
  if (band) ask(probe, *band, lack);
  return {place, probe.temperature};
}

}  // namespace quoin::solver
