// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cstdint>

#include "tests/nasty/judgement.hpp"

// A few of each family; quoin_nasty does as many as one likes.

namespace quoin::testing {

TEST_CASE("nasty sections are solved with bounded work and claim no more than they have") {
  for (std::uint64_t seed = 0; seed < 42; ++seed) {
    const NastySection section = nasty_section(seed);
    CAPTURE(seed);
    CAPTURE(section.family);
    const Outcome outcome = outcome_of(section.problem);
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

}  // namespace quoin::testing
