// SPDX-License-Identifier: Apache-2.0
#include "tools/report_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>

#include "solver/courses.hpp"
#include "tools/version.hpp"

namespace quoin::tools {
namespace {

constexpr std::array<std::string_view, 6> all_assumptions{
    "Calculated following ISO 10211 two-dimensional rules; surface resistances per ISO 13788 for "
    "surface moisture and ISO 6946 for heat flow. Readings are outside any standard.",
    "Temperatures, fRsi and humidities at surfaces come from the first, L2D and ψ from the second.",
    "Steady heat conduction in one section. Left out: the third dimension, air movement, heat "
    "storage, sun, liquid water that moves, salts; of vapour all but steady diffusion, where "
    "asked.",
    "The conductivity of a material is the same in every direction and everywhere in it.",
    "Each band covers grid and solver only. What is not known of the house, its materials and its "
    "air moves the answer more: compare variants.",
    "80 % humidity at a surface stands for mould over weeks, not for one cold hour."};

constexpr std::array<std::string_view, 7> all_cautions{
    "This is a calculation aid. Local codes, licensed practitioners and judgement on site govern.",
    "Find and stop the source of water, and let masonry dry, before anything is insulated.",
    "Lead paint: test before stripping, no dry sanding, no hot air. Asbestos: survey before you "
    "drill, cut or strip.",
    "Lime burns eyes and skin; chasing and grinding masonry frees silica dust; clearing mould "
    "needs protection. Medical advice belongs to clinicians.",
    "Live cables in chases and behind linings. Rooms with a fire or boiler need their air.",
    "Lowering the ground can undermine shallow footings: take structural advice. Look at lintels, "
    "ties and timber ends before you close them in. Work at height needs proper access.",
    "Linings have a fire class; bats and nesting birds are protected in many places; listed "
    "buildings, conservation areas and party walls need consent."};

}  // namespace

std::span<const std::string_view> assumptions() { return all_assumptions; }

std::span<const std::string_view> cautions() { return all_cautions; }

std::string made_from(std::string_view file, std::string_view sha256) {
  return fmt::format(
      "Case file {}, SHA-256 {}, by Quoin {}. The same file and program give the same numbers; "
      "every number stands in findings.json.",
      file, sha256, QUOIN_VERSION);
}

std::string resistance_words(const solver::Solution& solution, SpaceId space) {
  double low = std::numeric_limits<double>::infinity();
  double high = 0.0;
  for (const solver::Course& course : solver::courses_of(solution)) {
    for (const geometry::Face& face : course.surface.faces) {
      if (face.space != space) continue;
      const double r = solution.physics.surface_resistance(space, face.region, face.facing);
      low = std::min(low, r);
      high = std::max(high, r);
    }
  }
  if (low > high) return "–";
  return low == high ? fmt::format("{:.3g}", low) : fmt::format("{:.3g} to {:.3g}", low, high);
}

}  // namespace quoin::tools
