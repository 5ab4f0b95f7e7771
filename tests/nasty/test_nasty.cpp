// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cstdint>

#include "tests/nasty/judgement.hpp"

namespace quoin::testing {

TEST_CASE("nasty sections are solved and claim no more than their bands hold") {
  for (std::uint64_t seed = 0; seed < 42; ++seed) {
    const NastySection section = nasty_section(seed);
    CAPTURE(seed);
    CAPTURE(section.family);
    const Outcome outcome = outcome_of(section.problem);
    for (const std::string& fault : outcome.faults) FAIL_CHECK(fault);
    CHECK(outcome.nodes <= 300'000);
    for (const std::string& fault : colder_spots(section.problem)) FAIL_CHECK(fault);
  }
}

}  // namespace quoin::testing
