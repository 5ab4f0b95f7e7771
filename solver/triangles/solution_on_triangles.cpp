// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/solution_on_triangles.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "geometry/thinned.hpp"
#include "geometry/triangles/rims.hpp"
#include "solver/findings/wanted.hpp"
#include "solver/scheme/basis.hpp"
#include "solver/triangles/answer.hpp"

namespace quoin::solver {
namespace {

/// A grid for pictures needs no more nodes than this.
constexpr std::size_t most_picture_nodes = 120'000;

Claim claim_of(const Question& question, const Effort& effort) {
  Claim claim;
  claim.sheet = question.sheet;
  claim.physics = question.physics;
  claim.temperatures = question.temperatures;
  claim.rooms = question.rooms;
  claim.coupling_band = question.coupling_band;
  claim.probes = question.probes;
  claim.node_limit = std::min(effort.node_limit / 4, effort.patience / nodes_a_point);
  claim.patience = claim.node_limit / 2;
  if (!question.factor_band) return claim;
  claim.probe_band = *question.factor_band * span_of(question.temperatures);
  for (const SpaceId air : question.rooms) {
    const double band = *question.factor_band * difference(question, air);
    claim.spot_bands.push_back(band);
    claim.thermometer_bands.push_back(band);
  }
  return claim;
}

/// Flow out of each space into the section while one air is at 1. By the stream function, which
/// balances.
std::vector<double> space_flows(const Question& question, const TriangleLevel& level) {
  const auto& nodes = level.nodes();
  const std::size_t spaces = question.temperatures.size();
  std::vector<double> flow(level.airs().size() * spaces, 0.0);
  for (std::size_t a = 0; a < level.airs().size(); ++a) {
    const auto& stream = level.fields()[a].stream;
    for (const geometry::Border& border : nodes.borders) {
      if (!border.space) continue;
      const auto& values = stream[border.element];
      flow[a * spaces + border.space->index] -=
          values[static_cast<std::size_t>(geometry::before(border.side))] -
          values[static_cast<std::size_t>(geometry::next(border.side))];
    }
  }
  return flow;
}

/// Reads the fields of the triangles at the nodes of a grid.
class Sampling {
 public:
  Sampling(const geometry::Mesh& mesh, const Answer& answer)
      : mesh_(mesh),
        level_(*answer.level),
        finder_(answer.triangles, level_.nodes()),
        solid_(mesh.nodes(), 0),
        place_(solid_.size()) {
    for (std::size_t j = 0; j < mesh.rows(); ++j) {
      for (std::size_t i = 0; i < mesh.columns(); ++i) note(i, j);
    }
    for (std::size_t n = 0; n < solid_.size(); ++n) {
      if (solid_[n] != 0) place_[n] = finder_.find(mesh.place(n));
    }
    // What the grid shows as surface reads the surface that it stands for, and the node nearest to
    // a spot the spot.
    for (const geometry::Face& face : geometry::faces(mesh)) {
      for (const std::size_t n : {face.from, face.to}) place_[n] = finder_.on_border(mesh.place(n));
    }
    for (const AirSurface& air : answer.airs) {
      for (const Spot& spot : air.cold_spots) {
        place_[nearest_solid(spot.place)] = finder_.on_border(spot.place);
      }
    }
  }

  [[nodiscard]] const std::vector<char>& solid() const { return solid_; }

  [[nodiscard]] std::vector<double> warmth(std::size_t air) const {
    std::vector<double> values(solid_.size(), 0.0);
    for (std::size_t n = 0; n < values.size(); ++n) {
      if (solid_[n] != 0) values[n] = finder_.value(level_.fields()[air].warmth, place_[n]);
    }
    return values;
  }

  [[nodiscard]] std::vector<double> stream(std::size_t air) const {
    std::vector<double> values(solid_.size(), 0.0);
    for (std::size_t n = 0; n < values.size(); ++n) {
      if (solid_[n] == 0) continue;
      const auto weights = PlaceFinder::weights(place_[n]);
      for (std::size_t k = 0; k < 6; ++k) {
        values[n] += weights[k] * level_.fields()[air].stream[place_[n].element][k];
      }
    }
    return values;
  }

  /// Cells next to an element in which the stream function leaps.
  [[nodiscard]] std::vector<char> leaps() const {
    std::vector<char> in_chain(level_.nodes().elements.size(), 0);
    for (const Chain& chain : level_.conduction().chains()) {
      for (const Chain::Link& link : chain.links) in_chain[link.element] = 1;
    }
    std::vector<char> cut(mesh_.columns() * mesh_.rows(), 0);
    for (std::size_t j = 0; j < mesh_.rows(); ++j) {
      for (std::size_t i = 0; i < mesh_.columns(); ++i) {
        for (const std::size_t n : {mesh_.node(i, j), mesh_.node(i + 1, j), mesh_.node(i, j + 1),
                                    mesh_.node(i + 1, j + 1)}) {
          if (solid_[n] != 0 && in_chain[place_[n].element] != 0) cut[j * mesh_.columns() + i] = 1;
        }
      }
    }
    return cut;
  }

 private:
  [[nodiscard]] std::size_t nearest_solid(geometry::Point place) const {
    std::size_t best = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t n = 0; n < solid_.size(); ++n) {
      const geometry::Point here = mesh_.place(n);
      const double away = std::hypot(here.x - place.x, here.y - place.y);
      if (solid_[n] == 0 || away >= least) continue;
      least = away;
      best = n;
    }
    return best;
  }

  /// The nodes of a cell that touch its material.
  void note(std::size_t i, std::size_t j) {
    const geometry::Cell& cell = mesh_.cell(i, j);
    const auto mark = [&](geometry::CellSide side, std::size_t a, std::size_t b) {
      if (geometry::is_solid(cell.at(side))) solid_[a] = solid_[b] = 1;
    };
    const std::size_t sw = mesh_.corner(i, j, false, false), se = mesh_.corner(i, j, true, false);
    const std::size_t nw = mesh_.corner(i, j, false, true), ne = mesh_.corner(i, j, true, true);
    mark(geometry::CellSide::south, sw, se);
    mark(geometry::CellSide::north, nw, ne);
    mark(geometry::CellSide::west, sw, nw);
    mark(geometry::CellSide::east, se, ne);
  }

  const geometry::Mesh& mesh_;
  const TriangleLevel& level_;
  PlaceFinder finder_;
  std::vector<char> solid_;
  std::vector<PlaceFinder::Place> place_;
};

Field sampled_field(const Question& question, const Effort& effort, const Answer& answer,
                    Solution& solution) {
  const TriangleLevel& level = *answer.level;
  solution.subdivision = geometry::thinned(
      geometry::subdivision_of(question.section, effort.cells_per_metre), most_picture_nodes);
  Field field;
  field.mesh = geometry::mesh_of(question.section, solution.subdivision);
  field.airs = level.airs();
  field.space_flow = space_flows(question, level);
  field.coupling = couplings(Basis{field.airs, {}, field.space_flow}, question.physics.air);
  field.touching = level.conduction().touching();
  const Sampling sampling(field.mesh, answer);
  field.solid = sampling.solid();
  OnTriangles triangles;
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    field.basis.push_back(sampling.warmth(a));
    triangles.stream.push_back(sampling.stream(a));
    triangles.basis.push_back(level.fields()[a].warmth);
  }
  if (!level.conduction().chains().empty()) triangles.stream_leaps = sampling.leaps();
  triangles.places = level.nodes().places;
  triangles.elements = level.nodes().elements;
  triangles.surfaces = geometry::surfaces(level.nodes(), question.physics.air);
  triangles.temperature = superposed(triangles.basis, field.airs, question.temperatures);
  solution.triangles = std::move(triangles);
  return field;
}

/// The laws on the triangles: those of every field, and the identity of the gap. Fields of the
/// second degree may leave the range of the spaces by a little between nodes, where the triangles
/// were not to be made finer.
std::vector<Check> checks_of(const Field& field, const Answer& answer, std::size_t spaces) {
  const TriangleLevel& level = *answer.level;
  double imbalance = 0.0, beyond = 0.0, not_one = 0.0;
  const auto& warmth = level.fields();
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    double sum = 0.0;
    for (std::size_t s = 0; s < spaces; ++s) sum += field.space_flow[a * spaces + s];
    const double through = field.coupling[a * field.airs.size() + a];
    if (through > 0.0) imbalance = std::max(imbalance, std::abs(sum) / through);
  }
  for (std::size_t n = 0; n < level.nodes().nodes(); ++n) {
    double sum = 0.0;
    for (const TwoFields& one : warmth) {
      sum += one.warmth[n];
      beyond = std::max({beyond, -one.warmth[n], one.warmth[n] - 1.0});
    }
    not_one = std::max(not_one, std::abs(sum - 1.0));
  }
  std::vector<Check> checks = {{"heat balance", imbalance, 1e-4},
                               {"temperatures within the spaces'", beyond, 5e-2},
                               {"shares of the spaces add to one", not_one, 1e-6},
                               {"gap between both schemes", level.identity(), 1e-6}};
  for (Check& check : checks) check.holds = check.value <= check.limit;
  return checks;
}

/// Whether the bands of the coldest spots are as wanted, rivals included.
bool spots_reached(const Question& question, const Solution& solution) {
  return !question.factor_band ||
         std::all_of(solution.airs.begin(), solution.airs.end(), [&](const AirSurface& air) {
           return air.coldest.temperature.band <=
                  *question.factor_band * difference(question, air.air);
         });
}

}  // namespace

Solution solution_on_triangles(const Question& question, const Effort& effort) {
  Answer answer = answer_of(claim_of(question, effort));
  Solution solution;
  solution.physics = question.physics;
  solution.field = sampled_field(question, effort, answer, solution);
  solution.temperature = temperatures(solution.field, question.temperatures);
  solution.flows = flows(solution.field, question.temperatures);
  solution.checks = checks_of(solution.field, answer, question.temperatures.size());
  require(solution.checks);
  if (question.coupling_band) solution.couplings = std::move(answer.couplings);
  solution.airs = std::move(answer.airs);
  for (AirSurface& air : solution.airs) {
    air.coldest.factor = factor_of(question, air.coldest.temperature, air.air);
    for (Spot& spot : air.cold_spots) {
      spot.factor = factor_of(question, spot.temperature, air.air);
    }
    cover_rivals(question, air);
    for (Spot& spot : air.cold_spots) {
      if (spot.place == air.coldest.place) spot = air.coldest;
    }
    for (const Thermometer& found : answer.thermometers) {
      if (found.air != air.air || !std::isfinite(found.low)) continue;
      air.thermometer = ProvedMean{found.window.middle, found.temperature, found.low, found.high};
    }
  }
  solution.probes = std::move(answer.probes);
  solution.accurate = answer.reached && spots_reached(question, solution);
  return solution;
}

}  // namespace quoin::solver
