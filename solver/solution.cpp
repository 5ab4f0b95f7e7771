// SPDX-License-Identifier: Apache-2.0
#include "solver/solution.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "solver/bracket.hpp"
#include "solver/errors.hpp"
#include "solver/place_value.hpp"
#include "solver/refinement.hpp"
#include "solver/spots.hpp"

namespace quoin::solver {
namespace {

/// One of the grids, solved by both schemes.
struct Level {
  BothSchemes both;
  BothTemperatures temperatures;

  Level(const Question& question, const geometry::Section& section,
        const geometry::Subdivision& subdivision, const LinearOptions& options)
      : both(both_schemes(geometry::mesh_of(section, subdivision), question.physics, options)),
        temperatures(both, question.physics, question.temperatures) {}
};

/// Two grids, the second twice as fine.
struct Levels {
  Level coarse;
  Level fine;

  [[nodiscard]] const Field& field() const { return fine.both.field; }
};

double span_of(const SpaceTemperatures& spaces) {
  const auto [low, high] = std::minmax_element(spaces.begin(), spaces.end());
  return *high - *low;
}

Estimate factor_of(const Question& question, const Estimate& temperature, SpaceId air) {
  const double inside = question.temperatures[air];
  const double outside = question.temperatures[question.outside];
  if (inside == outside) return {std::numeric_limits<double>::quiet_NaN(), 0.0, true};
  return scaled(temperature, 1 / (inside - outside), -outside / (inside - outside));
}

/// The cold spots of an air, their temperatures read on the finer grid, without bands yet.
AirSurface air_surface(const Question& question, const Levels& levels, SpaceId air) {
  const geometry::Mesh& mesh = levels.field().mesh;
  const std::vector<double>& temperature = levels.fine.temperatures.nodes();
  std::vector<geometry::Surface> own;
  for (geometry::Surface& surface : geometry::surfaces(mesh, question.physics.air)) {
    if (surface.air == air) own.push_back(std::move(surface));
  }
  constexpr double prominence =
      0.0025;  // of the span: 0.05 K of 20 K, what a good thermometer tells apart
  AirSurface result{air, {}, {}};
  for (const LocalMinimum& minimum : local_minima(own, temperature, question.physics.is_fabric,
                                                  prominence * span_of(question.temperatures))) {
    const geometry::Surface& surface = own[minimum.surface];
    const geometry::Face& face = surface.faces[minimum.face];
    Spot spot;
    spot.place = mesh.place(surface.node(minimum.position));
    spot.space = face.space;
    spot.region = face.region;
    spot.along = surface.along[minimum.position];
    spot.temperature.value = temperature[surface.node(minimum.position)];
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

/// Gives a place its temperature with a band; tells where the grid keeps it from being surer.
Blame look_at(const Question& question, const Levels& levels, geometry::Point place,
              Estimate& temperature) {
  const auto on = [&](const Level& level) {
    return place_value(level.both, question.physics, level.temperatures, place);
  };
  PlaceValue fine = on(levels.fine);
  temperature = estimate_of(on(levels.coarse).value, fine.value);
  return std::move(fine.blame);
}

Blame look_at(const Question& question, const Levels& levels, SpaceId air, Spot& spot) {
  Blame blame = look_at(question, levels, spot.place, spot.temperature);
  spot.factor = factor_of(question, spot.temperature, air);
  return blame;
}

/// Bands of the coldest spots and of the probes, and what keeps them from being narrower, in units
/// of the wanted accuracy.
void look_at_places(const Question& question, const Levels& levels, Solution& solution,
                    Blame& blame) {
  for (AirSurface& air : solution.airs) {
    add(blame, look_at(question, levels, air.air, air.coldest),
        1 / (*question.factor_band * difference(question, air.air)));
  }
  for (ProbeValue& probe : solution.probes) {
    add(blame, look_at(question, levels, probe.place, probe.temperature),
        1 / (*question.factor_band * span_of(question.temperatures)));
  }
}

/// Bands of what the grid was not refined for.
void look_at_other_places(const Question& question, const Levels& levels, Solution& solution) {
  for (AirSurface& air : solution.airs) {
    if (!question.factor_band) look_at(question, levels, air.air, air.coldest);
    for (Spot& spot : air.cold_spots) {
      if (spot.place == air.coldest.place) {
        spot = air.coldest;
      } else {
        look_at(question, levels, air.air, spot);
      }
    }
  }
  if (question.factor_band) return;
  for (ProbeValue& probe : solution.probes) {
    look_at(question, levels, probe.place, probe.temperature);
  }
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

void refuse_beyond(std::size_t limit, std::size_t nodes) {
  if (nodes <= limit) return;
  throw SolveError(fmt::format(
      "the coarsest grid that shows every part of this section has {} nodes and takes about {:.0f} "
      "MB, the limit is {} nodes; leave out fine detail or allow more with --node-limit",
      nodes, static_cast<double>(nodes) * bytes_per_node / 1e6, limit));
}

}  // namespace

Solution solution_of(const Question& question, const Effort& effort) {
  Solution solution;
  solution.physics = question.physics;
  const geometry::Section section = with_lines_through(question.section, question.probes);
  geometry::Subdivision fine = geometry::subdivision_of(section, effort.cells_per_metre);
  refuse_beyond(effort.node_limit, geometry::nodes(fine));
  for (;;) {
    Levels levels{{question, section, geometry::halved(fine), effort.linear},
                  {question, section, fine, effort.linear}};
    for (const Level* level : {&levels.coarse, &levels.fine}) {
      note_laws(level->both.field, question.temperatures.size(), solution.checks);
    }

    solution.airs.clear();
    for (const SpaceId room : question.rooms) {
      if (has_surface(levels.field(), room)) {
        solution.airs.push_back(air_surface(question, levels, room));
      }
    }
    solution.probes.clear();
    for (const geometry::Point place : question.probes) solution.probes.push_back({place, {}});
    Blame blame = no_blame(levels.field().mesh);
    if (question.factor_band) look_at_places(question, levels, solution, blame);
    if (question.coupling_band) {
      Brackets brackets = brackets_of(levels.fine.both, question.physics);
      solution.couplings = std::move(brackets.couplings);
      add(blame, brackets.gap,
          1 / (*question.coupling_band * largest_coupling(solution.couplings)));
    }
    solution.accurate =
        factor_reached(question, solution) && coupling_reached(question, solution.couplings);
    geometry::Subdivision finer;
    if (!solution.accurate) finer = cut_where_it_matters(fine, blame);
    if (!solution.accurate && geometry::nodes(finer) <= effort.node_limit) {
      fine = std::move(finer);
      continue;
    }
    require(solution.checks);
    look_at_other_places(question, levels, solution);
    widen_for_steps(question, solution);
    solution.temperature = levels.fine.temperatures.nodes();
    solution.field = std::move(levels.fine.both.field);
    solution.cells = std::move(levels.fine.both.by_cells.g);
    solution.subdivision = std::move(fine);
    solution.flows = flows(solution.field, question.temperatures);
    return solution;
  }
}

}  // namespace quoin::solver
