// SPDX-License-Identifier: Apache-2.0
#include "solver/refinement.hpp"

#include <algorithm>
#include <numeric>
#include <utility>
#include <vector>

namespace quoin::solver {

namespace {

/// How much of the blame is dealt with in one step. Far from the wanted accuracy much is cut at
/// once, to save steps; near it little, to save nodes. By trial.
double share_of_blame(double in_units_of_the_wanted) {
  return std::clamp(1 - 8 / in_units_of_the_wanted, 0.4, 0.8);
}

}  // namespace

geometry::Subdivision cut_where_it_matters(geometry::Subdivision subdivision, const Blame& blame) {
  std::vector<double> all = blame.columns;
  all.insert(all.end(), blame.rows.begin(), blame.rows.end());
  std::vector<std::size_t> order(all.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return all[a] > all[b]; });

  const double blamed = total(blame);
  const double to_deal_with = share_of_blame(blamed) * blamed;
  std::vector<char> marked(all.size());
  double dealt_with = 0.0;
  for (const std::size_t k : order) {
    if (dealt_with >= to_deal_with) break;
    marked[k] = 1;
    dealt_with += all[k];
  }
  const auto middle = marked.begin() + static_cast<std::ptrdiff_t>(blame.columns.size());
  return geometry::bisected(std::move(subdivision), {marked.begin(), middle},
                            {middle, marked.end()});
}

}  // namespace quoin::solver
