// SPDX-License-Identifier: Apache-2.0
#include "cases/recipe_remarks.hpp"

#include <fmt/format.h>

#include <variant>

namespace quoin::cases {
namespace {

/// Rain splashes so high, m. Common practice, no source.
constexpr double usual_height = 0.15;

}  // namespace

std::vector<std::string> remarks_on(const geometry::Recipe& recipe) {
  const auto* base = std::get_if<geometry::WallBase>(&recipe);
  if (base == nullptr || !base->course_height) return {};
  const double clear = *base->course_height - base->ground_level;
  if (clear >= usual_height - geometry::snap_tolerance) return {};
  if (clear <= 0) {
    return {
        fmt::format("the ground outside stands {:.0f} mm above the damp course: water passes "
                    "over it into the wall",
                    -1e3 * clear)};
  }
  return {
      fmt::format("the damp course lies {:.0f} mm above the ground outside, where {:.0f} mm are "
                  "usual: rain splashes over it",
                  1e3 * clear, 1e3 * usual_height)};
}

}  // namespace quoin::cases
