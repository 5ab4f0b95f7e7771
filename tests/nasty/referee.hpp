// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "tests/nasty/sections.hpp"

namespace quoin::testing {

/// How the bands of a section's answer stood up to a better one.
struct Refereed {
  std::size_t bands = 0;            ///< of the coldest spot, of probes, of couplings
  std::vector<std::string> misses;  ///< in words, those that leave the better answer out
};

/// Solves a section as the program does, with some probes in its material, and again in triangles
/// with bands a hundred times narrower; an upright section, which the program solves on a grid, is
/// thereby solved by another method on another mesh. `share`: how much of each band counts; a
/// referee that sees anything finds misses where it is small. Throws: SolveError.
[[nodiscard]] Refereed refereed(const Problem& problem, std::uint64_t seed, double share = 1.0);

}  // namespace quoin::testing
