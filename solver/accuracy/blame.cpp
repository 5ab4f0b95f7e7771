// SPDX-License-Identifier: Apache-2.0
#include "solver/accuracy/blame.hpp"

#include <numeric>

namespace quoin::solver {

void add(Blame& to, const Blame& other, double weight) {
  const auto combine = [weight](std::vector<double>& a, const std::vector<double>& b) {
    for (std::size_t k = 0; k < a.size(); ++k) a[k] += weight * b[k];
  };
  combine(to.columns, other.columns);
  combine(to.rows, other.rows);
}

Blame no_blame(const geometry::Mesh& mesh) {
  return {std::vector<double>(mesh.columns()), std::vector<double>(mesh.rows())};
}

double total(const Blame& blame) {
  const double columns = std::accumulate(blame.columns.begin(), blame.columns.end(), 0.0);
  return std::accumulate(blame.rows.begin(), blame.rows.end(), columns);
}

}  // namespace quoin::solver
