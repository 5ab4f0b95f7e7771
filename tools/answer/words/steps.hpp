// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What one variant does to the first.
struct Steps {
  std::vector<std::string> dried;  ///< materials that are drier
  bool built = false;              ///< something is drawn in another way, or of another material
  bool aired = false;              ///< a room is drier or warmer
};
[[nodiscard]] Steps steps_of(const SolvedVariant& first, const SolvedVariant& later);

/// Whether it is a remedy what sets a variant apart from the first. Milder weather is none;
/// standing air under a floor costs its timber, whatever it gains at a surface; and a wall without
/// its masonry was hardly meant.
[[nodiscard]] bool can_be_carried_out(const cases::Variant& first, const cases::Variant& later);

}  // namespace quoin::tools
