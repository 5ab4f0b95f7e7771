// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/short_legs.hpp"

#include <fmt/format.h>

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
std::string beside(const std::string& room, double drawn, double wanted) {
  constexpr double noticeable = 0.05;  // K
  if (std::abs(drawn - wanted) < noticeable)
    return fmt::format("; the coldest spot of {} stays the same within 0.05 K", room);
  const int decimals = decimals_for({drawn, wanted}, 1);
  return fmt::format(
      "; drawn that far the coldest spot of {} is at {} °C instead of {} °C, which no band counts",
      room, fixed(wanted, decimals), fixed(drawn, decimals));
}

}  // namespace

std::string short_legs_remark(const SolvedVariant& solved, const solver::Effort& effort) {
  std::optional<cases::Variant> full = with_full_legs(solved.variant);
  if (!full) return "";
  full->probes.clear();
  const solver::Solution wanted =
      solver::solution_of(question_of(*full, materials::Purpose::surface_temperature), effort);
  std::string text = fmt::format(
      "the section is cut off nearer to the detail than the {:.0f} mm of ISO 10211 (1 m or three "
      "thicknesses)",
      1e3 * geometry::cut_distance(solved.variant.thickness));
  for (const solver::AirSurface* surface : judged_surfaces(solved)) {
    for (const solver::AirSurface& other : wanted.airs) {
      if (other.air != surface->air) continue;
      text += beside(solved.variant.spaces[other.air].name, surface->coldest.temperature.value,
                     other.coldest.temperature.value);
    }
  }
  return text + ": leave the length out, and it is drawn as far as is wanted";
}

}  // namespace quoin::tools
