// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <string>
#include <variant>
#include <vector>

#include "geometry/recipes/corner.hpp"
#include "geometry/recipes/drawing.hpp"
#include "geometry/recipes/reveal.hpp"
#include "geometry/recipes/wall.hpp"

namespace quoin::geometry {

/// Every recipe the case file knows. A new one is one file in recipes/ and one line here.
using Recipe = std::variant<Wall, Corner, Reveal>;

}  // namespace quoin::geometry
