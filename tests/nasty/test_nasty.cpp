// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdint>

#include "solver/triangles/answer.hpp"
#include "tests/geometry/triangles/shapes.hpp"
#include "tests/nasty/judgement.hpp"
#include "tests/nasty/referee.hpp"

// A few of each family; quoin_nasty does as many as one likes.

namespace quoin::testing {

TEST_CASE("nasty sections are solved with bounded work and claim no more than they have") {
  for (std::uint64_t seed = 0; seed < 42; ++seed) {
    const NastySection section = nasty_section(seed);
    CAPTURE(seed);
    CAPTURE(section.family);
    const Judgement outcome = judgement_of(section.problem);
    for (const std::string& fault : outcome.faults) FAIL_CHECK(fault);
    CHECK(outcome.nodes <= 300'000);
  }
}

TEST_CASE("no spot of a nasty section is colder than the coldest by more than the bands") {
  for (std::uint64_t seed = 42; seed < 70; ++seed) {
    const NastySection section = nasty_section(seed);
    CAPTURE(seed);
    CAPTURE(section.family);
    if (section.family == "turned checkerboards" || section.family == "odd slopes")
      continue;  // slow to be surer of
    for (const std::string& fault : colder_spots(section.problem)) FAIL_CHECK(fault);
  }
}

TEST_CASE("bands of nasty sections hold what another method finds to a hundredth of them") {
  for (std::uint64_t seed = 1004; seed < 1018; ++seed) {
    const NastySection section = nasty_section(seed);
    CAPTURE(seed);
    CAPTURE(section.family);
    for (const std::string& miss : refereed(section.problem, seed).misses) FAIL_CHECK(miss);
  }
}

TEST_CASE("grids and triangles do not contradict each other in upright nasty sections") {
  std::size_t thermometers = 0, brackets = 0;
  for (std::uint64_t seed = 3000; seed < 3042; ++seed) {
    const NastySection section = nasty_section(seed);
    if (section.problem.section().deviation > 0.0) continue;
    CAPTURE(seed);
    CAPTURE(section.family);
    const Agreement agreement = agreement_of(section.problem);
    for (const std::string& fault : agreement.faults) FAIL_CHECK(fault);
    thermometers += agreement.thermometers;
    brackets += agreement.brackets;
  }
  CHECK(thermometers >= 25);
  CHECK(brackets >= 25);
}

TEST_CASE("brackets a little beside the truth contradict each other") {
  std::size_t contradicted = 0;
  for (std::uint64_t seed = 3000; seed < 3010; ++seed) {
    const NastySection section = nasty_section(seed);
    if (section.problem.section().deviation > 0.0) continue;
    if (!agreement_of(section.problem, 1.01).faults.empty()) ++contradicted;
  }
  CHECK(contradicted >= 3);
}

TEST_CASE("triangles too coarse for the temperatures of the spaces are made finer") {
  const Problem problem = nasty_section(2049).problem;  // thin fins
  solver::Claim claim;
  claim.sheet = geometry::turned(problem.sheet(), 0.3);
  claim.physics = problem.physics();
  claim.temperatures = problem.temperatures();
  const auto beyond = [&] {
    const solver::Answer answer = solver::answer_of(claim);
    double worst = 0.0;
    for (const solver::TwoFields& fields : answer.level->fields()) {
      for (const double warmth : fields.warmth) worst = std::max({worst, -warmth, warmth - 1.0});
    }
    return worst;
  };
  CHECK(beyond() <= 5e-3);
  claim.node_limit = 1;  // the first triangles
  CHECK(beyond() > 5e-3);
}

TEST_CASE("bands a tenth as wide would not hold in nasty sections") {
  std::size_t bands = 0, missed = 0;
  for (std::uint64_t seed = 1004; seed < 1011; ++seed) {
    const Refereed judged = refereed(nasty_section(seed).problem, seed, 0.1);
    bands += judged.bands;
    missed += judged.misses.size();
  }
  CHECK(missed > bands / 4);
}

}  // namespace quoin::testing
