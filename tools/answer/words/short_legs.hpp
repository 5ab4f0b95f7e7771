// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "solver/solution.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// A change of the coldest spot that is noticed, K.
inline constexpr double noticeable_change = 0.05;

/// Whether the field at a cut plane through masonry differs from that of a plane wall.
[[nodiscard]] bool is_disturbed(const solver::CutPlane& plane);

/// "the cut plane from 0, 1035 to 345, 1035", mm.
[[nodiscard]] std::string words_for(const solver::CutPlane& plane);

/// Of a recipe whose legs are stated shorter than ISO 10211 wants cut planes to be away, or one of
/// whose cut planes is disturbed though they are not: the same section is solved with longer legs,
/// and its coldest spots are set beside those of `solved`, whose numbers and cut planes are known.
/// In plain words, for the warnings; empty where it is none of these. Throws: SolveError.
[[nodiscard]] std::string short_legs_remark(const SolvedVariant& solved,
                                            const solver::Effort& effort);

/// Whether the coldest spot of a variant, which has its warnings, is noticeably another than with
/// longer legs; where that was not tried, whether a cut plane is disturbed.
[[nodiscard]] bool is_cut_off(const SolvedVariant& solved);

}  // namespace quoin::tools
