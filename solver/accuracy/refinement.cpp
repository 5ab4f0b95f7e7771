// SPDX-License-Identifier: Apache-2.0
#include "solver/accuracy/refinement.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>
#include <vector>

namespace quoin::solver {

namespace {

constexpr std::size_t tiny_grid = 2'000;   // nodes: a step costs more than its nodes
constexpr std::size_t small_grid = 8'000;  // nodes: milliseconds
constexpr std::size_t most_steps = 40;     // of all grids; ordinary sections take three to ten

/// How much of the blame is dealt with in one step: so much that the next grid should do, were a
/// cut to leave a quarter of what it cuts. Corners leave more, so far from the goal steps follow
/// each other, and near it not all is cut at once, to save nodes. By trial.
double share_of_blame(double shortfall, std::size_t nodes) {
  constexpr double left_by_a_cut = 0.25, goal = 0.9;
  return std::clamp((1 - goal / shortfall) / (1 - left_by_a_cut), 0.4,
                    nodes <= tiny_grid ? 0.9 : 0.8);
}

/// Of each cell along one axis its blame, none where it is too narrow to be cut: a graded cell at a
/// corner is cut in a quarter and three.
void add_blame(const std::vector<double>& blame, const std::vector<double>& lines,
               std::vector<double>& all) {
  for (std::size_t k = 0; k < blame.size(); ++k) {
    all.push_back(lines[k + 1] - lines[k] >= 4 * narrowest_cell ? blame[k] : 0.0);
  }
}

}  // namespace

geometry::Subdivision cut_where_it_matters(geometry::Subdivision subdivision,
                                           const geometry::Mesh& mesh, const Blame& blame,
                                           double shortfall) {
  std::vector<double> all;
  add_blame(blame.columns, mesh.x, all);
  add_blame(blame.rows, mesh.y, all);
  std::vector<std::size_t> order(all.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return all[a] > all[b]; });

  const double blamed = std::accumulate(all.begin(), all.end(), 0.0);
  if (!(blamed > 0.0)) return subdivision;
  const double to_deal_with = share_of_blame(shortfall, mesh.nodes()) * blamed;
  std::vector<char> marked(all.size());
  double dealt_with = 0.0;
  for (const std::size_t k : order) {
    if (dealt_with >= to_deal_with || all[k] == 0.0) break;
    marked[k] = 1;
    dealt_with += all[k];
  }
  const auto middle = marked.begin() + static_cast<std::ptrdiff_t>(blame.columns.size());
  return geometry::bisected(std::move(subdivision), {marked.begin(), middle},
                            {middle, marked.end()});
}

bool Progress::is_worth_while(std::size_t limit) const {
  const Step& now = steps_.back();
  if (steps_.size() >= most_steps) return false;
  if (now.nodes < small_grid) return true;
  // The pace since the grid was a third of what it is.
  const auto then = std::find_if(steps_.rbegin(), steps_.rend(),
                                 [&](const Step& step) { return step.nodes <= now.nodes / 3; });
  if (then == steps_.rend()) return true;
  const double growth = std::log(static_cast<double>(now.nodes) / static_cast<double>(then->nodes));
  const double order = std::log(then->shortfall / now.shortfall) / growth;
  if (!(order > 0.0)) return false;
  return static_cast<double>(now.nodes) * std::pow(now.shortfall, 1 / order) <=
         static_cast<double>(limit);
}

}  // namespace quoin::solver
