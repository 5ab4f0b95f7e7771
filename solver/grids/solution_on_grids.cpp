// SPDX-License-Identifier: Apache-2.0
#include "solver/grids/solution_on_grids.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "solver/accuracy/refinement.hpp"
#include "solver/findings/wanted.hpp"
#include "solver/grids/round.hpp"
#include "solver/linear/errors.hpp"

namespace quoin::solver {
namespace {

void refuse_beyond(std::size_t limit, std::size_t nodes) {
  if (nodes <= limit) return;
  throw SolveError(fmt::format(
      "the coarsest grid that shows every part of this section has {} nodes and takes about {:.0f} "
      "MB, the limit is {} nodes; leave out fine detail or allow more with --node-limit",
      nodes, static_cast<double>(nodes) * bytes_per_node / 1e6, limit));
}

/// Nodes up to which grids are made finer. Those with nodes beyond the grid are solved by the
/// direct method, which takes longer the more there are.
std::size_t patience_on(const geometry::Mesh& mesh, const Effort& effort) {
  const bool beyond_grid = mesh.nodes() > mesh.nx() * mesh.ny();
  return std::min(effort.node_limit, beyond_grid ? effort.patience / 4 : effort.patience);
}

/// A finer grid for what a round lacks; none where nothing is, or where it would be of no use.
std::optional<geometry::Subdivision> finer_than(const geometry::Subdivision& fine,
                                                const Round& round, const Progress& progress,
                                                const Effort& effort) {
  const geometry::Mesh& mesh = round.fine.both.field.mesh;
  const std::size_t patience = patience_on(mesh, effort);
  if (!(round.shortfall > 1.0) || !progress.is_worth_while(patience)) return std::nullopt;
  geometry::Subdivision finer = cut_where_it_matters(fine, mesh, round.blame, round.shortfall);
  const std::size_t nodes = geometry::nodes(finer);
  if (nodes <= geometry::nodes(fine) || nodes > patience) return std::nullopt;
  return finer;
}

}  // namespace

Solution solution_on_grids(const Question& question, const Effort& effort) {
  const geometry::Section section = with_lines_through(question.section, question.probes);
  geometry::Subdivision fine = geometry::subdivision_of(section, effort.cells_per_metre);
  refuse_beyond(effort.node_limit, geometry::nodes(fine));
  Progress progress;
  std::optional<geometry::Subdivision> before;  // the last grid, while one may go on
  bool may_go_on = true;
  for (;;) {
    try {
      Round round = round_on(question, section, fine, effort.linear);
      progress.note(geometry::nodes(fine), round.shortfall);
      std::optional<geometry::Subdivision> finer;
      if (may_go_on) finer = finer_than(fine, round, progress, effort);
      if (!finer) {
        return answer_of(std::move(round), question, section, fine, effort.linear);
      }
      before = std::exchange(fine, std::move(*finer));
    } catch (const SolveError&) {
      if (!before) throw;
      // Finer than numbers can follow: the answer is that of the grid before, as far as it goes.
      fine = std::move(*before);
      before.reset();
      may_go_on = false;
    }
  }
}

}  // namespace quoin::solver
