// SPDX-License-Identifier: Apache-2.0
#include "solver/grids/round.hpp"

#include <algorithm>
#include <utility>

#include "solver/accuracy/bracket.hpp"
#include "solver/findings/aims.hpp"
#include "solver/findings/spots.hpp"
#include "solver/findings/wanted.hpp"

namespace quoin::solver {
namespace {

/// The cold spots of an air, their temperatures without bands yet.
AirSurface air_surface(const Question& question, const GridLevel& level, SpaceId air) {
  const geometry::Mesh& mesh = level.both.field.mesh;
  const std::vector<double>& temperature = level.temperatures.nodes();
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

PlaceValue value_on(const GridLevel& level, const Question& question, const ProbeValue& probe) {
  return place_value(level.both, question.physics, level.temperatures, probe.place);
}

PlaceValue value_on(const GridLevel& level, const Question& question, const Spot& spot) {
  if (!spot.further) {
    return place_value(level.both, question.physics, level.temperatures, spot.place);
  }
  const geometry::Mesh& mesh = level.both.field.mesh;
  return value_at_node(level.both, question.physics, level.temperatures,
                       mesh.nx() * mesh.ny() + *spot.further);
}

bool are_one(const Spot& one, const Spot& other) {
  return one.place == other.place && one.further == other.further;
}

void find_places(const Question& question, Round& round) {
  for (const SpaceId room : question.rooms) {
    if (has_surface(round.fine.both.field, room)) {
      round.solution.airs.push_back(air_surface(question, round.fine, room));
    }
  }
  for (const geometry::Point place : question.probes) round.solution.probes.push_back({place, {}});
}

/// Places on the fine grid alone: what their bands are at least, and where the grid widens them.
void look_once(const Question& question, Round& round) {
  const auto look = [&](const auto& place, double dip, double wanted) {
    const PlaceValue value = value_on(round.fine, question, place);
    add(round.blame, value.blame, 1 / wanted);
    round.shortfall = std::max(round.shortfall, (least_band(value.value) + dip) / wanted);
    return value.value;
  };
  for (const AirSurface& air : round.solution.airs) {
    round.coldest.push_back(look(air.coldest, air.coldest.dip, aim(question, air.air)));
  }
  for (const ProbeValue& probe : round.solution.probes) {
    round.probes.push_back(look(probe, 0.0, aim_of_probes(question)));
  }
}

void give_band(const Question& question, const Round& round, const TwoSided& fine, SpaceId air,
               Spot& spot) {
  spot.temperature = estimate_of(value_on(*round.coarse, question, spot).value, fine);
  spot.temperature.band += spot.dip;
  spot.factor = factor_of(question, spot.temperature, air);
}

void give_band(const Question& question, const Round& round, const TwoSided& fine,
               ProbeValue& probe) {
  probe.temperature = estimate_of(value_on(*round.coarse, question, probe).value, fine);
}

/// Bands of the coldest spots and of the probes, from both grids.
void look_twice(const Question& question, Round& round) {
  for (std::size_t k = 0; k < round.coldest.size(); ++k) {
    AirSurface& air = round.solution.airs[k];
    give_band(question, round, round.coldest[k], air.air, air.coldest);
    round.shortfall =
        std::max(round.shortfall, air.coldest.temperature.band / aim(question, air.air));
  }
  for (std::size_t k = 0; k < round.probes.size(); ++k) {
    ProbeValue& probe = round.solution.probes[k];
    give_band(question, round, round.probes[k], probe);
    round.shortfall = std::max(round.shortfall, probe.temperature.band / aim_of_probes(question));
  }
}

/// Bands of the other spots; those that could yet be colder than the coldest, by more than wanted,
/// are to be seen more sharply too.
void look_at_rivals(const Question& question, Round& round) {
  for (AirSurface& air : round.solution.airs) {
    const double wanted = aim(question, air.air);
    for (Spot& spot : air.cold_spots) {
      if (are_one(spot, air.coldest) || !is_alike(question.physics, spot, air.coldest)) continue;
      const PlaceValue value = value_on(round.fine, question, spot);
      give_band(question, round, value.value, air.air, spot);
      if (reach_below(air.coldest, spot) <= wanted) continue;
      add(round.blame, value.blame, 1 / wanted);
      round.shortfall = std::max(round.shortfall, spot.temperature.band / wanted);
    }
  }
}

/// Bands of what the grid was not refined for.
void look_at_other_places(const Question& question, Round& round) {
  const auto look = [&](SpaceId air, Spot& spot) {
    give_band(question, round, value_on(round.fine, question, spot).value, air, spot);
  };
  for (AirSurface& air : round.solution.airs) {
    if (!question.factor_band) look(air.air, air.coldest);
    for (Spot& spot : air.cold_spots) {
      if (!are_one(spot, air.coldest)) look(air.air, spot);
    }
    cover_rivals(question, air);
    for (Spot& spot : air.cold_spots) {
      if (are_one(spot, air.coldest)) spot = air.coldest;
    }
  }
  if (question.factor_band) return;
  for (ProbeValue& probe : round.solution.probes) {
    give_band(question, round, value_on(round.fine, question, probe).value, probe);
  }
}

void note_laws_of(const GridLevel& level, const Question& question, Round& round) {
  note_laws(level.both.field, question.temperatures.size(), round.solution.checks);
  require(round.solution.checks);
}

void solve_coarse(const Question& question, const geometry::Section& section,
                  const geometry::Subdivision& fine, const LinearOptions& options, Round& round) {
  round.coarse.emplace(question, section, geometry::halved(fine), options);
  note_laws_of(*round.coarse, question, round);
  look_twice(question, round);
}

}  // namespace

Round round_on(const Question& question, const geometry::Section& section,
               const geometry::Subdivision& fine, const LinearOptions& options) {
  GridLevel level{question, section, fine, options};
  Blame blame = no_blame(level.both.field.mesh);
  Round round{std::move(level), {}, {}, {}, {}, std::move(blame)};
  Solution& solution = round.solution;
  solution.physics = question.physics;
  note_laws_of(round.fine, question, round);
  if (question.factor_band) {
    find_places(question, round);
    look_once(question, round);
  }
  if (question.coupling_band) {
    Brackets brackets = brackets_of(round.fine.both, question.physics);
    solution.couplings = std::move(brackets.couplings);
    const double wanted = aim_of_couplings(question, solution.couplings);
    if (wanted > 0.0) add(round.blame, brackets.gap, 1 / wanted);
    round.shortfall = std::max(round.shortfall, shortfall_of(solution.couplings, wanted));
  }
  if (question.factor_band && round.shortfall <= 1.0) {
    solve_coarse(question, section, fine, options, round);
    // Others are looked at once all seems well: that is seldom, and most sections have no rivals.
    if (round.shortfall <= 1.0) look_at_rivals(question, round);
  }
  return round;
}

Solution answer_of(Round round, const Question& question, const geometry::Section& section,
                   const geometry::Subdivision& fine, const LinearOptions& options) {
  if (!question.factor_band) find_places(question, round);
  if (!round.coarse) solve_coarse(question, section, fine, options, round);
  Solution& solution = round.solution;
  look_at_other_places(question, round);
  solution.accurate = is_reached(question, solution);
  GridLevel& level = round.fine;
  solution.temperature = level.temperatures.nodes();
  solution.field = std::move(level.both.field);
  solution.cells = std::move(level.both.by_cells.g);
  solution.subdivision = fine;
  solution.flows = flows(solution.field, question.temperatures);
  return std::move(solution);
}

}  // namespace quoin::solver
