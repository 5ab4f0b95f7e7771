// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/recipe_remarks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <variant>

namespace quoin::cases {
namespace {

/// Rain splashes so high, m. Common practice, no source.
constexpr double usual_height = 0.15;

std::optional<std::string> on_damp_course(const geometry::WallBase& base) {
  if (!base.course_height) return std::nullopt;
  const double clear = *base.course_height - base.ground_level;
  if (clear >= usual_height - geometry::snap_tolerance) return std::nullopt;
  if (clear <= 0) {
    return fmt::format(
        "the ground outside stands {:.0f} mm above the damp course: water passes over it into the "
        "wall",
        -1e3 * clear);
  }
  return fmt::format(
      "the damp course lies {:.0f} mm above the ground outside, where {:.0f} mm are usual: rain "
      "splashes over it",
      1e3 * clear, 1e3 * usual_height);
}

/// A temperature that no month has, as a rule, beside ground that takes months to follow.
std::optional<std::string> on_cold_ground(const geometry::WallBase& base,
                                          const Per<SpaceId, Space>& spaces) {
  const Space& outside = spaces[spaces[base.outside].air];
  if (outside.temperature >= 0.0) return std::nullopt;
  return fmt::format(
      "'{}' is at {:.1f} °C: the steady state takes that for all the winter and the ground with "
      "it; give the mean of the coldest month, not of a cold night, or the floor comes out too "
      "cold",
      outside.name, outside.temperature);
}

/// Why there is no psi beside a floor over a void.
std::optional<std::string> on_void(const geometry::WallBase& base,
                                   const Per<SpaceId, Space>& spaces) {
  if (!base.beneath.valid()) return std::nullopt;
  const Space& beneath = spaces[spaces[base.beneath].air];
  if (!geometry::is_shallow(base)) {
    return fmt::format(
        "no psi: the ground in '{}' lies more than 0.5 m below that outside, where the U of ISO "
        "13370 for a suspended floor ends",
        beneath.name);
  }
  const bool all_outside =
      !beneath.losses.empty() &&
      std::all_of(beneath.losses.begin(), beneath.losses.end(), [&](const Loss& loss) {
        return spaces[loss.to].air == spaces[base.outside].air;
      });
  if (all_outside) return std::nullopt;
  return fmt::format(
      "no psi: it needs the heat balance of '{}' with the air outside alone; give its `air "
      "bricks`, "
      "or its `losses` to '{}', in place of other losses or of a temperature",
      beneath.name, spaces[base.outside].name);
}

}  // namespace

std::vector<std::string> remarks_on(const geometry::Recipe& recipe,
                                    const Per<SpaceId, Space>& spaces) {
  const auto* base = std::get_if<geometry::WallBase>(&recipe);
  if (base == nullptr) return {};
  std::vector<std::string> remarks;
  for (auto& remark :
       {on_damp_course(*base), on_void(*base, spaces), on_cold_ground(*base, spaces)}) {
    if (remark) remarks.push_back(*remark);
  }
  return remarks;
}

}  // namespace quoin::cases
