// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// How far a point lies from a named place, m.
[[nodiscard]] double distance_to(const geometry::NamedPlace& named, geometry::Point place);

/// The word a recipe has for a place on a surface; empty where it has none, or there is no recipe.
[[nodiscard]] std::string name_of_place(const cases::Variant& variant, geometry::Point place);

/// A place in the words of the trade where the recipe has them ("the frame edge"), else by the
/// material and its coordinates in mm ("the lime plaster at 345, 345").
[[nodiscard]] std::string words_for(const SolvedVariant& solved, const solver::Spot& spot);

}  // namespace quoin::tools
