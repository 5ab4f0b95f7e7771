// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "geometry/recipe.hpp"

namespace quoin::cases {

/// What is allowed but doubtful about a recipe, in plain words: of a wall base a damp course that
/// the ground outside reaches, or comes near.
[[nodiscard]] std::vector<std::string> remarks_on(const geometry::Recipe& recipe);

}  // namespace quoin::cases
