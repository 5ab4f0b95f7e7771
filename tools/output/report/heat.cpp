// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "tools/answer/judge/judge.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools::report {
namespace {

Table couplings_table(const Results& results) {
  Table table{
      "Thermal coupling L2D: the heat that crosses for each kelvin of difference and metre "
      "of the detail, with its bounds, W/(m·K)",
      {{"variant", 2}, {"between", 2}, {"L2D"}, {"at least"}, {"at most"}},
      {},
      2};
  for (const SolvedVariant& solved : results.variants) {
    const auto& spaces = solved.variant.spaces;
    for (const solver::Coupling& coupling : solved.heat.couplings) {
      table.rows.push_back(
          {words_cell(solved.variant.name),
           words_cell(fmt::format("{} – {}", spaces[coupling.a].name, spaces[coupling.b].name)),
           number_cell(coupling.value, 4), number_cell(coupling.low, 4),
           number_cell(coupling.high, 4)});
    }
  }
  return table;
}

Table flows_table(const Results& results) {
  Table table{"Heat flow into the section, W/m", {{"variant", 2}, {"from", 2}, {"W/m"}}, {}, 2};
  for (const SolvedVariant& solved : results.variants) {
    for (const SpaceId id : geometry::ids(solved.heat.flows))
      table.rows.push_back({words_cell(solved.variant.name),
                            words_cell(solved.variant.spaces[id].name),
                            number_cell(solved.heat.flows[id], 2)});
  }
  return table;
}

Table psi_table(const Results& results) {
  const bool beside = std::any_of(
      results.variants.begin(), results.variants.end(),
      [](const SolvedVariant& solved) { return solved.variant.psi.catalogue.has_value(); });
  Table table{
      "Linear thermal transmittance ψ: what the detail loses beyond its plain parts, "
      "W/(m·K)",
      {{"variant", 2}, {"by", 2.4}, {"ψ", 1.2}},
      {},
      2};
  if (beside) {
    table.columns.push_back({"from elsewhere", 1.2});
    table.columns.push_back({"source of that", 1.6});
  }
  for (const SolvedVariant& solved : results.variants) {
    const cases::PsiAsked& asked = solved.variant.psi;
    for (const solver::LinearTransmittance& psi : solved.psi) {
      Row row{words_cell(solved.variant.name), words_cell(psi_by(solved, psi)),
              band_cell(psi.value.value, psi.value.band, 4)};
      if (beside) {
        row.push_back(asked.catalogue ? number_cell(*asked.catalogue, 4) : figure_cell("–"));
        row.push_back(words_cell(asked.source.empty() ? "–" : asked.source));
      }
      table.rows.push_back(std::move(row));
    }
  }
  return table;
}

Table plain_table(const Results& results) {
  Table table{"Away from the detail",
              {{"variant", 2}, {"part", 1.4}, {"U W/(m²·K)"}, {"fRsi"}, {"surface °C"}},
              {},
              2};
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::PlainPart& part : solved.plain)
      table.rows.push_back({words_cell(solved.variant.name), words_cell(part.name),
                            number_cell(part.transmittance, 3), number_cell(part.surface_factor, 3),
                            number_cell(part.surface_temperature, 1)});
  }
  return table;
}

/// fRsi of each room by either purpose, each beside the resistance it was computed with.
Table factors_table(const Results& results) {
  Table table{
      "fRsi by either surface resistance: compare a threshold with the one it was stated for",
      {{"variant", 2},
       {"room", 1.2},
       {"Rsi for surface temperature", 1.2},
       {"fRsi with it", 1.2},
       {"Rsi for heat flow"},
       {"fRsi with that", 1.2}},
      {},
      2};
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::AirSurface* surface : judged_surfaces(solved)) {
      const auto other =
          std::find_if(solved.heat.airs.begin(), solved.heat.airs.end(),
                       [&](const solver::AirSurface& each) { return each.air == surface->air; });
      const solver::Estimate& factor = surface->coldest.factor;
      Row row{words_cell(solved.variant.name), words_cell(solved.variant.spaces[surface->air].name),
              resistance_cell(solved.surface, surface->air),
              band_cell(factor.value, factor.band, 3), resistance_cell(solved.heat, surface->air)};
      row.push_back(other == solved.heat.airs.end()
                        ? figure_cell("–")
                        : band_cell(other->coldest.factor.value, other->coldest.factor.band, 3));
      table.rows.push_back(std::move(row));
    }
  }
  return table;
}

/// Why a variant has no psi, where readers would look for one.
List missing_psi(const Results& results) {
  List list;
  for (const SolvedVariant& solved : results.variants) {
    if (!solved.psi.empty() || solved.heat.couplings.empty()) continue;
    const char* why = solved.variant.flanks.empty()
                          ? "no plain parts are known that could be taken off; of a sheet, name "
                            "them in `plain parts`"
                      : solved.heat.couplings.size() > 1
                          ? "its plain parts do not all lie between one pair of airs"
                          : "what its plain parts lose on their own is not known";
    list.items.push_back(fmt::format("{}: no ψ, as {}.", solved.variant.name, why));
  }
  return list;
}

}  // namespace

Blocks heat_part(const Results& results) {
  Blocks blocks;
  add(blocks, couplings_table(results));
  add(blocks, flows_table(results));
  add(blocks, psi_table(results));
  if (List missing = missing_psi(results); !missing.items.empty())
    blocks.emplace_back(std::move(missing));
  add(blocks, plain_table(results));
  add(blocks, factors_table(results));
  for (std::size_t v = 0; v < results.variants.size(); ++v) {
    const std::string& name = results.variants[v].variant.name;
    blocks.emplace_back(Figure{
        Figure::Kind::flow, v,
        fmt::format(
            "Lines along which heat flows, {}; every two of them carry the same between them",
            name)});
  }
  return blocks;
}

}  // namespace quoin::tools::report
