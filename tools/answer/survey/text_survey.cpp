// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/text_survey.hpp"

#include <fmt/format.h>

#include <cmath>

#include "tools/answer/survey/chance_words.hpp"
#include "tools/answer/survey/survey_words.hpp"

namespace quoin::tools {
namespace {

Tone tone_of(Fit fit) {
  return fit == Fit::good ? Tone::good : fit == Fit::weak ? Tone::doubtful : Tone::bad;
}

std::string odds_table(const SurveyFindings& findings, const TextStyle& style) {
  TextTable table("llr");
  table.add({{"explanation"}, {"beside the best"}, {"agreement"}});
  for (const Explained& one : findings.explanations)
    table.add({{name_of(one.what)},
               {odds_words(one.log_odds)},
               {fmt::format("{:.0f} %", 100 * one.agreement),
                one.agreement < 0.02 ? Tone::bad : Tone::plain}});
  return table.text(style);
}

std::string learned_table(const Explained& best, const TextStyle& style) {
  TextTable table("lrrl");
  table.add({{fmt::format("learned under \"{}\"", name_of(best.what))},
             {"before"},
             {"after (9 in 10)"},
             {""}});
  for (const Learned& one : best.unknowns) {
    constexpr double worth_a_line = 0.1;
    if (one.learned < worth_a_line) continue;
    table.add({{one.key == one.of ? one.of : fmt::format("{} of {}", one.key, one.of)},
               {fmt::format("{:.2f} to {:.2f}", one.prior_low, one.prior_high)},
               {fmt::format("{:.2f} to {:.2f}", one.low, one.high)},
               {one.unit == "1" ? "" : one.unit}});
  }
  return table.text(style);
}

std::string readings_table(const Explained& best, const TextStyle& style) {
  TextTable table("lrrl");
  table.add({{"probe"}, {"read °C"}, {"expected (9 in 10)"}, {""}});
  for (const ExpectedReading& one : best.readings) {
    const std::string probe = one.section.empty() ? one.probe : one.section + ": " + one.probe;
    if (!one.left_out.empty()) {
      table.add({{probe}, {fmt::format("{:.1f}", one.read)}, {"left out"}, {}});
      continue;
    }
    const bool within = one.low <= one.read && one.read <= one.high;
    table.add({{probe},
               {fmt::format("{:.1f}", one.read)},
               {fmt::format("{:.1f} to {:.1f}", one.low, one.high)},
               within ? TextTable::Cell{"", Tone::plain}
                      : TextTable::Cell{one.read < one.low ? "colder" : "warmer", Tone::doubtful}});
  }
  return table.text(style);
}

std::string rules_text(const Quality& quality, const TextStyle& style) {
  std::string text;
  for (const QualityRule& rule : quality.rules) {
    if (rule.fit != Fit::good || rule.rule == "readings left out")
      text += paragraph(rule.words, 2, style);
  }
  return text;
}

std::string airs_text(const SurveyFindings& findings, const TextStyle& style) {
  std::string text;
  for (const FeltAir& air : findings.airs) {
    text += paragraph(fmt::format("{}: said {:.1f} °C, felt {:.1f} give or take {:.1f} K, from {}",
                                  air.space, air.said, air.felt, 2 * air.uncertainty, air.from),
                      2, style);
  }
  return text;
}

}  // namespace

std::string survey_text(const SurveyFindings& findings, const TextStyle& style) {
  std::string text = "\n" + toned("What the readings tell", Tone::strong, style) + "\n";
  for (const std::string& sentence : findings.words) text += paragraph(sentence, 2, style);
  text += "\n" +
          toned(fmt::format("Whether they are fit for it: {}",
                            findings.quality.fit == Fit::good   ? "good"
                            : findings.quality.fit == Fit::weak ? "weak"
                                                                : "refused"),
                tone_of(findings.quality.fit), style) +
          "\n" + rules_text(findings.quality, style) + airs_text(findings, style);
  if (findings.explanations.empty()) return text;
  text += "\n" + odds_table(findings, style);
  const Explained& best = findings.explanations.front();
  if (best.unknowns.empty()) return text;
  return text + "\n" + readings_table(best, style) + "\n" + learned_table(best, style);
}

std::string chance_text(const std::vector<NamedChances>& variants, const TextStyle& style) {
  TextTable table("llrrrr");
  table.add({{"variant"}, {"criterion"}, {"broken"}, {"fabric"}, {"household"}, {"safe to"}});
  const auto percent = [](double chance) {
    return chance < 0.01   ? std::string("< 1 %")
           : chance > 0.99 ? std::string("> 99 %")
                           : fmt::format("{:.0f} %", 100 * chance);
  };
  bool any = false;
  for (const NamedChances& variant : variants) {
    for (const Chance& chance : *variant.chances) {
      any = true;
      const Tone tone = chance.broken < 0.1   ? Tone::good
                        : chance.broken < 0.5 ? Tone::doubtful
                                              : Tone::bad;
      table.add(
          {{variant.variant},
           {chance.criterion},
           {percent(chance.broken), tone},
           {percent(chance.fabric)},
           {percent(chance.household)},
           {chance.highest_safe_humidity
                ? fmt::format("{:.0f} %", std::floor(100 * *chance.highest_safe_humidity + 1e-9))
                : ""}});
    }
  }
  if (!any) return "";
  std::string text = "\n" +
                     toned("How often each criterion would be broken, of 100 cases like this",
                           Tone::strong, style) +
                     "\n" + table.text(style);
  return text +
         paragraph(
             "fabric: with the air as stated. household: with the fabric at its median. safe "
             "to: humidity of the room up to which 9 in 10 cases hold.",
             2, style);
}

}  // namespace quoin::tools
