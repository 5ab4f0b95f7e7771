// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/shuffled.hpp"

#include <numeric>
#include <random>
#include <utility>

namespace quoin::solver {

std::vector<std::size_t> shuffled(std::size_t count) {
  std::vector<std::size_t> order(count);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::mt19937 random(5489);  // any, always the same; what shuffle() does differs by library
  for (std::size_t left = count; left > 1; --left)
    std::swap(order[left - 1], order[random() % left]);
  return order;
}

}  // namespace quoin::solver
