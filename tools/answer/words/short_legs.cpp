// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/short_legs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "tools/answer/ask/question.hpp"
#include "tools/answer/ask/redrawn.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/words/figures.hpp"

namespace quoin::tools {
namespace {

/// "; drawn that far the coldest spot of hall is at 10.7 °C instead of 9.5 °C".
std::string beside(const std::string& how, const std::string& room, double drawn, double wanted) {
  if (std::abs(drawn - wanted) < noticeable_change)
    return fmt::format("; {} the coldest spot of {} stays the same within {:.2f} K", how, room,
                       noticeable_change);
  const int decimals = decimals_for({drawn, wanted}, 1);
  return fmt::format(
      "; {} the coldest spot of {} is at {} °C instead of {} °C, which no band counts", how, room,
      fixed(wanted, decimals), fixed(drawn, decimals));
}

/// The disturbed cut plane that is most so; null where there is none.
const solver::CutPlane* most_disturbed(const SolvedVariant& solved) {
  const solver::CutPlane* most = nullptr;
  for (const solver::CutPlane& plane : solved.cut_planes) {
    if (is_disturbed(plane) && (most == nullptr || plane.departure > most->departure))
      most = &plane;
  }
  return most;
}

/// The coldest spots of `solved` beside those of the same section with longer legs, in words.
ShortLegs beside_longer(const SolvedVariant& solved, cases::Variant longer, const std::string& how,
                        const solver::Effort& effort) {
  longer.probes.clear();
  const solver::Solution wanted =
      solver::solution_of(question_of(longer, materials::Purpose::surface_temperature), effort);
  ShortLegs beside_them;
  for (const solver::AirSurface* surface : judged_surfaces(solved)) {
    for (const solver::AirSurface& other : wanted.airs) {
      if (other.air != surface->air) continue;
      const double drawn = surface->coldest.temperature.value;
      const double is = other.coldest.temperature.value;
      beside_them.remark += beside(how, solved.variant.spaces[other.air].name, drawn, is);
      beside_them.matters = beside_them.matters || std::abs(drawn - is) >= noticeable_change;
    }
  }
  return beside_them;
}

}  // namespace

bool is_disturbed(const solver::CutPlane& plane) {
  // Of the difference of the spaces; common practice, no source.
  constexpr double undisturbed = 0.005;
  return plane.fabric && plane.departure > undisturbed;
}

std::string words_for(const solver::CutPlane& plane) {
  return fmt::format("the cut plane from {:.0f}, {:.0f} to {:.0f}, {:.0f} mm", plane.from.x * 1e3,
                     plane.from.y * 1e3, plane.to.x * 1e3, plane.to.y * 1e3);
}

ShortLegs short_legs(const SolvedVariant& solved, const solver::Effort& effort) {
  const double distance = geometry::cut_distance(solved.variant.thickness);
  if (std::optional<cases::Variant> full = with_full_legs(solved.variant)) {
    ShortLegs legs = beside_longer(solved, std::move(*full), "drawn that far", effort);
    legs.remark = fmt::format(
        "the section is cut off nearer to the detail than the {:.0f} mm of ISO 10211 (1 m or three "
        "thicknesses){}: leave the length out, and it is drawn as far as is wanted",
        1e3 * distance, legs.remark);
    return legs;
  }
  const solver::CutPlane* plane = most_disturbed(solved);
  if (plane == nullptr) return {};
  std::optional<cases::Variant> longer = with_legs(solved.variant, 2 * distance);
  if (!longer) return {"", true};
  ShortLegs legs = beside_longer(solved, std::move(*longer), "drawn twice as far", effort);
  legs.remark = fmt::format(
      "{} is not in undisturbed wall: the field there differs from a plane part's by {:.1g} of the "
      "difference of the spaces{}",
      words_for(*plane), plane->departure, legs.remark);
  return legs;
}

}  // namespace quoin::tools
