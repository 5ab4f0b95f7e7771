// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cstddef>
#include <optional>
#include <string>

#include "solver/linear/errors.hpp"
#include "tests/support/problem.hpp"

namespace quoin::solver {
namespace {

const SpaceId room{0}, outside{1};

std::string refusal(std::size_t node_limit) {
  const testing::Problem wall = testing::layered_wall({{0.015, 0.8}, {0.33, 0.77}});
  try {
    static_cast<void>(wall.solution({room}, outside, 0.002, std::nullopt, {}, node_limit));
  } catch (const SolveError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("a section whose first grid is beyond the limit is refused with both numbers") {
  const std::string words = refusal(20);
  const geometry::Mesh first = testing::layered_wall({{0.015, 0.8}, {0.33, 0.77}}).mesh(8);
  const std::size_t nodes = first.nx() * first.ny();
  CHECK(words.find(std::to_string(nodes) + " nodes") != std::string::npos);
  CHECK(words.find("the limit is 20 nodes") != std::string::npos);
  CHECK(words.find("--node-limit") != std::string::npos);
  CHECK(refusal(nodes).empty());
  CHECK_FALSE(refusal(nodes - 1).empty());
}

TEST_CASE("where the limit keeps the grid coarse the wanted accuracy is not claimed") {
  testing::Problem corner;
  corner.space(20, 0.25);
  corner.space(0, 0.04);
  corner.paint(outside, -0.1, 1.3, -0.1, 1.3);
  corner.paint(corner.material(0.77), 0, 1.3, 0, 1.3);
  corner.paint(room, 0.33, 1.3, 0.33, 1.3);
  const Solution coarse = corner.solution({room}, outside, 1e-5, std::nullopt, {}, 600);
  CHECK_FALSE(coarse.accurate);
  CHECK(coarse.airs.front().coldest.factor.band > 1e-5);
  CHECK(coarse.field.mesh.nx() * coarse.field.mesh.ny() <= 600);
  CHECK(corner.solution({room}, outside, 1e-3, std::nullopt, {}, 10'000).accurate);
}

}  // namespace quoin::solver
