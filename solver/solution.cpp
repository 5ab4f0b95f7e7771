// SPDX-License-Identifier: Apache-2.0
#include "solver/solution.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <stdexcept>
#include <utility>

#include "solver/accuracy/bracket.hpp"
#include "solver/accuracy/place_value.hpp"
#include "solver/accuracy/refinement.hpp"
#include "solver/findings/aims.hpp"
#include "solver/findings/between_airs.hpp"
#include "solver/findings/spots.hpp"
#include "solver/findings/wanted.hpp"
#include "solver/linear/errors.hpp"
#include "solver/triangles/solution_on_triangles.hpp"

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
    const std::size_t node = surface.node(minimum.position), grid = mesh.nx() * mesh.ny();
    spot.place = mesh.place(node);
    if (node >= grid) spot.further = node - grid;
    spot.space = face.space;
    spot.region = face.region;
    spot.along = surface.along[minimum.position];
    spot.temperature.value = temperature[surface.node(minimum.position)];
    spot.dip = minimum.dip;
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

/// Gives a value on both grids as a temperature with a band; tells where the grid keeps it from
/// being surer. Shape: value_on(level) gives a PlaceValue.
template <class ValueOn>
Blame look(const Levels& levels, ValueOn value_on, Estimate& temperature) {
  PlaceValue fine = value_on(levels.fine);
  temperature = estimate_of(value_on(levels.coarse).value, fine.value);
  return std::move(fine.blame);
}

Blame look_at(const Question& question, const Levels& levels, ProbeValue& probe) {
  const auto on = [&](const Level& level) {
    return place_value(level.both, question.physics, level.temperatures, probe.place);
  };
  return look(levels, on, probe.temperature);
}

Blame look_at(const Question& question, const Levels& levels, SpaceId air, Spot& spot) {
  const auto on = [&](const Level& level) {
    if (!spot.further)
      return place_value(level.both, question.physics, level.temperatures, spot.place);
    const geometry::Mesh& mesh = level.both.field.mesh;
    return value_at_node(level.both, question.physics, level.temperatures,
                         mesh.nx() * mesh.ny() + *spot.further);
  };
  Blame blame = look(levels, on, spot.temperature);
  spot.temperature.band += spot.dip;
  spot.factor = factor_of(question, spot.temperature, air);
  return blame;
}

bool are_one(const Spot& one, const Spot& other) {
  return one.place == other.place && one.further == other.further;
}

/// Two grids solved and what is asked read from them.
struct Round {
  Levels levels;
  Solution solution;
  Blame blame;             ///< what keeps bands from being narrower, in units of those aimed at
  double shortfall = 0.0;  ///< how many times as wide as aimed at the widest band is
};

/// Bands of the coldest spots and of the probes.
void look_at_places(const Question& question, Round& round) {
  for (AirSurface& air : round.solution.airs) {
    const Blame blame = look_at(question, round.levels, air.air, air.coldest);
    const double wanted = aim(question, air.air);
    add(round.blame, blame, 1 / wanted);
    round.shortfall = std::max(round.shortfall, air.coldest.temperature.band / wanted);
  }
  for (ProbeValue& probe : round.solution.probes) {
    const Blame blame = look_at(question, round.levels, probe);
    const double wanted = aim_of_probes(question);
    add(round.blame, blame, 1 / wanted);
    round.shortfall = std::max(round.shortfall, probe.temperature.band / wanted);
  }
}

/// Bands of the other spots; those that could yet be colder than the coldest, by more than wanted,
/// are to be seen more sharply too.
void look_at_rivals(const Question& question, Round& round) {
  for (AirSurface& air : round.solution.airs) {
    const double wanted = aim(question, air.air);
    for (Spot& spot : air.cold_spots) {
      if (are_one(spot, air.coldest) || !is_alike(question.physics, spot, air.coldest)) continue;
      const Blame blame = look_at(question, round.levels, air.air, spot);
      if (reach_below(air.coldest, spot) <= wanted) continue;
      add(round.blame, blame, 1 / wanted);
      round.shortfall = std::max(round.shortfall, spot.temperature.band / wanted);
    }
  }
}

/// Bands of what the grid was not refined for.
void look_at_other_places(const Question& question, const Levels& levels, Solution& solution) {
  for (AirSurface& air : solution.airs) {
    if (!question.factor_band) look_at(question, levels, air.air, air.coldest);
    for (Spot& spot : air.cold_spots) {
      if (!are_one(spot, air.coldest)) look_at(question, levels, air.air, spot);
    }
    cover_rivals(question, air);
    for (Spot& spot : air.cold_spots) {
      if (are_one(spot, air.coldest)) spot = air.coldest;
    }
  }
  if (question.factor_band) return;
  for (ProbeValue& probe : solution.probes) {
    look_at(question, levels, probe);
  }
}

void refuse_beyond(std::size_t limit, std::size_t nodes) {
  if (nodes <= limit) return;
  throw SolveError(fmt::format(
      "the coarsest grid that shows every part of this section has {} nodes and takes about {:.0f} "
      "MB, the limit is {} nodes; leave out fine detail or allow more with --node-limit",
      nodes, static_cast<double>(nodes) * bytes_per_node / 1e6, limit));
}

/// Throws: SolveError where the linear solver fails or a solution breaks a law of physics.
Round round_on(const Question& question, const geometry::Section& section,
               const geometry::Subdivision& fine, const LinearOptions& options) {
  Levels levels{{question, section, geometry::halved(fine), options},
                {question, section, fine, options}};
  Blame blame = no_blame(levels.field().mesh);
  Round round{std::move(levels), {}, std::move(blame)};
  Solution& solution = round.solution;
  solution.physics = question.physics;
  for (const Level* level : {&round.levels.coarse, &round.levels.fine}) {
    note_laws(level->both.field, question.temperatures.size(), solution.checks);
  }
  require(solution.checks);
  for (const SpaceId room : question.rooms) {
    if (has_surface(round.levels.field(), room)) {
      solution.airs.push_back(air_surface(question, round.levels, room));
    }
  }
  for (const geometry::Point place : question.probes) solution.probes.push_back({place, {}});
  if (question.factor_band) look_at_places(question, round);
  if (question.coupling_band) {
    Brackets brackets = brackets_of(round.levels.fine.both, question.physics);
    solution.couplings = std::move(brackets.couplings);
    const double wanted = aim_of_couplings(question, solution.couplings);
    if (wanted > 0.0) add(round.blame, brackets.gap, 1 / wanted);
    round.shortfall = std::max(round.shortfall, shortfall_of(solution.couplings, wanted));
  }
  // Others are looked at once all seems well: that is seldom, and most sections have no rivals.
  if (question.factor_band && round.shortfall <= 1.0) look_at_rivals(question, round);
  return round;
}

/// Nodes up to which grids are made finer. Those with nodes beyond the grid are solved by the
/// direct method, which takes longer the more there are.
std::size_t patience_on(const geometry::Mesh& mesh, const Effort& effort) {
  const bool beyond_grid = mesh.nodes() > mesh.nx() * mesh.ny();
  return std::min(effort.node_limit, beyond_grid ? effort.patience / 4 : effort.patience);
}

Solution finished(const Question& question, Round round, geometry::Subdivision fine) {
  Solution& solution = round.solution;
  look_at_other_places(question, round.levels, solution);
  solution.accurate = is_reached(question, solution);
  Level& level = round.levels.fine;
  solution.temperature = level.temperatures.nodes();
  solution.field = std::move(level.both.field);
  solution.cells = std::move(level.both.by_cells.g);
  solution.subdivision = std::move(fine);
  solution.flows = flows(solution.field, question.temperatures);
  return std::move(solution);
}

Solution solution_on_grids(const Question& question, const Effort& effort) {
  const geometry::Section section = with_lines_through(question.section, question.probes);
  geometry::Subdivision fine = geometry::subdivision_of(section, effort.cells_per_metre);
  refuse_beyond(effort.node_limit, geometry::nodes(fine));
  Progress progress;
  std::optional<geometry::Subdivision> before;  // the last grid, while one may go on
  bool may_go_on = true;
  for (;;) {
    std::optional<Round> round;
    try {
      round = round_on(question, section, fine, effort.linear);
    } catch (const SolveError&) {
      if (!before) throw;
      // Finer than numbers can follow: the answer is that of the grid before, as far as it goes.
      fine = std::move(*before);
      before.reset();
      may_go_on = false;
      continue;
    }
    progress.note(geometry::nodes(fine), round->shortfall);
    const std::size_t patience = patience_on(round->levels.field().mesh, effort);
    if (may_go_on && round->shortfall > 1.0 && progress.is_worth_while(patience)) {
      geometry::Subdivision finer =
          cut_where_it_matters(fine, round->levels.field().mesh, round->blame);
      const std::size_t nodes = geometry::nodes(finer);
      if (nodes > geometry::nodes(fine) && nodes <= patience) {
        before = std::exchange(fine, std::move(finer));
        continue;
      }
    }
    return finished(question, std::move(*round), std::move(fine));
  }
}

}  // namespace

Solution solution_between(const Question& question, const Effort& effort) {
  const Question between = between_airs(question);
  if (question.section.deviation == 0.0) return solution_on_grids(between, effort);
  if (question.sheet.empty()) throw std::invalid_argument("slopes need the sheet that shows them");
  return solution_on_triangles(between, effort);
}

Solution solution_of(const Question& question, const Effort& effort) {
  return at_temperatures(solution_between(question, effort), question.temperatures);
}

}  // namespace quoin::solver
