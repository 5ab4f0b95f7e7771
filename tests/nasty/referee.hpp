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

/// How what a grid and triangles say of an upright section go together.
struct Agreement {
  std::size_t thermometers = 0;     ///< proved
  std::size_t brackets = 0;         ///< of couplings, by both
  std::vector<std::string> faults;  ///< in words
};

/// Solves a section on a grid and on triangles at default accuracy. `tampered`: the factor on the
/// brackets of the triangles; a comparison that sees anything finds faults where it is not 1.
[[nodiscard]] Agreement agreement_of(const Problem& problem, double tampered = 1.0);

}  // namespace quoin::testing
