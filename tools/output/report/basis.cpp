// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "geometry/surface.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools::report {
namespace {

std::string sourced(materials::Confidence confidence, const std::string& source) {
  return source.empty() ? std::string(words_for(confidence))
                        : fmt::format("{}: {}", words_for(confidence), source);
}

std::string_view words_for(cases::SpaceKind kind) {
  switch (kind) {
    case cases::SpaceKind::inside:
      return "inside";
    case cases::SpaceKind::outside:
      return "outside";
    case cases::SpaceKind::unheated:
      return "unheated";
  }
  return "";
}

/// A value with the range it has in practice, where one is known.
Cell range_cell(const materials::Sourced& value) {
  if (!value.low || !value.high) return number_cell(value.value, 3);
  return figure_cell(fmt::format("{} ({} to {})", fixed(value.value, 3), fixed(*value.low, 2),
                                 fixed(*value.high, 2)));
}

/// Whatever else the author said of a space.
std::string particulars_of(const cases::Variant& variant, SpaceId id) {
  const cases::Space& space = variant.spaces[id];
  std::string text;
  const auto add = [&](const std::string& words) { text += (text.empty() ? "" : "; ") + words; };
  if (space.air != id) add("the air of " + variant.spaces[space.air].name);
  if (space.moisture) add(fmt::format("humidity by {}", materials::name_of(*space.moisture)));
  if (space.wind) add(fmt::format("wind {:g} m/s", *space.wind));
  if (space.behind) add("behind something that keeps the air off");
  if (space.resistance && !space.behind) add("resistance fixed by the author");
  if (space.b) add(fmt::format("b {:.2f}", *space.b));
  if (!space.losses.empty()) add("temperature by its heat balance");
  if (space.sky) add("clear sky");
  if (space.evaporation) add("evaporation");
  if (space.cooling != 0.0) add(fmt::format("to its surfaces {:.1f} K colder", space.cooling));
  return text.empty() ? "–" : text;
}

Table materials_table(const Results& results) {
  SharedRows<Row> shared;
  for (const SolvedVariant& solved : results.variants) {
    for (const RegionId id : geometry::ids(solved.variant.regions)) {
      const cases::Region& region = solved.variant.regions[id];
      const materials::Material& material = region.material;
      const std::string name = material.name.empty() || material.name == region.name
                                   ? region.name
                                   : fmt::format("{} ({})", region.name, material.name);
      const std::string law(solved.conductivity[id].law);
      shared.add(
          solved.variant.name,
          {words_cell(name), words_cell(moisture_words(region)),
           number_cell(100 * region.moisture, 1), range_cell(material.conductivity),
           number_cell(solved.conductivity[id].value, 3),
           words_cell(sourced(material.conductivity.confidence, material.conductivity.source)),
           words_cell(
               fmt::format("{}; {}", law, sourced(material.law_confidence, material.law_source)))});
    }
  }
  return {
      "Materials: conductivities in W/(m·K), in brackets the range met in practice, which the "
      "chance of each outcome counts",
      {{"variant", 1.3},
       {"material", 1.4},
       {"moisture"},
       {"vol-%", 0.6},
       {"dry", 1.1},
       {"as used", 0.7},
       {"source of the dry value", 2.2},
       {"moisture law and its source", 2}},
      rows_of(shared, results.variants.size()),
      2};
}

Table air_table(const Results& results) {
  SharedRows<Row> shared;
  for (const SolvedVariant& solved : results.variants) {
    for (const SpaceId id : geometry::ids(solved.variant.spaces)) {
      const cases::Space& space = solved.variant.spaces[id];
      shared.add(solved.variant.name,
                 {words_cell(space.name), words_cell(words_for(space.is)),
                  number_cell(space.temperature, 1),
                  number_cell(space.humidity ? *space.humidity * 100 : std::nan(""), 0),
                  resistance_cell(solved.surface, id), resistance_cell(solved.heat, id),
                  words_cell(particulars_of(solved.variant, id))});
    }
  }
  return {
      "Air, and surface resistances in m²·K/W: Rsi inside, Rse outside. Those for surface "
      "temperature give temperatures, fRsi and humidities; those for heat flow L2D and ψ",
      {{"variant", 1.6},
       {"space", 1.4},
       {"is", 0.9},
       {"°C", 0.6},
       {"humidity %", 0.9},
       {"R for surface temperature", 1.2},
       {"R for heat flow"},
       {"besides", 1.8}},
      rows_of(shared, results.variants.size()),
      2};
}

/// The worst of a check over all variants and both purposes.
struct WorstCheck {
  solver::Check check;
  std::string variant;
};

std::vector<WorstCheck> worst_checks(const Results& results) {
  std::vector<WorstCheck> worst;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::Solution* solution : {&solved.surface, &solved.heat}) {
      for (const solver::Check& check : solution->checks) {
        const auto known = std::find_if(worst.begin(), worst.end(), [&](const WorstCheck& each) {
          return each.check.name == check.name;
        });
        if (known == worst.end()) {
          worst.push_back({check, solved.variant.name});
        } else if (check.value > known->check.value) {
          *known = {check, solved.variant.name};
        }
      }
    }
  }
  return worst;
}

/// How much of its limit a residual reaches.
std::string share_of(double value, double limit) {
  const double percent = 100.0 * value / limit;
  if (value == 0.0) return "nothing";
  return percent < 0.1 ? "under 0.1 %" : fixed(percent, 1) + " %";
}

/// A power of ten, written out.
std::string written_out(double limit) {
  return fixed(limit, static_cast<int>(std::ceil(-std::log10(limit))));
}

Table checks_table(const Results& results) {
  Table table{"Laws of physics on every field: the worst of all variants",
              {{"check", 2}, {"limit"}, {"of it reached"}, {"result", 1}, {"of variant", 2}},
              {},
              1};
  for (const WorstCheck& worst : worst_checks(results)) {
    table.rows.push_back({words_cell(worst.check.name), figure_cell(written_out(worst.check.limit)),
                          figure_cell(share_of(worst.check.value, worst.check.limit)),
                          words_cell(worst.check.holds ? "holds" : "does not hold",
                                     worst.check.holds ? Tone::plain : Tone::bad),
                          words_cell(worst.variant)});
  }
  return table;
}

/// The bounds of a proof, rounded outwards to hundredths.
Cell proved_cell(const std::optional<solver::ProvedMean>& mean) {
  if (!mean) return words_cell("–");
  return figure_cell(fmt::format("{} to {}", fixed(std::floor(100 * mean->low) / 100, 2),
                                 fixed(std::ceil(100 * mean->high) / 100, 2)));
}

Table bands_table(const Results& results) {
  Table table{
      "Bands of the coldest spots: computed to within so much by grid and solver, which "
      "says nothing of the input; and between what the mean over the coldest 10 mm lies, which "
      "a second method proves",
      {{"variant", 2}, {"space", 1.4}, {"nodes"}, {"± K"}, {"± fRsi"}, {"10 mm, °C", 1.3}},
      {},
      2};
  for (const SolvedVariant& solved : results.variants) {
    const geometry::Mesh& mesh = solved.surface.field.mesh;
    for (const solver::AirSurface& surface : solved.surface.airs) {
      const solver::Spot& spot = surface.coldest;
      table.rows.push_back({words_cell(solved.variant.name),
                            words_cell(solved.variant.spaces[surface.air].name),
                            figure_cell(fmt::format("{}", mesh.nx() * mesh.ny())),
                            number_cell(spot.temperature.band, 4), number_cell(spot.factor.band, 5),
                            proved_cell(surface.thermometer)});
    }
  }
  return table;
}

}  // namespace

Cell resistance_cell(const solver::Solution& solution, SpaceId space) {
  double low = std::numeric_limits<double>::infinity();
  double high = 0.0;
  for (const geometry::Face& face : geometry::faces(solution.field.mesh)) {
    if (face.space != space) continue;
    const double r = solution.physics.surface_resistance(space, face.region, face.facing);
    low = std::min(low, r);
    high = std::max(high, r);
  }
  if (low > high) return figure_cell("–");
  return figure_cell(low == high ? fmt::format("{:.3g}", low)
                                 : fmt::format("{:.3g} to {:.3g}", low, high));
}

Blocks basis_part(const Results& results) {
  Blocks blocks;
  add(blocks, materials_table(results));
  add(blocks, air_table(results));
  blocks.emplace_back(Heading{"Assumptions, and what is left out"});
  blocks.emplace_back(List{assumptions()});
  return blocks;
}

Blocks checks_part(const Results& results) {
  Blocks blocks;
  add(blocks, checks_table(results));
  add(blocks, bands_table(results));
  return blocks;
}

Blocks warnings_part(const Results& results) {
  using Warning = std::string;
  SharedRows<Warning> shared;
  for (const SolvedVariant& solved : results.variants) {
    for (const std::string& warning : solved.warnings) shared.add(solved.variant.name, warning);
  }
  List list;
  for (const auto& [variants, warning] : shared.rows(results.variants.size()))
    list.items.push_back(variants == "all" ? warning : fmt::format("{} ({})", warning, variants));
  if (list.items.empty()) return {};
  return {std::move(list)};
}

}  // namespace quoin::tools::report
