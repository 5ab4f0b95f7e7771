// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "tests/nasty/sections.hpp"

namespace quoin::testing {

/// What became of a section, solved for temperatures and for heat flow as the program does.
struct Judgement {
  std::vector<std::string> faults;  ///< in words; none: all is as it should be
  bool accurate = false;            ///< both purposes
  std::size_t nodes = 0;            ///< of the larger grid
};

/// Solves a section as the program does and says what the answer claims wrongly of itself.
[[nodiscard]] Judgement judgement_of(const Problem& problem);

/// Says where a solve that is four times as sure, from a grid four times as fine, finds a spot
/// colder than the coldest by more than the bands.
[[nodiscard]] std::vector<std::string> colder_spots(const Problem& problem);

}  // namespace quoin::testing
