// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "tools/answer/find/places.hpp"
#include "tools/answer/find/readings.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools::report {
namespace {

Row spot_row(const SolvedVariant& solved, const solver::AirSurface& surface) {
  const solver::Spot& spot = surface.coldest;
  const AirHumidity* air = humidity_of(solved, surface.air);
  const Outcome* outcome = outcome_of(solved, surface.air);
  const double unknown = std::nan("");
  // Nothing is safe up to a humidity where something else fails.
  const bool fails = outcome != nullptr && outcome->kind == Outcome::Kind::fails;
  return {words_cell(solved.variant.name),
          words_cell(solved.variant.spaces[surface.air].name),
          words_cell(words_for(solved, spot)),
          figure_cell(
              fmt::format("{:.0f}, {:.0f}", 1e3 * spot.place.x + 0.0, 1e3 * spot.place.y + 0.0)),
          number_cell(spot.temperature.value, 1),
          band_cell(spot.factor.value, spot.factor.band, 3),
          number_cell(air != nullptr ? air->factor_needed : unknown, 3),
          number_cell(air != nullptr ? 100 * air->surface_humidity : unknown, 0),
          number_cell(air != nullptr ? 100 * air->limit : unknown, 0),
          number_cell(
              air != nullptr && !fails ? std::floor(100 * air->highest_safe_humidity) : unknown, 0),
          outcome_cell(solved, surface.air)};
}

Table spots_table(const Results& results) {
  Table table{
      "The coldest spots. fRsi is how far a surface follows the room: 0 as cold as outside, "
      "1 as warm as the room.",
      {{"variant", 2},
       {"room"},
       {"coldest spot", 1.6},
       {"at mm", 0.9},
       {"°C", 0.6},
       {"fRsi", 1.2},
       {"fRsi this air needs", 0.9},
       {"humidity there %", 0.9},
       {"limit %", 0.7},
       {"kept up to % in the room", 0.9},
       {"outcome", 1.2}},
      {},
      2};
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::AirSurface* surface : judged_surfaces(solved))
      table.rows.push_back(spot_row(solved, *surface));
  }
  return table;
}

/// " (Rsi 0.13)" where a threshold was stated for one.
std::string for_resistance(const SolvedVariant& solved, const Verdict& verdict) {
  for (const cases::Criterion& each : solved.variant.criteria) {
    const auto* factor = std::get_if<cases::FactorThreshold>(&each.test);
    if (each.name == verdict.criterion && factor != nullptr && factor->resistance)
      return fmt::format(" (Rsi {:.3g})", *factor->resistance);
  }
  return "";
}

Row criterion_row(const SolvedVariant& solved, const Verdict& verdict) {
  const std::string_view holds = !verdict.gate.empty() && verdict.holds ? "not before it is dry"
                                 : verdict.holds                        ? "holds"
                                                                        : "does not hold";
  const bool humidity = verdict.unit == "%RH";
  Cell margin = band_cell(verdict.margin, verdict.band, humidity ? 1 : 3);
  Cell chance = figure_cell(verdict.grade ? cases_of_100(verdict.grade->chance) : "–");
  return {words_cell(solved.variant.name),
          words_cell(solved.variant.spaces[verdict.space].name),
          words_cell(verdict.criterion),
          humidity
              ? figure_cell(fixed(100 * verdict.limit, 1) + " %")
              : figure_cell("fRsi " + fixed(verdict.limit, 3) + for_resistance(solved, verdict)),
          words_cell(holds),
          margin,
          words_cell(humidity ? "points" : "fRsi"),
          chance,
          words_cell(verdict.grade ? words_for(verdict.grade->degree) : "–")};
}

Table criteria_table(const Results& results) {
  Table table{
      "Each criterion, at the coldest spot. A margin above zero is on the safe side; its "
      "band is that of grid and solver.",
      {{"variant", 2},
       {"room"},
       {"criterion", 1.4},
       {"limit", 1},
       {"result", 1.1},
       {"margin", 1.2},
       {"in", 0.7},
       {"passed in so many of 100 cases", 1},
       {"risk", 1}},
      {},
      3};
  for (const SolvedVariant& solved : results.variants) {
    for (const Verdict& verdict : solved.verdicts)
      table.rows.push_back(criterion_row(solved, verdict));
  }
  return table;
}

/// Where the published criteria come from, each once.
List bases(const Results& results) {
  std::set<std::string> all;
  for (const SolvedVariant& solved : results.variants) {
    for (const cases::Criterion& each : solved.variant.criteria) {
      if (!each.guide.empty())
        all.insert(fmt::format("{}: {} ({}, {})", each.name, each.guide, each.source,
                               words_for(each.confidence)));
    }
  }
  return {{all.begin(), all.end()}};
}

}  // namespace

Blocks variants_part(const Results& results) {
  Blocks blocks;
  if (results.variants.size() > 1)
    blocks.emplace_back(
        Figure{Figure::Kind::compare, 0,
               "All variants side by side, with the same colours for the same temperatures, each "
               "with its coldest spot and outcome"});
  for (const SolvedVariant& solved : results.variants) {
    blocks.emplace_back(Heading{solved.variant.name, badges_of(solved)});
    blocks.emplace_back(Paragraph{solved.summary});
  }
  if (!results.changes.empty()) {
    blocks.emplace_back(
        Heading{fmt::format("What changes against \"{}\"", results.variants.front().variant.name)});
    List changes;
    for (const Change& change : results.changes) changes.items.push_back(change.words);
    blocks.emplace_back(std::move(changes));
  }
  add(blocks, spots_table(results));
  add(blocks, criteria_table(results));
  if (List guides = bases(results); !guides.items.empty()) blocks.emplace_back(std::move(guides));
  blocks.emplace_back(Paragraph{risk_words()});
  for (std::size_t v = 0; v < results.variants.size(); ++v) {
    const SolvedVariant& solved = results.variants[v];
    blocks.emplace_back(Figure{
        Figure::Kind::field, v,
        fmt::format("Temperatures in the section, {}. {}", solved.variant.name, solved.summary)});
  }
  return blocks;
}

Blocks surface_part(const Results& /*results*/) {
  return {Figure{Figure::Kind::surface, 0,
                 "Temperature along the inside surface, a curve for each variant, with the dew "
                 "point and the mould limit; the numbers stand in surface.csv"}};
}

Blocks readings_part(const Results& results) {
  Table table{"What was read, and what the model says",
              {{"variant", 2}, {"probe", 1.6}, {"read °C", 1}, {"computed °C", 1}, {"result", 1}},
              {},
              2};
  List explained;
  for (const SolvedVariant& solved : results.variants) {
    std::size_t count = 0;
    const std::vector<ComparedReading> readings = compared_readings(solved);
    for (const ComparedReading& reading : readings) {
      count += reading.explained ? 1 : 0;
      table.rows.push_back({words_cell(solved.variant.name), words_cell(reading.probe),
                            band_cell(reading.read, reading.plus_minus, 1),
                            number_cell(reading.computed, 1),
                            words_cell(reading.explained ? "explained" : "not explained",
                                       reading.explained ? Tone::good : Tone::doubtful)});
    }
    if (!readings.empty())
      explained.items.push_back(fmt::format("{}: explains {} of {} readings", solved.variant.name,
                                            count, readings.size()));
  }
  if (table.rows.empty()) return {};
  return {std::move(table), std::move(explained),
          Paragraph{"Computed with one surface resistance for all readings of a variant, between "
                    "that for surface temperature and that for heat flow: the one that explains "
                    "most of them. Variants that are built or aired otherwise were not read and "
                    "are left out. A model that explains the readings is not proved by them; no "
                    "standard covers this comparison."}};
}

}  // namespace quoin::tools::report
