// SPDX-License-Identifier: Apache-2.0
#include "solver/solution.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "solver/bracket.hpp"
#include "solver/errors.hpp"
#include "solver/spots.hpp"

namespace quoin::solver {
namespace {

/// A field on one of the grids with its temperatures.
struct Level {
  Field field;
  std::vector<double> temperature;
};

/// The last three grids, the finest last.
using Levels = std::vector<Level>;

double span_of(const SpaceTemperatures& spaces) {
  const auto [low, high] = std::minmax_element(spaces.begin(), spaces.end());
  return *high - *low;
}

Estimate temperature_estimate(const Levels& levels, geometry::Point place) {
  const auto at = [&](std::size_t k) {
    return temperature_at(levels[k].field, levels[k].temperature, place);
  };
  return estimate_of(at(0), at(1), at(2));
}

Estimate factor_of(const Estimate& temperature, double inside, double outside) {
  if (inside == outside) return {std::numeric_limits<double>::quiet_NaN(), 0.0, true};
  return scaled(temperature, 1 / (inside - outside), -outside / (inside - outside));
}

AirSurface air_surface(const Question& question, const Levels& levels, SpaceId air) {
  const Level& finest = levels.back();
  const geometry::Mesh& mesh = finest.field.mesh;
  std::vector<geometry::Surface> own;
  for (geometry::Surface& surface : geometry::surfaces(mesh, question.physics.air)) {
    if (surface.air == air) own.push_back(std::move(surface));
  }
  constexpr double prominence =
      0.0025;  // of the span: 0.05 K of 20 K, what a good thermometer tells apart
  AirSurface result{air, {}, {}};
  for (const LocalMinimum& minimum :
       local_minima(own, finest.temperature, question.physics.is_fabric,
                    prominence * span_of(question.temperatures))) {
    const geometry::Surface& surface = own[minimum.surface];
    const geometry::Face& face = surface.faces[minimum.face];
    Spot spot;
    spot.place = mesh.place(surface.node(minimum.position));
    spot.space = face.space;
    spot.region = face.region;
    spot.along = surface.along[minimum.position];
    spot.temperature = temperature_estimate(levels, spot.place);
    spot.factor = factor_of(spot.temperature, question.temperatures[air],
                            question.temperatures[question.outside]);
    spot.thermometer = minimum.thermometer;
    result.cold_spots.push_back(spot);
  }
  std::stable_sort(
      result.cold_spots.begin(), result.cold_spots.end(),
      [](const Spot& a, const Spot& b) { return a.temperature.value < b.temperature.value; });
  const auto fabric =
      std::find_if(result.cold_spots.begin(), result.cold_spots.end(),
                   [&](const Spot& spot) { return question.physics.is_fabric[spot.region] != 0; });
  result.coldest = fabric != result.cold_spots.end() ? *fabric : result.cold_spots.front();
  return result;
}

bool has_surface(const Field& field, SpaceId air) {
  return std::find(field.airs.begin(), field.airs.end(), air) != field.airs.end();
}

/// Keeps the worst of several values of one check.
void note(std::vector<Check>& checks, const std::string& name, double value, double limit) {
  const auto known = std::find_if(checks.begin(), checks.end(),
                                  [&](const Check& check) { return check.name == name; });
  Check& check =
      known != checks.end() ? *known : checks.emplace_back(Check{name, value, limit, true});
  check.value = std::max(check.value, value);
  check.holds = check.value <= check.limit;
}

/// The laws that every solution obeys whatever its grid.
void note_laws(const Field& field, std::size_t spaces, std::vector<Check>& checks) {
  double imbalance = 0.0;
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    double sum = 0.0;
    for (std::size_t s = 0; s < spaces; ++s) sum += field.space_flow[a * spaces + s];
    const double through = field.coupling[a * field.airs.size() + a];
    if (through > 0.0) imbalance = std::max(imbalance, std::abs(sum) / through);
  }
  double beyond = 0.0;
  double not_one = 0.0;
  for (std::size_t n = 0; n < field.solid.size(); ++n) {
    if (field.solid[n] == 0) continue;
    double sum = 0.0;
    for (const auto& g : field.basis) {
      sum += g[n];
      beyond = std::max({beyond, -g[n], g[n] - 1.0});
    }
    not_one = std::max(not_one, std::abs(sum - 1.0));
  }
  note(checks, "heat balance", imbalance, 1e-4);  // limit of ISO 10211
  note(checks, "temperatures within the spaces'", beyond, 1e-6);
  note(checks, "shares of the spaces add to one", not_one, 1e-6);
  note(checks, "residual of the linear solve", field.residual, 1e-9);
}

bool factor_reached(const Question& question, const std::vector<AirSurface>& airs) {
  if (!question.factor_band) return true;
  const double span = span_of(question.temperatures);
  return std::all_of(airs.begin(), airs.end(), [&](const AirSurface& air) {
    const double difference =
        std::abs(question.temperatures[air.air] - question.temperatures[question.outside]);
    return air.coldest.temperature.band <=
           *question.factor_band * (difference > 0 ? difference : span);
  });
}

bool coupling_reached(const Question& question, const std::vector<Coupling>& couplings) {
  if (!question.coupling_band) return true;
  double largest = 0.0;
  for (const Coupling& coupling : couplings) {
    if (std::isfinite(coupling.high)) largest = std::max(largest, coupling.value);
  }
  return std::all_of(couplings.begin(), couplings.end(), [&](const Coupling& coupling) {
    return !std::isfinite(coupling.high) ||
           (coupling.high - coupling.low) / 2 <= *question.coupling_band * largest;
  });
}

}  // namespace

Solution solution_of(const Question& question, const Effort& effort) {
  Solution solution;
  solution.physics = question.physics;
  Levels levels;
  geometry::Subdivision subdivision =
      geometry::subdivision_of(question.section, effort.cells_per_metre);
  for (;;) {
    Field field =
        field_of(geometry::mesh_of(question.section, subdivision), question.physics, effort.linear);
    std::vector<double> temperature = temperatures(field, question.temperatures);
    note_laws(field, question.temperatures.size(), solution.checks);
    levels.push_back({std::move(field), std::move(temperature)});
    subdivision = geometry::doubled(std::move(subdivision));
    if (levels.size() < 3) continue;
    if (levels.size() > 3) levels.erase(levels.begin());

    const Field& finest = levels.back().field;
    solution.airs.clear();
    for (const SpaceId room : question.rooms) {
      if (has_surface(finest, room)) solution.airs.push_back(air_surface(question, levels, room));
    }
    if (question.coupling_band) {
      solution.couplings = bracketed_couplings(finest, question.physics, effort.linear);
    }
    solution.accurate =
        factor_reached(question, solution.airs) && coupling_reached(question, solution.couplings);
    const bool too_large = 4 * finest.mesh.nx() * finest.mesh.ny() > effort.node_limit;
    if (solution.accurate || too_large) break;
  }
  for (const Check& check : solution.checks) {
    if (!check.holds) {
      throw SolveError(fmt::format("a solution breaks a law it must obey: {}: {:.3g}, limit {:.3g}",
                                   check.name, check.value, check.limit));
    }
  }
  for (const geometry::Point place : question.probes) {
    solution.probes.push_back({place, temperature_estimate(levels, place)});
  }
  solution.field = std::move(levels.back().field);
  solution.temperature = std::move(levels.back().temperature);
  solution.flows = flows(solution.field, question.temperatures);
  return solution;
}

}  // namespace quoin::solver
