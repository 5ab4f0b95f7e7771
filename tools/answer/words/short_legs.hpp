// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "solver/solution.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// A change of the coldest spot that is noticed, K.
inline constexpr double noticeable_change = 0.05;

/// What cut planes too near the detail do.
struct ShortLegs {
  std::string remark;  ///< in plain words, for the warnings; empty: they are far enough away
  /// Whether a coldest spot is noticeably another than with longer legs; where that was not tried,
  /// whether a cut plane is disturbed.
  bool matters = false;
};

/// Whether the field at a cut plane through masonry differs from that of a plane wall.
[[nodiscard]] bool is_disturbed(const solver::CutPlane& plane);

/// "the cut plane from 0, 1035 to 345, 1035", mm.
[[nodiscard]] std::string words_for(const solver::CutPlane& plane);

/// Of a recipe whose legs are stated shorter than ISO 10211 wants cut planes to be away, or one of
/// whose cut planes is disturbed though they are not: the same section is solved with longer legs,
/// and its coldest spots are set beside those of `solved`, whose numbers and cut planes are known.
/// Nothing is remarked on where it is none of these. Throws: SolveError.
[[nodiscard]] ShortLegs short_legs(const SolvedVariant& solved, const solver::Effort& effort);

}  // namespace quoin::tools
