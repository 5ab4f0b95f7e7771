// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/short_legs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include "tools/answer/ask/question.hpp"
#include "tools/answer/ask/redrawn.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/words/figures.hpp"

namespace quoin::tools {
namespace {

// What the remark says of a coldest spot, by which it is known again.
constexpr std::string_view is_another = ", which no band counts",
                           is_the_same = "stays the same within";

/// "; drawn that far the coldest spot of hall is at 10.7 °C instead of 9.5 °C".
std::string beside(const std::string& how, const std::string& room, double drawn, double wanted) {
  if (std::abs(drawn - wanted) < noticeable_change)
    return fmt::format("; {} the coldest spot of {} {} {:.2f} K", how, room, is_the_same,
                       noticeable_change);
  const int decimals = decimals_for({drawn, wanted}, 1);
  return fmt::format("; {} the coldest spot of {} is at {} °C instead of {} °C{}", how, room,
                     fixed(wanted, decimals), fixed(drawn, decimals), is_another);
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

/// The coldest spots of `solved` beside those of the same section with longer legs.
std::string beside_longer(const SolvedVariant& solved, cases::Variant longer,
                          const std::string& how, const solver::Effort& effort) {
  longer.probes.clear();
  const solver::Solution wanted =
      solver::solution_of(question_of(longer, materials::Purpose::surface_temperature), effort);
  std::string text;
  for (const solver::AirSurface* surface : judged_surfaces(solved)) {
    for (const solver::AirSurface& other : wanted.airs) {
      if (other.air != surface->air) continue;
      text += beside(how, solved.variant.spaces[other.air].name, surface->coldest.temperature.value,
                     other.coldest.temperature.value);
    }
  }
  return text;
}

bool is_warned(const SolvedVariant& solved, std::string_view words) {
  return std::any_of(
      solved.warnings.begin(), solved.warnings.end(),
      [&](const std::string& warning) { return warning.find(words) != std::string::npos; });
}

}  // namespace

bool is_disturbed(const solver::CutPlane& plane) {
  // Of the difference of the spaces; common practice, no source.
  constexpr double undisturbed = 0.005;
  return plane.fabric && plane.departure > undisturbed;
}

std::string words_for(const solver::CutPlane& plane) {
  return fmt::format("the cut plane from {:.0f}, {:.0f} to {:.0f}, {:.0f}", plane.from.x * 1e3,
                     plane.from.y * 1e3, plane.to.x * 1e3, plane.to.y * 1e3);
}

std::string short_legs_remark(const SolvedVariant& solved, const solver::Effort& effort) {
  const double distance = geometry::cut_distance(solved.variant.thickness);
  if (std::optional<cases::Variant> full = with_full_legs(solved.variant)) {
    return fmt::format(
        "the section is cut off nearer to the detail than the {:.0f} mm of ISO 10211 (1 m or three "
        "thicknesses){}: leave the length out, and it is drawn as far as is wanted",
        1e3 * distance, beside_longer(solved, std::move(*full), "drawn that far", effort));
  }
  const solver::CutPlane* plane = most_disturbed(solved);
  if (plane == nullptr) return "";
  std::optional<cases::Variant> longer = with_legs(solved.variant, 2 * distance);
  if (!longer) return "";
  return fmt::format(
      "{} is not in undisturbed wall: the field there differs from a plane part's by {:.1g} of the "
      "difference of the spaces{}",
      words_for(*plane), plane->departure,
      beside_longer(solved, std::move(*longer), "drawn twice as far", effort));
}

bool is_cut_off(const SolvedVariant& solved) {
  if (is_warned(solved, is_another)) return true;
  if (is_warned(solved, is_the_same)) return false;
  return std::any_of(solved.cut_planes.begin(), solved.cut_planes.end(), is_disturbed);
}

}  // namespace quoin::tools
