// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/proof.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "solver/triangles/grading.hpp"

namespace quoin::solver {
namespace {

using geometry::Border;

/// Couplings below this are none, W/(m K): rounding is all that is left of them.
constexpr double no_coupling = 1e-9;

constexpr double infinite = std::numeric_limits<double>::infinity();

/// Energies of all pairs of airs by one scheme. Shape: airs by airs, symmetric
using Energies = std::vector<std::vector<double>>;

Energies energies(const TriangleLevel& level, Flux TwoFields::*flux) {
  const auto& fields = level.fields();
  Energies energy(fields.size(), std::vector<double>(fields.size()));
  for (std::size_t a = 0; a < fields.size(); ++a) {
    for (std::size_t b = a; b < fields.size(); ++b) {
      energy[a][b] = energy[b][a] = level.conduction().product(fields[a].*flux, fields[b].*flux);
    }
  }
  return energy;
}

double of_both(const Energies& energy, std::size_t a, std::size_t b) {
  return energy[a][a] + 2 * energy[a][b] + energy[b][b];
}

double mean_over(const geometry::NodedTriangles& nodes, const std::vector<std::uint32_t>& borders,
                 const std::vector<double>& warmth) {
  double length = 0.0, integral = 0.0;
  for (const std::uint32_t b : borders) {
    const Border& border = nodes.borders[b];
    length += border.length;
    integral += border.length *
                (warmth[border.node[0]] + 4 * warmth[border.node[1]] + warmth[border.node[2]]) / 6;
  }
  return integral / length;
}

/// Whether heat flows without end: airs of unlike temperatures touch without resistance. No
/// identity of energies holds then.
bool is_endless(const TriangleLevel& level, const SpaceTemperatures& temperatures) {
  const auto& touching = level.conduction().touching();
  return std::any_of(touching.begin(), touching.end(), [&](const auto& pair) {
    return temperatures[pair.first] != temperatures[pair.second];
  });
}

/// Corners at the ends of the windows, which are put there exactly.
void put_corners(geometry::Triangles& triangles, std::vector<Thermometer>& windows) {
  for (Thermometer& thermometer : windows) {
    for (geometry::Point* end : {&thermometer.next.from, &thermometer.next.to}) {
      *end = triangles.net.points()[geometry::corner_at(triangles, *end)];
    }
  }
}

}  // namespace

std::vector<Coupling> proved_couplings(const TriangleLevel& level, std::optional<double> band,
                                       Lack& lack) {
  const auto& airs = level.airs();
  const std::size_t n = airs.size();
  const Energies above = energies(level, &TwoFields::above),
                 below = energies(level, &TwoFields::below);
  std::vector<Coupling> couplings;
  double largest = 0.0;
  for (std::size_t a = 0; a < n; ++a) {
    for (std::size_t b = a + 1; b < n; ++b) {
      Coupling coupling{airs[a], airs[b], 0.0, below[a][a], above[a][a]};
      if (n > 2) {
        coupling.low = std::max(0.0, (below[a][a] + below[b][b] - of_both(above, a, b)) / 2);
        coupling.high = (above[a][a] + above[b][b] - of_both(below, a, b)) / 2;
      }
      coupling.value = (coupling.low + coupling.high) / 2;
      const auto& touching = level.conduction().touching();
      if (std::find(touching.begin(), touching.end(), std::pair{airs[a], airs[b]}) !=
          touching.end()) {
        coupling.high = infinite;
        coupling.value = coupling.low;
      } else {
        largest = std::max(largest, coupling.value);
      }
      couplings.push_back(coupling);
    }
  }
  if (!band || largest < no_coupling) return couplings;
  const double wanted = *band * largest;
  for (const Coupling& coupling : couplings) {
    if (std::isfinite(coupling.high) && (coupling.high - coupling.low) / 2 > wanted) {
      lack.reached = false;
    }
  }
  for (std::size_t a = 0; a < (n == 2 ? 1 : n); ++a) {  // of two the flux is the same
    if (level.touches_another(airs[a])) continue;
    // Half the gap between two airs; of more no pair is wider than 3/4 of the sum of theirs.
    lack.add(level.conduction().product_by_element(level.gaps()[a], level.gaps()[a]),
             (n == 2 ? 0.5 : 0.75) / wanted);
  }
  return couplings;
}

std::optional<Thermometer> proved_thermometer(const TriangleLevel& level, const Physics& physics,
                                              const SpaceTemperatures& temperatures, SpaceId air,
                                              const Thermometer* known, double band, Lack& lack) {
  const geometry::NodedTriangles& nodes = level.nodes();
  const std::vector<double> warmth = level.warmth(temperatures);
  const std::vector<Run> runs = runs_along(nodes, physics, air, warmth);
  const std::optional<Window> coldest = coldest_window(nodes, runs, warmth);
  if (!coldest || is_endless(level, temperatures)) return std::nullopt;
  Thermometer result{air, *coldest, *coldest, coldest->mean, -infinite, infinite};
  std::vector<std::uint32_t> borders;
  if (known != nullptr) borders = borders_of(nodes, runs, known->next);
  if (borders.empty()) {
    lack.reached = false;
    lack.moved = true;
    return result;
  }
  const Conduction& conduction = level.conduction();
  const Flux gap = level.gap(temperatures), influence = level.influence_gap(borders);
  const double eta_u = std::sqrt(conduction.product(gap, gap));
  const double eta_w = std::sqrt(conduction.product(influence, influence));
  const double mean = mean_over(nodes, borders, warmth), half = eta_u * eta_w / 2;
  result.temperature = mean + conduction.product(gap, influence) / 2;
  result.low = result.temperature - half;
  result.high = result.temperature + half;
  if (half > band) lack.reached = false;
  if (eta_u > 0.0 && eta_w > 0.0) {
    lack.add(conduction.product_by_element(gap, gap), eta_w / eta_u / 4 / band);
    lack.add(conduction.product_by_element(influence, influence), eta_u / eta_w / 4 / band);
  }
  result.window = known->next;
  result.window.mean = mean;
  // What is colder by less than a quarter of what the proof leaves open may be so by error alone.
  if (coldest->mean < mean - 0.25 * std::max(band, half)) {
    lack.reached = false;
    lack.moved = true;
  } else {
    result.next = result.window;
  }
  return result;
}

bool refine_for(geometry::Triangles& triangles, const TriangleLevel& level, const Lack& lack,
                std::vector<Thermometer>& windows, std::size_t node_limit) {
  const std::size_t before = triangles.net.points().size();
  if (before >= node_limit) return false;
  geometry::AreaMap map = graded_areas(triangles, level.nodes(), lack.blame);
  // All that is asked for first: corners number the triangles anew.
  for (const Thermometer& thermometer : windows) {
    if (lack.moved) ask_for_window(map, triangles, thermometer.next);
  }
  put_corners(triangles, windows);
  geometry::refine(triangles, map, node_limit);
  return lack.moved || triangles.net.points().size() > before;
}

geometry::Triangles first_triangles(const geometry::Sheet& sheet,
                                    std::vector<Thermometer>& windows) {
  constexpr double parts = 20;           // of the material, none of them larger
  constexpr std::size_t most = 200'000;  // points; drawings have hundreds
  geometry::Triangles triangles = geometry::triangles_of(sheet);
  geometry::AreaMap map = geometry::even_areas(triangles, geometry::solid_area(triangles) / parts);
  for (const Thermometer& thermometer : windows) ask_for_window(map, triangles, thermometer.next);
  put_corners(triangles, windows);
  geometry::refine(triangles, map, most);
  return triangles;
}

}  // namespace quoin::solver
