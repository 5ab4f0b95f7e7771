// SPDX-License-Identifier: Apache-2.0
#include "tools/pdf_report.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/canvas/paint.hpp"
#include "tools/enough_table.hpp"
#include "tools/judge.hpp"
#include "tools/page_flow.hpp"
#include "tools/pdf_vapour.hpp"
#include "tools/places.hpp"
#include "tools/readings.hpp"
#include "tools/report_words.hpp"
#include "tools/shared_rows.hpp"
#include "tools/text_report.hpp"
#include "tools/text_table.hpp"
#include "tools/text_words.hpp"
#include "tools/text_year.hpp"
#include "tools/version.hpp"
#include "tools/year.hpp"

namespace quoin::tools {
namespace {

using Rows = std::vector<std::vector<std::string>>;

std::string figure(double value, int decimals) {
  return std::isfinite(value) ? fmt::format("{:.{}f}", value, decimals) : "–";
}

/// Rows that several variants share, each begun by the names of its variants.
Rows named(const SharedRows<std::vector<std::string>>& shared, std::size_t variants) {
  Rows rows;
  for (const auto& [names, row] : shared.rows(variants)) {
    rows.push_back({names});
    rows.back().insert(rows.back().end(), row.begin(), row.end());
  }
  return rows;
}

void add_verdicts(PageFlow& flow, const Results& results) {
  flow.heading("Verdict");
  for (const SolvedVariant& solved : results.variants) {
    flow.subheading(solved.variant.name);
    flow.paragraph(solved.summary);
  }
  if (results.changes.empty()) return;
  flow.subheading(
      fmt::format("What changes against \"{}\"", results.variants.front().variant.name));
  for (const Change& change : results.changes) flow.item(change.words);
}

void add_side_by_side(PageFlow& flow, const Results& results, const Pictures& pictures) {
  Rows rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::AirSurface& surface : solved.surface.airs) {
      const AirHumidity* air = humidity_of(solved, surface.air);
      const solver::Spot& spot = surface.coldest;
      rows.push_back(
          {solved.variant.name, solved.variant.spaces[surface.air].name, words_for(solved, spot),
           figure(spot.temperature.value, 1),
           fmt::format("{} ± {}", figure(spot.factor.value, 3), figure(spot.factor.band, 3)),
           air != nullptr ? figure(air->factor_needed, 3) : "–",
           air != nullptr ? figure(100 * air->surface_humidity, 0) : "–",
           air != nullptr ? figure(std::floor(100 * air->highest_safe_humidity), 0) : "–",
           std::string(short_verdict(solved, surface.air).words)});
    }
  }
  flow.heading("Side by side");
  flow.table({"variant", "room", "coldest spot", "#°C", "#fRsi", "#needed here",
              "#humidity there %", "#safe up to %", "verdict"},
             {0.19, 0.1, 0.18, 0.06, 0.13, 0.09, 0.09, 0.07, 0.09}, rows);
  flow.picture(pictures.compare);
}

void add_pictures(PageFlow& flow, const Pictures& pictures) {
  flow.heading("Pictures");
  flow.picture(pictures.sections.front());
  flow.picture(pictures.surface);
  for (const Picture& field : pictures.fields) flow.picture(field);
  for (const Picture& lines : pictures.flows) flow.picture(lines);
}

void add_year(PageFlow& flow, const Results& results) {
  bool begun = false;
  for (const SolvedVariant& solved : results.variants) {
    for (const Year& year : solved.years) {
      if (year.spots.empty()) continue;
      if (!begun) flow.heading("Over the year");
      begun = true;
      flow.subheading(
          fmt::format("{}, {}", solved.variant.name, solved.variant.spaces[year.air].name));
      flow.paragraph(words_for(solved, year));
      Rows rows;
      for (std::size_t month = 0; month < year.months.size(); ++month) {
        const MonthAir& air = year.months[month];
        rows.push_back({std::string(month_name(month)), figure(air.outside_temperature, 1),
                        figure(100 * air.outside_humidity, 0), figure(air.inside_temperature, 1),
                        figure(100 * air.inside_humidity, 0),
                        figure(year.criteria.front().monthly_factor_needed[month], 3),
                        figure(year.spots.front().temperature[month], 1),
                        figure(100 * year.spots.front().humidity[month], 0)});
      }
      flow.table({"month", "#outside °C", "#%", "#inside °C", "#%",
                  fmt::format("#fRsi needed, {}", year.criteria.front().criterion),
                  "#coldest spot °C", "#humidity there %"},
                 {0.14, 0.11, 0.08, 0.11, 0.08, 0.18, 0.15, 0.15}, rows);
    }
  }
}

void add_enough(PageFlow& flow, const Results& results) {
  const EnoughTable enough = enough_table(results);
  if (enough.rows.empty()) return;
  std::vector<std::string> headings{"variant", "room", "criterion"};
  for (const EnoughTable::Column& column : enough.columns)
    headings.push_back(fmt::format("#{} {}", column.what, column.way));
  std::vector<double> shares{0.24, 0.12, 0.14};
  shares.insert(shares.end(), enough.columns.size(),
                0.5 / static_cast<double>(enough.columns.size()));
  Rows rows;
  for (const EnoughTable::Row& row : enough.rows) {
    rows.push_back({row.variant, row.room, row.criterion});
    for (const EnoughTable::Cell& cell : row.cells)
      rows.back().push_back(cell.words.empty() ? "–" : cell.words);
  }
  flow.heading("What would be enough");
  flow.table(headings, shares, rows);
  flow.paragraph(enough_note);
}

void add_readings(PageFlow& flow, const Results& results) {
  Rows rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const ComparedReading& reading : compared_readings(solved)) {
      const auto [low, high] = std::minmax(reading.with_surface, reading.with_heat);
      rows.push_back({solved.variant.name, reading.probe,
                      fmt::format("{:.1f} ± {:.1f}", reading.read, reading.plus_minus),
                      fmt::format("{:.1f} to {:.1f}", low, high),
                      reading.explained ? "explained" : "not explained"});
    }
  }
  if (rows.empty()) return;
  flow.heading("Readings against the model");
  flow.table({"variant", "probe", "#read °C", "#computed °C", ""}, {0.3, 0.2, 0.15, 0.17, 0.18},
             rows);
}

void add_materials(PageFlow& flow, const Results& results) {
  SharedRows<std::vector<std::string>> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const RegionId id : geometry::ids(solved.variant.regions)) {
      const cases::Region& region = solved.variant.regions[id];
      const materials::Sourced& dry = region.material.conductivity;
      rows.add(solved.variant.name,
               {region.name, region.state.empty() ? "dry" : region.state, figure(dry.value, 3),
                figure(solved.conductivity[id].value, 3), std::string(solved.conductivity[id].law),
                fmt::format("{}: {}", words_for(dry.confidence), dry.source)});
    }
  }
  flow.heading("Materials");
  flow.table({"variant", "material", "moisture", "#W/(m·K) dry", "#as used", "moisture law",
              "source of the dry value"},
             {0.16, 0.15, 0.11, 0.09, 0.08, 0.14, 0.27}, named(rows, results.variants.size()));
}

void add_air(PageFlow& flow, const Results& results) {
  SharedRows<std::vector<std::string>> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const SpaceId id : geometry::ids(solved.variant.spaces)) {
      const cases::Space& space = solved.variant.spaces[id];
      rows.add(solved.variant.name,
               {space.name, figure(space.temperature, 1),
                space.humidity ? figure(100 * *space.humidity, 0) : "–",
                resistance_words(solved.surface, id), resistance_words(solved.heat, id)});
    }
  }
  flow.heading("Air and surfaces");
  flow.table({"variant", "space", "#°C", "#humidity %", "#m²K/W for surface temperature",
              "#m²K/W for heat flow"},
             {0.24, 0.2, 0.09, 0.12, 0.2, 0.15}, named(rows, results.variants.size()));
}

void add_heat(PageFlow& flow, const Results& results) {
  Rows couplings, psis;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::Coupling& coupling : solved.heat.couplings) {
      couplings.push_back({solved.variant.name,
                           fmt::format("{} – {}", solved.variant.spaces[coupling.a].name,
                                       solved.variant.spaces[coupling.b].name),
                           figure(coupling.value, 4), figure(coupling.low, 4),
                           figure(coupling.high, 4)});
    }
    for (const solver::LinearTransmittance& psi : solved.psi) {
      psis.push_back(
          {solved.variant.name, fmt::format("{} dimensions", words_for(psi.dimensions)),
           fmt::format("{} ± {}", figure(psi.value.value, 4), figure(psi.value.band, 4))});
    }
  }
  flow.heading("Heat flow");
  flow.table({"variant", "between", "#L2D W/(m·K)", "#at least", "#at most"},
             {0.32, 0.29, 0.15, 0.12, 0.12}, couplings);
  flow.table({"variant", "linear transmittance ψ by", "#W/(m·K)"}, {0.4, 0.35, 0.25}, psis);
}

void add_doubts(PageFlow& flow, const Results& results) {
  std::set<std::string> said;
  for (const SolvedVariant& solved : results.variants) {
    for (const std::string& warning : solved.warnings) {
      if (said.empty()) flow.heading("Doubts");
      if (said.insert(warning).second) {
        flow.item(fmt::format("{}: {}", fitted(solved.variant.name, 1.0, 60.0), warning));
      }
    }
  }
}

void add_checks(PageFlow& flow, const Results& results) {
  Rows rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::Check& check : solved.surface.checks) {
      rows.push_back({solved.variant.name, check.name, fmt::format("{:.1e}", check.value),
                      fmt::format("{:.0e}", check.limit), check.holds ? "holds" : "does not hold"});
    }
  }
  flow.heading("Checks");
  flow.table({"variant", "check", "#value", "#limit", ""}, {0.3, 0.3, 0.13, 0.13, 0.14}, rows);
}

void add_list(PageFlow& flow, std::string_view title, std::span<const std::string_view> items) {
  flow.heading(title);
  for (const std::string_view item : items) flow.item(item);
}

}  // namespace

std::string report_pdf(const Results& results) { return report_pdf(results, pictures_of(results)); }

std::string report_pdf(const Results& results, const Pictures& pictures) {
  if (results.variants.empty()) return "";
  PageFlow flow(results.title, fmt::format("Quoin {}, input {}", QUOIN_VERSION,
                                           std::string_view(results.sha256).substr(0, 16)));
  flow.title(results.title);
  if (!results.note.empty()) flow.paragraph(results.note);
  add_verdicts(flow, results);
  add_side_by_side(flow, results, pictures);
  add_pictures(flow, pictures);
  add_year(flow, results);
  add_enough(flow, results);
  add_vapour(flow, results);
  add_readings(flow, results);
  add_materials(flow, results);
  add_air(flow, results);
  add_heat(flow, results);
  add_doubts(flow, results);
  add_checks(flow, results);
  add_list(flow, "Assumptions, and what is left out", assumptions());
  add_list(flow, "Cautions", cautions());
  flow.heading("Made from");
  flow.paragraph(made_from(fitted(results.file, 1.0, 200.0), results.sha256));
  flow.heading("Remarks of the surveyor");
  flow.blank(150.0);
  return pdf_of(flow.pages(), harmless(fitted(results.title, 1.0, 200.0), {}));
}

}  // namespace quoin::tools
