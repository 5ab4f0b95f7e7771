// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "materials/moisture.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/results/version.hpp"
#include "tools/answer/words/filled.hpp"
#include "tools/output/report/parts.hpp"

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

/// What of a case cautions depend on.
struct Bearing {
  bool built = false;   ///< a variant draws the section in another way
  bool aired = false;   ///< a variant has other air in a room
  bool damp = false;    ///< a surface is wet or mouldy, or masonry is wetter than damp
  bool ground = false;  ///< the foot of a wall
  bool filled = false;  ///< a variant fills a cavity that is air in the first
  bool timber = false;  ///< lintels or the ends of joists are in the section
};

bool is_damp(const SolvedVariant& solved) {
  using Kind = Outcome::Kind;
  const Outcome* worst = worst_outcome(solved);
  const bool surface = worst != nullptr && worst->kind <= Kind::mould;
  return surface ||
         std::any_of(solved.variant.regions.begin(), solved.variant.regions.end(),
                     [](const cases::Region& region) {
                       return materials::wetter_than_damp(region.material, region.moisture);
                     });
}

Bearing bearing_of(const Results& results) {
  Bearing bearing;
  const SolvedVariant& first = results.variants.front();
  const geometry::Section& was = first.surface.field.mesh.section;
  for (const SolvedVariant& solved : results.variants) {
    const geometry::Section& is = solved.surface.field.mesh.section;
    bearing.built |= was.x != is.x || was.y != is.y || was.cells != is.cells;
    bearing.damp |= is_damp(solved);
    bearing.filled |= fills_cavity(first, solved);
    bearing.timber |= !solved.timber_ends.empty();
    if (const auto& recipe = solved.variant.recipe) {
      bearing.ground |= std::holds_alternative<geometry::WallBase>(*recipe);
      bearing.timber |= std::holds_alternative<geometry::Head>(*recipe);
    } else {
      bearing.timber = true;  // a sheet may show anything
    }
    for (const cases::Space& space : solved.variant.spaces) {
      for (const cases::Space& before : first.variant.spaces) {
        bearing.aired |=
            space.name == before.name && space.is == cases::SpaceKind::inside &&
            (space.humidity != before.humidity || space.temperature != before.temperature);
      }
    }
  }
  return bearing;
}

struct Caution {
  std::string_view words;
  bool (*bears)(const Bearing&);
};

bool always(const Bearing&) { return true; }
bool built(const Bearing& on) { return on.built; }

constexpr std::array<Caution, 14> all_cautions{{
    {"This is a calculation aid. Local codes, licensed practitioners and judgement on site govern.",
     always},
    {"Find and stop the source of water, and let masonry dry, before anything is insulated.",
     always},
    {"Clearing mould needs protection. Medical advice belongs to clinicians.",
     [](const Bearing& on) { return on.damp; }},
    {"Lead paint: test before stripping, no dry sanding, no hot air. Asbestos: survey before you "
     "drill, cut or strip.",
     always},
    {"Lime burns eyes and skin; chasing and grinding masonry frees silica dust.", built},
    {"Live cables in chases and behind linings.", built},
    {"Rooms with a fire or boiler need their air.",
     [](const Bearing& on) { return on.aired || on.built; }},
    {"Behind a lining the masonry gets colder and dries more slowly: what condenses there is asked "
     "by `vapour`, and needs a transient assessment (EN 15026) before it is built.",
     built},
    // Common practice, no source.
    {"A cavity keeps rain from the inner leaf, and filled it no longer does: where driving rain "
     "reaches the wall, or mortar and rubble lie in the cavity, damp can cross it. Have the "
     "exposure, the outer leaf, its pointing and the ties looked at first; local codes say where a "
     "cavity may be filled and with what.",
     [](const Bearing& on) { return on.filled; }},
    {"The ground lags by months, and the steady state knows no season: give the outside the mean "
     "of "
     "a month, not of a cold night.",
     [](const Bearing& on) { return on.ground; }},
    // Earth insulates: computed with this program.
    {"Lowering the ground outside makes the foot of a wall colder here, as earth insulates; what "
     "it "
     "gains is a drier wall, which is not computed. It can undermine shallow footings: take "
     "structural advice. Air bricks stay open: the timber of a floor above a void rots where they "
     "are blocked.",
     [](const Bearing& on) { return on.ground; }},
    {"Look at lintels, ties and timber ends before you close them in.",
     [](const Bearing& on) { return on.timber || on.built; }},
    {"Work at height needs proper access.", built},
    {"Linings have a fire class; bats and nesting birds are protected in many places; listed "
     "buildings, conservation areas and party walls need consent.",
     built},
}};

}  // namespace

std::vector<std::string> assumptions() { return {all_assumptions.begin(), all_assumptions.end()}; }

std::string risk_words() {
  return fmt::format(
      "How sure for this house: the chance that a limit is passed at the coldest spot, of draws "
      "over what the case leaves open: conductivities within their ranges, surface resistances and "
      "the air of the household. Where nothing was measured, these ranges are assumed. Unlikely is "
      "below 10 of 100 cases, marginal below 50, likely below 90. An outcome is safe at {:.0f} of "
      "100 or less. The temperatures themselves are computed far closer; the bands with the "
      "numbers "
      "say how close.",
      100 * marginal_chance);
}

Blocks cautions_part(const Results& results) {
  const Bearing bearing = bearing_of(results);
  List list;
  for (const Caution& caution : all_cautions) {
    if (caution.bears(bearing)) list.items.emplace_back(caution.words);
  }
  return {std::move(list)};
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
