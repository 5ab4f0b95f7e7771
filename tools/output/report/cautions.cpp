// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

#include "tools/answer/judge/outcome.hpp"
#include "tools/grade.hpp"
#include "tools/output/report/parts.hpp"
#include "tools/version.hpp"

namespace quoin::tools::report {
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

std::vector<std::string> assumptions() { return {all_assumptions.begin(), all_assumptions.end()}; }

std::string risk_words() {
  return fmt::format(
      "How sure for this house: the chance that a limit of humidity is passed at the coldest spot, "
      "where the humidity of the room is known to {:.0f} points and fRsi to {:.2f}, as surveys "
      "usually know them; that is assumed, not measured. Unlikely is below 10 of 100 cases, "
      "marginal below 50, likely below 90. An outcome is safe at {:.0f} of 100 or less. The "
      "temperatures themselves are computed far closer; the bands with the numbers say how close.",
      100 * humidity_spread, factor_spread, 100 * marginal_chance);
}

Blocks cautions_part(const Results& /*results*/) {
  return {List{{all_cautions.begin(), all_cautions.end()}}};
}

Blocks made_from_part(const Results& results) {
  Blocks blocks{Paragraph{fmt::format(
      "Case file {}, SHA-256 {}, by Quoin {}. The same file and program give the same numbers; "
      "every number stands in findings.json.",
      results.file, results.sha256, QUOIN_VERSION)}};
  blocks.emplace_back(
      Blank{{"Date", "Author", "Checked by", "Signature", "Remarks of the surveyor"}});
  if (!results.text.empty()) blocks.emplace_back(Verbatim{"The case file", results.text});
  return blocks;
}

}  // namespace quoin::tools::report
