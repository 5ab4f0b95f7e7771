// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "solver/survey/quasi_random.hpp"
#include "solver/survey/shuffled.hpp"

namespace quoin::solver {

TEST_CASE("shuffled numbers are all there and have no pattern that even points keep") {
  constexpr std::size_t count = 2048;
  std::vector<std::size_t> order = shuffled(count);
  const std::vector<double> points = even_normals(count, 1);
  double together = 0.0, alone = 0.0;
  for (std::size_t k = 0; k < count; ++k) {
    together += points[k] * points[order[k]];
    alone += points[k] * points[k];
  }
  // Three times what the correlation of so many independent pairs scatters.
  CHECK(std::abs(together / count) < 3 / std::sqrt(double{count}));
  CHECK(alone / count > 0.9);  // twin: in their own order they go together
  std::sort(order.begin(), order.end());
  for (std::size_t k = 0; k < count; ++k) CHECK(order[k] == k);
}

}  // namespace quoin::solver
