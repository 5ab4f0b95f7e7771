// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "geometry/recipes/bay_corner.hpp"
#include "geometry/recipes/chimney_breast.hpp"
#include "geometry/recipes/corner.hpp"
#include "geometry/recipes/drawing.hpp"
#include "geometry/recipes/head.hpp"
#include "geometry/recipes/joist_floor.hpp"
#include "geometry/recipes/partition.hpp"
#include "geometry/recipes/porch_wall.hpp"
#include "geometry/recipes/reveal.hpp"
#include "geometry/recipes/sill.hpp"
#include "geometry/recipes/wall.hpp"
#include "geometry/recipes/wall_base.hpp"

namespace quoin::geometry {

/// Every recipe the case file knows. A new one is one file in recipes/ and one line here.
using Recipe = std::variant<Wall, Corner, BayCorner, Reveal, Sill, Head, WallBase, Partition,
                            JoistFloor, PorchWall, ChimneyBreast>;

/// Whether a recipe is drawn in a vertical cut, y up; the others are plans.
[[nodiscard]] bool is_vertical(const Recipe& recipe);

/// The drawing a recipe stands for.
[[nodiscard]] Drawing drawing_of(const Recipe& recipe);

/// Why a recipe cannot be built as described; nothing where it can, or where every value is
/// possible.
[[nodiscard]] std::optional<std::string> objection(const Recipe& recipe);

}  // namespace quoin::geometry
