// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "cases/model/case.hpp"

namespace quoin::cases {

/// What is allowed but doubtful about a recipe, in plain words: of a wall base a damp course that
/// the ground outside reaches, or comes near; over a void, why it has no psi.
[[nodiscard]] std::vector<std::string> remarks_on(const geometry::Recipe& recipe,
                                                  const Per<SpaceId, Space>& spaces);

}  // namespace quoin::cases
