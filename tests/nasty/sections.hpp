// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>

#include "tests/support/problem.hpp"

namespace quoin::testing {

/// A section that is hard to solve, and the family it is of.
struct NastySection {
  std::string family;
  Problem problem;  ///< space 0 is the room, 20 degC; space 1 is outside, 0 degC
};

/// The same section for the same seed on every machine; every family in turn. Valid: all material
/// hangs together with a space.
[[nodiscard]] NastySection nasty_section(std::uint64_t seed);

}  // namespace quoin::testing
