// SPDX-License-Identifier: Apache-2.0
#include "tools/html_basis.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "tools/draw/canvas/xml.hpp"
#include "tools/html_parts.hpp"
#include "tools/physics.hpp"
#include "tools/report_words.hpp"
#include "tools/text_words.hpp"

namespace quoin::tools {
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

}  // namespace

std::string html_materials(const Results& results) {
  SharedRows<HtmlRow> shared;
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
          {text_cell(name), text_cell(region.state.empty() ? "dry" : region.state),
           number_cell(100 * region.moisture, 1), number_cell(material.conductivity.value, 3),
           number_cell(solved.conductivity[id].value, 3),
           text_cell(sourced(material.conductivity.confidence, material.conductivity.source)),
           text_cell(
               fmt::format("{}; {}", law, sourced(material.law_confidence, material.law_source)))});
    }
  }
  return html_table("Conductivities in W/(m·K)",
                    {"variant", "material", "moisture", "vol-%", "dry", "as used",
                     "source of the dry value", "moisture law and its source"},
                    html_rows(shared, results.variants.size()));
}

std::string html_boundaries(const Results& results) {
  SharedRows<HtmlRow> shared;
  for (const SolvedVariant& solved : results.variants) {
    for (const SpaceId id : geometry::ids(solved.variant.spaces)) {
      const cases::Space& space = solved.variant.spaces[id];
      shared.add(
          solved.variant.name,
          {text_cell(space.name), text_cell(words_for(space.is)), number_cell(space.temperature, 1),
           number_cell(space.humidity ? *space.humidity * 100 : std::nan(""), 0),
           digits_cell(resistance_words(solved.surface, id)),
           digits_cell(resistance_words(solved.heat, id)),
           text_cell(particulars_of(solved.variant, id))});
    }
  }
  return html_table(
      "Surface resistances in m²·K/W, for surface temperature and for heat flow",
      {"variant", "space", "is", "°C", "humidity %", "surface", "heat flow", "besides"},
      html_rows(shared, results.variants.size()));
}

std::string html_doubts(const Results& results) {
  SharedRows<HtmlRow> shared;
  for (const SolvedVariant& solved : results.variants) {
    for (const std::string& warning : solved.warnings)
      shared.add(solved.variant.name, {text_cell(warning)});
  }
  std::string items;
  for (const HtmlRow& row : html_rows(shared, results.variants.size()))
    items += fmt::format("<li>{} ({})</li>\n", row[1].markup, row[0].markup);
  return html_list(items);
}

std::string html_checks(const Results& results) {
  std::vector<HtmlRow> checks;
  for (const WorstCheck& worst : worst_checks(results)) {
    checks.push_back(
        {text_cell(worst.check.name), digits_cell(fmt::format("{:.1e}", worst.check.value)),
         digits_cell(fmt::format("{:.0e}", worst.check.limit)),
         text_cell(worst.check.holds ? "holds" : "does not hold"), text_cell(worst.variant)});
  }
  std::vector<HtmlRow> bands;
  for (const SolvedVariant& solved : results.variants) {
    const geometry::Mesh& mesh = solved.surface.field.mesh;
    for (const solver::AirSurface& surface : solved.surface.airs) {
      const solver::Spot& spot = surface.coldest;
      bands.push_back({text_cell(solved.variant.name),
                       text_cell(solved.variant.spaces[surface.air].name),
                       digits_cell(fmt::format("{}", mesh.nx() * mesh.ny())),
                       number_cell(spot.temperature.band, 4), number_cell(spot.factor.band, 5),
                       text_cell(solved.surface.accurate && solved.heat.accurate ? "yes" : "no")});
    }
  }
  return html_table("Laws of physics on every field: the worst of all variants",
                    {"check", "value", "limit", "", "of variant"}, checks) +
         html_table("Bands of the coldest spots: of the grid and the solver, not of the input",
                    {"variant", "space", "nodes", "± K", "± fRsi", "wanted accuracy reached"},
                    bands);
}

std::string html_made_from(const Results& results) {
  std::string text = html_paragraph(made_from(results.file, results.sha256));
  if (results.text.empty()) return text;
  return text + fmt::format(
                    "<h3>The case file</h3>\n<pre class=\"wide\" tabindex=\"0\" role=\"region\" "
                    "aria-label=\"The case file\">{}</pre>\n",
                    escaped(results.text));
}

}  // namespace quoin::tools
