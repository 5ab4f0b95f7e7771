// SPDX-License-Identifier: Apache-2.0
#include "solver/vapour/condensation.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace quoin::solver {

namespace {

/// Nodes of the largest grid that rates are sought on: choosing the condensing ones takes some
/// twenty solves.
constexpr std::size_t most_nodes = 16'000;

/// What gathers on a grid.
struct OnGrid {
  std::vector<Gathered> all;
  bool fills_a_cell = false;  ///< condenses at all four corners of some cell
  int steps = 0;              ///< grids before on which it did
};

bool fills_a_cell(const geometry::Mesh& mesh, const geometry::TwoSided& nodes,
                  const std::vector<double>& condensing) {
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const auto wet = [&](bool east, bool north) {
        return condensing[nodes.corner(i, j, east, north)] > 0.0;
      };
      if (wet(false, false) && wet(true, false) && wet(false, true) && wet(true, true)) return true;
    }
  }
  return false;
}

OnGrid on_grid(const geometry::Mesh& mesh, const VapourField& field) {
  const Sites sites(mesh);
  return {sites.gathered(field.condensing), fills_a_cell(mesh, sites.nodes(), field.condensing)};
}

/// The grid after another.
OnGrid after(const OnGrid& coarse, OnGrid fine) {
  fine.steps = coarse.fills_a_cell ? coarse.steps + 1 : 0;
  return fine;
}

/// Where condensation begins and ends within a material falls between the nodes of a grid; between
/// materials it is where it is.
bool is_within(const Gathered& one) { return one.meeting.first == one.meeting.second; }

/// Where both ends of a zone within a material stay at the nodes they were at, a finer grid gives
/// the same rate. What a zone that hardly fills a cell is off by at most, as a share; a quarter of
/// it on each finer grid, as the rate is least or greatest by where the zone ends. By trial.
constexpr double of_a_narrow_zone = 0.05;

std::vector<CondensingPlace> places_of(const OnGrid& fine, const OnGrid& coarse) {
  const double least = of_a_narrow_zone * std::pow(0.25, fine.steps);
  std::vector<CondensingPlace> places;
  for (const Gathered& one : fine.all) {
    auto [amount, length] = agreed(one, coarse.all);
    if (is_within(one)) amount.band = std::max(amount.band, least * amount.value);
    places.push_back({one.meeting, one.part, length, amount, one.most});
  }
  return places;
}

double sum_of(const std::vector<Gathered>& all) {
  double sum = 0.0;
  for (const Gathered& one : all) sum += one.amount;
  return sum;
}

/// Whether what is told is sure enough. A place that the coarser grid alone has counts, too.
bool is_sure(const OnGrid& fine, const OnGrid& coarse) {
  const double sum = sum_of(fine.all), before = sum_of(coarse.all);
  double widest = std::abs(sum - before);
  for (const CondensingPlace& place : places_of(fine, coarse))
    widest = std::max(widest, place.rate.band);
  return widest <= vapour_band * std::max(sum, before);
}

}  // namespace

VapourGrids vapour_grids(const Solution& solution, const LinearOptions& options) {
  const geometry::Subdivision coarse = geometry::halved(solution.subdivision);
  return {
      solution.field,
      field_of(geometry::mesh_of(solution.field.mesh.section, coarse), solution.physics, options),
      solution};
}

Agreed agreed(const Gathered& fine, const std::vector<Gathered>& coarse) {
  constexpr double like = 0.1;     // of the amount by length: more, and it is told by the sum
  constexpr double of_step = 2.0;  // of the step: an order of 0.6, as at corners, leaves so much
  const auto found = std::find_if(coarse.begin(), coarse.end(), [&](const Gathered& one) {
    return one.meeting == fine.meeting && one.part == fine.part;
  });
  const bool is_known = found != coarse.end();
  const Gathered other = is_known ? *found : Gathered{};
  const double step = std::abs(fine.amount - other.amount);
  const Estimate amount{fine.amount, is_known ? of_step * step : step, true};
  if (fine.length <= 0.0 || other.length <= 0.0) return {amount, 0.0};
  const double by_length = fine.amount / fine.length;
  const bool alike = std::abs(by_length - other.amount / other.length) <= like * by_length;
  return {amount, alike ? fine.length : 0.0};
}

Condensation condensation_at(const VapourGrids& grids, const SpaceTemperatures& spaces,
                             const VapourPhysics& physics, const SpacePressures& pressures,
                             const LinearOptions& options) {
  const geometry::Mesh& mesh = grids.fine.mesh;
  const auto solve = [&](const Field& heat) {
    return vapour_field(heat.mesh, temperatures(heat, spaces), physics, pressures, options);
  };
  Condensation result;
  result.field = solve(grids.fine);
  OnGrid coarse = on_grid(grids.coarse.mesh, solve(grids.coarse));
  OnGrid fine = after(coarse, on_grid(mesh, result.field));
  geometry::Subdivision subdivision = grids.solution.subdivision;
  while (!is_sure(fine, coarse) && !grids.solution.triangles) {
    subdivision = geometry::doubled(std::move(subdivision));
    if (geometry::nodes(subdivision) > most_nodes) break;
    const Field heat =
        field_of(geometry::mesh_of(mesh.section, subdivision), grids.solution.physics, options);
    OnGrid finer = after(fine, on_grid(heat.mesh, solve(heat)));
    coarse = std::exchange(fine, std::move(finer));
  }
  result.places = places_of(fine, coarse);
  const geometry::TwoSided nodes(mesh);
  for (std::size_t n = 0; n < result.field.pressure.size(); ++n) {
    const double humidity = result.field.pressure[n] / result.field.saturation[n];
    if (!(humidity > result.humidity * (1.0 + 1e-9))) continue;
    result.humidity = humidity;
    result.dampest = mesh.place(nodes.of_mesh(n));
  }
  return result;
}

}  // namespace quoin::solver
