// SPDX-License-Identifier: Apache-2.0
#include "tools/html_verdicts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "tools/draw/canvas/xml.hpp"
#include "tools/html_parts.hpp"
#include "tools/judge.hpp"
#include "tools/places.hpp"
#include "tools/readings.hpp"
#include "tools/text_report.hpp"
#include "tools/text_words.hpp"

namespace quoin::tools {
namespace {

/// The short verdict as a coloured mark; the word says it without the colour.
std::string mark(const ShortVerdict& verdict) {
  const std::string_view tone = verdict.tone == Tone::good       ? "good"
                                : verdict.tone == Tone::bad      ? "bad"
                                : verdict.tone == Tone::doubtful ? "doubtful"
                                                                 : "plain";
  return fmt::format("<span class=\"mark {}\">{}</span>", tone, escaped(verdict.words));
}

/// The airs whose coldest spots are told: rooms, or whatever has some where there is no room.
std::vector<const solver::AirSurface*> told_airs(const SolvedVariant& solved) {
  std::vector<const solver::AirSurface*> rooms;
  for (const solver::AirSurface& surface : solved.surface.airs) {
    if (solved.variant.spaces[surface.air].is == cases::SpaceKind::inside)
      rooms.push_back(&surface);
  }
  if (!rooms.empty()) return rooms;
  for (const solver::AirSurface& surface : solved.surface.airs) rooms.push_back(&surface);
  return rooms;
}

HtmlRow spot_row(const SolvedVariant& solved, const solver::AirSurface& surface) {
  const solver::Spot& spot = surface.coldest;
  const AirHumidity* air = humidity_of(solved, surface.air);
  const double unknown = std::nan("");
  const double band = std::max(std::ceil(spot.factor.band * 1000.0), 1.0) / 1000.0;
  return {text_cell(solved.variant.name),
          text_cell(solved.variant.spaces[surface.air].name),
          text_cell(words_for(solved, spot)),
          number_cell(spot.temperature.value, 1),
          std::isfinite(spot.factor.value)
              ? digits_cell(fmt::format("{:.3f} ± {:.3f}", spot.factor.value, band))
              : number_cell(unknown, 0),
          number_cell(air != nullptr ? air->factor_needed : unknown, 3),
          number_cell(air != nullptr ? air->surface_humidity * 100 : unknown, 0),
          number_cell(air != nullptr ? std::floor(air->highest_safe_humidity * 100) : unknown, 0),
          {mark(short_verdict(solved, surface.air)), false}};
}

std::string margin_words(const Verdict& verdict) {
  return verdict.unit == "%RH"
             ? fmt::format("{:+.1f} ± {:.1f} points", verdict.margin, std::max(verdict.band, 0.05))
             : fmt::format("{:+.3f} ± {:.3f}", verdict.margin, verdict.band);
}

/// Where a criterion is published: its guide and source; empty for the author's own.
std::string basis_of(const SolvedVariant& solved, const Verdict& verdict) {
  for (const cases::Criterion& each : solved.variant.criteria) {
    if (each.name == verdict.criterion && !each.guide.empty())
      return fmt::format("{} ({}, {})", each.guide, each.source, words_for(each.confidence));
  }
  return "";
}

HtmlRow criterion_row(const SolvedVariant& solved, const Verdict& verdict) {
  const std::string_view holds = !verdict.gate.empty() && verdict.holds ? "not before it is dry"
                                 : verdict.holds                        ? "holds"
                                                                        : "does not hold";
  return {text_cell(solved.variant.name),
          text_cell(solved.variant.spaces[verdict.space].name),
          text_cell(verdict.criterion),
          text_cell(holds),
          digits_cell(margin_words(verdict)),
          text_cell(words_for(verdict.certainty)),
          text_cell(verdict.grade ? words_for(verdict.grade->degree) : "–")};
}

/// Where the published criteria come from, each once.
std::string bases(const Results& results) {
  std::set<std::string> all;
  for (const SolvedVariant& solved : results.variants) {
    for (const Verdict& verdict : solved.verdicts) {
      if (const std::string basis = basis_of(solved, verdict); !basis.empty())
        all.insert(fmt::format("{}: {}", verdict.criterion, basis));
    }
  }
  std::string items;
  for (const std::string& basis : all) items += html_item(basis);
  return html_list(items);
}

/// A column for each way of measuring.
std::string psi_table(const Results& results) {
  std::vector<std::string> ways;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::LinearTransmittance& psi : solved.psi) {
      std::string way = words_for(psi);
      if (std::find(ways.begin(), ways.end(), way) == ways.end()) ways.push_back(std::move(way));
    }
  }
  std::vector<HtmlRow> rows;
  for (const SolvedVariant& solved : results.variants) {
    if (solved.psi.empty()) continue;
    HtmlRow row{text_cell(solved.variant.name)};
    for (const std::string& way : ways) {
      const auto psi = std::find_if(solved.psi.begin(), solved.psi.end(),
                                    [&](const auto& each) { return words_for(each) == way; });
      row.push_back(
          digits_cell(psi == solved.psi.end()
                          ? "–"
                          : fmt::format("{:.4f} ± {:.4f}", psi->value.value, psi->value.band)));
    }
    rows.push_back(std::move(row));
  }
  ways.insert(ways.begin(), "variant");
  return html_table("Linear thermal transmittance ψ, W/(m·K)", ways, rows);
}

}  // namespace

std::string html_verdicts(const Results& results) {
  std::string text;
  for (const SolvedVariant& solved : results.variants) {
    text += fmt::format("<h3>{}", escaped(solved.variant.name));
    for (const solver::AirSurface* air : told_airs(solved))
      text += " " + mark(short_verdict(solved, air->air));
    text += "</h3>\n" + html_paragraph(solved.summary);
  }
  return text;
}

std::string html_side_by_side(const Results& results) {
  std::vector<HtmlRow> spots, criteria;
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::AirSurface* surface : told_airs(solved))
      spots.push_back(spot_row(solved, *surface));
    for (const Verdict& verdict : solved.verdicts)
      criteria.push_back(criterion_row(solved, verdict));
  }
  std::string changes;
  for (const Change& change : results.changes) changes += html_item(change.words);
  return html_table("The coldest spots",
                    {"variant", "room", "coldest spot", "°C", "fRsi", "fRsi needed here",
                     "humidity there %", "safe up to % in the room", "verdict"},
                    spots) +
         (changes.empty() ? "" : "<h3>What changes</h3>\n" + html_list(changes)) +
         html_table("Each criterion, at the coldest spot. A margin above zero is on the safe side.",
                    {"variant", "room", "criterion", "", "margin", "certainty", "risk"}, criteria) +
         bases(results);
}

std::string html_readings(const Results& results) {
  std::vector<HtmlRow> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const ComparedReading& reading : compared_readings(solved)) {
      const auto [low, high] = std::minmax(reading.with_surface, reading.with_heat);
      rows.push_back({text_cell(solved.variant.name), text_cell(reading.probe),
                      digits_cell(fmt::format("{:.1f} ± {:.1f}", reading.read, reading.plus_minus)),
                      digits_cell(fmt::format("{:.1f} to {:.1f}", low, high)),
                      text_cell(reading.explained ? "explained" : "not explained")});
    }
  }
  if (rows.empty()) return "";
  return html_table("What was read, and what the model says",
                    {"variant", "probe", "read °C", "computed °C", ""}, rows) +
         html_paragraph(
             "Computed with the surface resistances for surface temperature and for heat flow: "
             "that "
             "of the day lies between, as a rule. A model that explains the readings is not proved "
             "by them; no standard covers this comparison.");
}

std::string html_heat(const Results& results) {
  std::vector<HtmlRow> couplings, plain;
  for (const SolvedVariant& solved : results.variants) {
    const auto& spaces = solved.variant.spaces;
    const HtmlCell name = text_cell(solved.variant.name);
    for (const solver::Coupling& coupling : solved.heat.couplings) {
      couplings.push_back(
          {name,
           text_cell(fmt::format("{} – {}", spaces[coupling.a].name, spaces[coupling.b].name)),
           number_cell(coupling.value, 4), number_cell(coupling.low, 4),
           number_cell(coupling.high, 4)});
    }
    for (const solver::PlainPart& part : solved.plain) {
      plain.push_back({name, text_cell(part.name), number_cell(part.transmittance, 3),
                       number_cell(part.surface_factor, 3),
                       number_cell(part.surface_temperature, 1)});
    }
  }
  return html_table("Thermal coupling L2D, with its bounds, W/(m·K)",
                    {"variant", "between", "L2D", "at least", "at most"}, couplings) +
         psi_table(results) +
         html_table("Away from the detail", {"variant", "part", "U W/(m²·K)", "fRsi", "surface °C"},
                    plain);
}

}  // namespace quoin::tools
