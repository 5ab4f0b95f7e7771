// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/answer/survey/survey_words.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools::report {
namespace {

std::string fit_words(Fit fit) {
  return fit == Fit::good ? "good" : fit == Fit::weak ? "weak" : "refused";
}

Table odds_table(const SurveyFindings& findings) {
  Table table{
      "Explanations beside the best", {{"explanation", 2}, {"odds", 2}, {"agreement %"}}, {}};
  for (const Explained& one : findings.explanations) {
    table.rows.push_back(
        {words_cell(name_of(findings, one.what)), words_cell(odds_words(one.log_odds)),
         number_cell(100 * one.agreement, 0, one.agreement < 0.02 ? Tone::bad : Tone::plain)});
  }
  return table;
}

Cell range_cell(double low, double high, int decimals) {
  return figure_cell(fmt::format("{:.{}f} to {:.{}f}", low, decimals, high, decimals));
}

Table readings_table(const std::string& name, const Explained& best) {
  Table table{fmt::format("Readings beside what \"{}\" expects, 9 in 10", name),
              {{"probe", 2}, {"read °C"}, {"expected"}, {"the reading is", 2}},
              {}};
  for (const ExpectedReading& one : best.readings) {
    const std::string probe =
        one.section.empty() ? one.probe : fmt::format("{}: {}", one.section, one.probe);
    if (!one.left_out.empty()) {
      table.rows.push_back({words_cell(probe), number_cell(one.read, 1), figure_cell("–"),
                            words_cell("left out: " + one.left_out, Tone::doubtful)});
      continue;
    }
    const bool within = one.low <= one.read && one.read <= one.high;
    table.rows.push_back(
        {words_cell(probe), number_cell(one.read, 1), range_cell(one.low, one.high, 1),
         within ? words_cell("as expected")
                : words_cell(one.read < one.low ? "colder" : "warmer", Tone::doubtful)});
  }
  return table;
}

/// What an unknown is called where people read it.
std::string name_of(const Learned& one) {
  if (one.key == one.of) return one.of;
  const std::string key = one.key == "angle"                ? "Rsi"
                          : one.key == "cover"              ? "Rsi behind"
                          : one.key == "ratio"              ? "conductivity"
                          : one.key == "fRsi_design_corner" ? "lowest fRsi"
                          : one.key == "pad"                ? "resistance"
                                                            : one.key;
  return fmt::format("{} of {}", key, one.of);
}

/// The unit of an unknown, or what it is a multiple of.
std::string unit_of(const Learned& one) {
  if (one.key == "ratio") return "× reference";
  if (one.key == "angle" || one.key == "cover") return "× plain surface";
  if (one.key == "pad") return "× stated";
  if (one.unit == "W/(m.K)") return "W/(m·K)";
  if (one.unit == "m2.K/W") return "m²·K/W";
  return one.unit == "1" ? "" : one.unit;
}

Table learned_table(const std::string& name, const Explained& best) {
  constexpr double worth_a_line = 0.1;
  Table table{fmt::format("Learned if it is \"{}\", 9 in 10", name),
              {{"unknown", 2}, {"before"}, {"after"}, {"unit"}},
              {}};
  for (const Learned& one : best.unknowns) {
    if (one.learned < worth_a_line) continue;
    table.rows.push_back({words_cell(name_of(one)), range_cell(one.prior_low, one.prior_high, 2),
                          range_cell(one.low, one.high, 2), words_cell(unit_of(one))});
  }
  return table;
}

std::vector<std::string> remarks_of(const SurveyFindings& findings) {
  std::vector<std::string> remarks;
  for (const QualityRule& rule : findings.quality.rules) {
    if (rule.fit != Fit::good || rule.always_told) remarks.push_back(rule.words);
  }
  for (const FeltAir& air : findings.airs) {
    remarks.push_back(fmt::format("{}: said {:.1f} °C, felt {:.1f} give or take {:.1f} K, from {}",
                                  air.space, air.said, air.felt, 2 * air.uncertainty, air.from));
  }
  return remarks;
}

/// A share of 100 cases; never none and never all of them.
std::string share_words(double chance) { return cases_of_100(chance) + " %"; }

Tone tone_of(double chance) {
  return chance < 0.1 ? Tone::good : chance < 0.5 ? Tone::doubtful : Tone::bad;
}

}  // namespace

Blocks survey_part(const Results& results) {
  if (!results.survey) return {};
  const SurveyFindings& findings = *results.survey;
  Blocks blocks;
  blocks.emplace_back(List{findings.words});
  blocks.emplace_back(
      Heading{fmt::format("Whether they are fit for it: {}", fit_words(findings.quality.fit))});
  if (const auto remarks = remarks_of(findings); !remarks.empty())
    blocks.emplace_back(List{remarks});
  if (findings.explanations.empty()) return blocks;
  blocks.emplace_back(Figure{Figure::Kind::odds, 0,
                             "How many times worse each explanation fits than the best; the "
                             "numbers stand in the table below"});
  add(blocks, odds_table(findings));
  const Explained& best = findings.explanations.front();
  if (best.unknowns.empty()) return blocks;
  const std::string name = name_of(findings, best.what);
  blocks.emplace_back(Figure{Figure::Kind::readings, 0,
                             "What was read beside what the best explanation expects; the numbers "
                             "stand in the table below"});
  add(blocks, readings_table(name, best));
  if (concludes(findings)) add(blocks, learned_table(name, best));
  return blocks;
}

Blocks chance_part(const Results& results) {
  Table table{"",
              {{"variant", 2},
               {"criterion", 1.5},
               {"room"},
               {"broken"},
               {"fabric"},
               {"household"},
               {"safe up to %"}},
              {},
              3};
  std::vector<std::string> words;
  words.emplace_back(
      "Fabric: with the air as stated. Household: with the fabric at its median. Safe up to: the "
      "humidity of the room up to which 9 in 10 cases hold.");
  for (const SolvedVariant& solved : results.variants) {
    for (const Chance& chance : solved.chances) {
      table.rows.push_back(
          {words_cell(solved.variant.name), words_cell(chance.criterion),
           words_cell(solved.variant.spaces[chance.space].name),
           figure_cell(share_words(chance.broken), tone_of(chance.broken)),
           figure_cell(share_words(chance.fabric)), figure_cell(share_words(chance.household)),
           chance.highest_safe_humidity
               ? number_cell(std::floor(100 * *chance.highest_safe_humidity + 1e-9), 0)
               : figure_cell("–")});
      words.push_back(fmt::format("{}: {}", solved.variant.name, chance.words));
    }
  }
  Blocks blocks;
  if (table.rows.empty()) return blocks;
  blocks.emplace_back(
      Figure{Figure::Kind::chances, 0,
             "In how many of 100 cases each variant passes a limit, and how far each input that is "
             "not known moves the margin; the numbers stand in the table below"});
  add(blocks, std::move(table));
  blocks.emplace_back(List{words});
  return blocks;
}

}  // namespace quoin::tools::report
