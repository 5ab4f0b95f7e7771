// SPDX-License-Identifier: Apache-2.0
#include "solver/solution.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "solver/bracket.hpp"
#include "solver/network.hpp"
#include "solver/refinement.hpp"
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

/// What the factor of an air is measured by, K; the span of all where it is as warm as outside.
double difference(const Question& question, SpaceId air) {
  const double own = std::abs(question.temperatures[air] - question.temperatures[question.outside]);
  return own > 0 ? own : span_of(question.temperatures);
}

bool factor_reached(const Question& question, const Solution& solution) {
  if (!question.factor_band) return true;
  const double span = span_of(question.temperatures);
  const bool spots =
      std::all_of(solution.airs.begin(), solution.airs.end(), [&](const AirSurface& air) {
        return air.coldest.temperature.band <=
               *question.factor_band * difference(question, air.air);
      });
  return spots &&
         std::all_of(solution.probes.begin(), solution.probes.end(), [&](const ProbeValue& probe) {
           return probe.temperature.band <= *question.factor_band * span;
         });
}

double largest_coupling(const std::vector<Coupling>& couplings) {
  double largest = 0.0;
  for (const Coupling& coupling : couplings) {
    if (std::isfinite(coupling.high)) largest = std::max(largest, coupling.value);
  }
  return largest;
}

bool coupling_reached(const Question& question, const std::vector<Coupling>& couplings) {
  if (!question.coupling_band) return true;
  const double largest = largest_coupling(couplings);
  return std::all_of(couplings.begin(), couplings.end(), [&](const Coupling& coupling) {
    return !std::isfinite(coupling.high) ||
           (coupling.high - coupling.low) / 2 <= *question.coupling_band * largest;
  });
}

std::size_t node_at(const geometry::Mesh& mesh, geometry::Point place) {
  const auto i = std::lower_bound(mesh.x.begin(), mesh.x.end(), place.x) - mesh.x.begin();
  const auto j = std::lower_bound(mesh.y.begin(), mesh.y.end(), place.y) - mesh.y.begin();
  return mesh.node(static_cast<std::size_t>(i), static_cast<std::size_t>(j));
}

/// Widens the bands of the coldest spots and of the probes where the newest lines moved the
/// temperature to and fro by more than the three grids show, as steps of opposite sign can hide
/// each other. All are widened by a margin, as the grids are cut until the bands look narrow, which
/// favours those that happen to look so. Adds what each column and row did, in units of the wanted
/// accuracy.
void look_at_places(const Question& question, const Level& finest, const Network& network,
                    Solution& solution, Blame& blame) {
  const geometry::Mesh& mesh = finest.field.mesh;
  const auto look = [&](geometry::Point place, Estimate& temperature, double unit) {
    const std::vector<double> influence = network.influence(node_at(mesh, place));
    const Surplus moved = surplus_of(mesh, network.assembly(), finest.temperature, influence);
    constexpr double margin = 1.5;  // by trial: covers the error in 97 of 100 sections, not in 91
    temperature.band = margin * std::max(temperature.band, moved.newest / 2);
    add(blame, moved.blame, 1 / (*question.factor_band * unit));
  };
  for (AirSurface& air : solution.airs) {
    Spot& coldest = air.coldest;
    const double unit = difference(question, air.air);
    look(coldest.place, coldest.temperature, unit);
    coldest.factor.band = coldest.temperature.band / unit;
    for (Spot& spot : air.cold_spots) {
      if (spot.place == coldest.place) spot = coldest;
    }
  }
  for (ProbeValue& probe : solution.probes) {
    look(probe.place, probe.temperature, span_of(question.temperatures));
  }
}

Level level_of(const Question& question, geometry::Mesh mesh, const Network& network) {
  Field field = field_of(std::move(mesh), question.physics, network);
  std::vector<double> temperature = temperatures(field, question.temperatures);
  return {std::move(field), std::move(temperature)};
}

/// Adds to the bands what comes of drawing slopes in steps that the grid cannot follow exactly. To
/// and fro of steps cancels in the heat flow but for a part, here taken as a tenth of the deviation
/// by the thickness; a single place feels the whole of it in the share of the temperature drop
/// before the surface. Both from trial on slabs turned by many angles, which the tests repeat.
void widen_for_steps(const Question& question, Solution& solution) {
  const double share = question.section.thinness;
  if (share == 0.0) return;
  for (Coupling& coupling : solution.couplings) {
    coupling.low *= 1 - share / 10;
    coupling.high *= 1 + share / 10;
  }
  const auto widen = [&](Spot& spot, double inside) {
    const double drop = std::abs(inside - spot.temperature.value);
    const double unit = difference(question, question.physics.air[spot.space]);
    spot.temperature.band += share * drop;
    spot.factor.band = spot.temperature.band / unit;
  };
  for (AirSurface& air : solution.airs) {
    widen(air.coldest, question.temperatures[air.air]);
    for (Spot& spot : air.cold_spots) widen(spot, question.temperatures[air.air]);
  }
  for (ProbeValue& probe : solution.probes) {
    probe.temperature.band += share * span_of(question.temperatures) / 4;
  }
}

}  // namespace

Solution solution_of(const Question& question, const Effort& effort) {
  Solution solution;
  solution.physics = question.physics;
  Levels levels;
  const geometry::Section section = with_lines_through(question.section, question.probes);
  geometry::Subdivision fine = geometry::subdivision_of(section, effort.cells_per_metre);
  for (;;) {
    const auto mesh_with = [&](const geometry::Subdivision& subdivision) {
      return geometry::mesh_of(section, subdivision);
    };
    const auto network_on = [&](const geometry::Mesh& mesh) {
      return Network(node_centred(mesh, question.physics), effort.linear);
    };
    levels.clear();
    for (const auto& coarse : {geometry::halved(geometry::halved(fine)), geometry::halved(fine)}) {
      geometry::Mesh mesh = mesh_with(coarse);
      const Network network = network_on(mesh);
      levels.push_back(level_of(question, std::move(mesh), network));
    }
    geometry::Mesh mesh = mesh_with(fine);
    const Network network = network_on(mesh);
    levels.push_back(level_of(question, std::move(mesh), network));
    for (const Level& level : levels) {
      note_laws(level.field, question.temperatures.size(), solution.checks);
    }

    const Field& finest = levels.back().field;
    solution.airs.clear();
    for (const SpaceId room : question.rooms) {
      if (has_surface(finest, room)) {
        solution.airs.push_back(air_surface(question, levels, room));
      }
    }
    solution.probes.clear();
    for (const geometry::Point place : question.probes) {
      solution.probes.push_back({place, temperature_estimate(levels, place)});
    }
    Blame blame = no_blame(finest.mesh);
    if (question.factor_band) {
      look_at_places(question, levels.back(), network, solution, blame);
    }
    if (question.coupling_band) {
      Brackets brackets = brackets_of(finest, question.physics, effort.linear);
      solution.couplings = std::move(brackets.couplings);
      solution.cells = std::move(brackets.cells);
      add(blame, brackets.gap,
          1 / (*question.coupling_band * largest_coupling(solution.couplings)));
    }
    solution.accurate =
        factor_reached(question, solution) && coupling_reached(question, solution.couplings);
    if (solution.accurate) break;
    geometry::Subdivision finer = cut_where_it_matters(fine, blame);
    if (geometry::nodes(finer) > effort.node_limit) break;
    fine = std::move(finer);
  }
  require(solution.checks);
  widen_for_steps(question, solution);
  solution.field = std::move(levels.back().field);
  solution.temperature = std::move(levels.back().temperature);
  solution.flows = flows(solution.field, question.temperatures);
  solution.subdivision = std::move(fine);
  return solution;
}

}  // namespace quoin::solver
