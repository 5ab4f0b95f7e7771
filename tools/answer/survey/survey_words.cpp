// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/survey_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quoin::tools {
namespace {

using cases::ExplanationKind;

constexpr double few_draws = 100.0, least_agreement = 0.02;

/// To one figure: 37 is 40, 2.4 is 2. Below 1.5 one more: 1.4.
std::string one_figure(double odds) {
  if (odds < 1.95) return fmt::format("{:.1f}", odds);
  const double power = std::pow(10.0, std::floor(std::log10(odds)));
  return fmt::format("{:.0f}", std::round(odds / power) * power);
}

const Learned* find(const Explained& explanation, const std::string& key, const std::string& of) {
  for (const Learned& learned : explanation.unknowns) {
    if (learned.key == key && learned.of == of) return &learned;
  }
  return nullptr;
}

std::string times(double low, double high) { return fmt::format("{:.1f} to {:.1f}", low, high); }

/// What may lie behind an explanation, and how to tell.
std::string meaning(const Explained& best) {
  const Learned* ratio = find(best, "ratio", best.what.of);
  const std::string much =
      ratio == nullptr ? ""
                       : fmt::format(" It conducts {} times as well as the reference (9 in 10).",
                                     times(ratio->low, ratio->high));
  switch (best.what.kind) {
    case ExplanationKind::conducts_better:
    case ExplanationKind::better_and_covered:
      return much +
             " Wet masonry does that; so does thinner, denser or mended masonry, or insulation "
             "missing there. Temperatures cannot tell these apart; a drilled sample can.";
    case ExplanationKind::conducts_less:
      return much + " A void, a lining or another stone does that.";
    case ExplanationKind::covered:
      return " Furniture, curtains or still air in front of a wall do that.";
    case ExplanationKind::thermometer_off:
      return " Hold the thermometers side by side in one place, or in melting ice.";
    case ExplanationKind::colder_outside:
      return " A log of the air outside would tell.";
    case ExplanationKind::as_drawn:
      return "";
  }
  return "";
}

/// The section as drawn is the best: what would look the same.
std::string nothing_else(const SurveyFindings& findings) {
  std::string words = "The readings need no other explanation than the section as drawn.";
  for (const Explained& one : findings.explanations) {
    if (one.what.kind != ExplanationKind::conducts_better) continue;
    if (const Learned* ratio = find(one, "ratio", one.what.of))
      words += fmt::format(
          " That does not show that the wall is dry: '{}' conducting up to {:.1f} times as well "
          "would look the same.",
          one.what.of, ratio->high);
  }
  return words;
}

/// The reading that lies furthest off; null: none is told.
const ExpectedReading* worst_of(const Explained& best) {
  const ExpectedReading* worst = nullptr;
  for (const ExpectedReading& reading : best.readings) {
    if (reading.left_out.empty() &&
        (worst == nullptr || std::abs(reading.pull) > std::abs(worst->pull)))
      worst = &reading;
  }
  return worst;
}

std::string farthest(const Explained& best) {
  const ExpectedReading* worst = worst_of(best);
  if (worst == nullptr) return "";
  const double off = worst->read - worst->expected;
  return fmt::format(" Farthest off: {}, {:.1f} K {} than the best of them expects.", worst->probe,
                     std::abs(off), off < 0 ? "colder" : "warmer");
}

/// What to do where nothing is concluded: another measurement would rest on the same readings.
std::string read_again(const Explained& best) {
  const ExpectedReading* worst = worst_of(best);
  return fmt::format(
      "Read {} again before anything else is measured, and look whether readings were "
      "written to the wrong probes.",
      worst == nullptr ? "the same spots" : worst->probe);
}

std::string favoured(const SurveyFindings& findings) {
  const Explained& best = findings.explanations[0];
  const Explained* drawn = nullptr;
  for (const Explained& one : findings.explanations) {
    if (one.what.kind == ExplanationKind::as_drawn) drawn = &one;
  }
  const double odds = drawn != nullptr ? std::exp(-drawn->log_odds) : 1.0;
  if (findings.named) {
    return fmt::format(
               "The readings fit *{}* {} better than the section as drawn (at least {} whatever "
               "is assumed).",
               name_of(findings, best.what),
               odds > 100.0 ? "more than 100 times"
                            : fmt::format("about {} times", one_figure(odds)),
               findings.lowest_odds_to_drawn > 100.0 ? "100"
                                                     : one_figure(findings.lowest_odds_to_drawn)) +
           meaning(best);
  }
  const Explained& second = findings.explanations[1];
  const std::string also =
      second.what.kind == ExplanationKind::as_drawn || second.log_odds < -std::log(100.0)
          ? ""
          : fmt::format(" and than *{}* ({} to 1)", name_of(findings, second.what),
                        one_figure(std::exp(-second.log_odds)));
  return fmt::format(
             "The readings fit *{}* better than the section as drawn ({} to 1){}, but not so much "
             "that it may be relied on{}.",
             name_of(findings, best.what), odds > 100.0 ? "more than 100" : one_figure(odds), also,
             findings.lowest_odds < far_better
                 ? fmt::format(": other assumptions bring it down to {} to 1",
                               one_figure(std::max(1.0, findings.lowest_odds)))
                 : "") +
         meaning(best);
}

std::string undecided(const SurveyFindings& findings) {
  const Explained& best = findings.explanations[0];
  const Explained& second = findings.explanations[1];
  return fmt::format(
      "The readings fit *{}* and *{}* about equally well ({} to 1): they cannot tell which.",
      name_of(findings, best.what), name_of(findings, second.what),
      one_figure(std::exp(-second.log_odds)));
}

std::string verdict(const SurveyFindings& findings) {
  const Explained& best = findings.explanations[0];
  if (best.effective < few_draws)
    return "No ranges could be worked out from these readings. Nothing is concluded.";
  if (best.agreement < least_agreement)
    return "None of these explains the readings. Nothing is concluded." + farthest(best);
  if (findings.explanations.size() == 1) return nothing_else(findings);
  if (best.what.kind == ExplanationKind::as_drawn) {
    const double odds = std::exp(-findings.explanations[1].log_odds);
    return odds < cannot_tell &&
                   findings.explanations[1].what.kind != ExplanationKind::conducts_less
               ? nothing_else(findings) + ' ' + undecided(findings)
               : nothing_else(findings);
  }
  if (std::exp(-findings.explanations[1].log_odds) < cannot_tell) return undecided(findings);
  return favoured(findings);
}

}  // namespace

std::string kind_of(ExplanationKind kind) {
  switch (kind) {
    case ExplanationKind::as_drawn:
      return "as drawn";
    case ExplanationKind::conducts_better:
      return "conducts better";
    case ExplanationKind::conducts_less:
      return "conducts less";
    case ExplanationKind::covered:
      return "covered";
    case ExplanationKind::better_and_covered:
      return "both";
    case ExplanationKind::thermometer_off:
      return "thermometer off";
    case ExplanationKind::colder_outside:
      return "colder outside";
  }
  return "";
}

std::string name_of(const cases::Explanation& explanation) {
  switch (explanation.kind) {
    case ExplanationKind::as_drawn:
      return "as drawn";
    case ExplanationKind::better_and_covered:
      return fmt::format("{} conducts better and {} is covered", explanation.of, explanation.also);
    case ExplanationKind::covered:
      return fmt::format("{} is covered", explanation.of);
    case ExplanationKind::thermometer_off:
      return fmt::format("{} is off", explanation.of);
    case ExplanationKind::colder_outside:
      return fmt::format("{} was colder before", explanation.of);
    default:
      return explanation.of + ' ' + kind_of(explanation.kind);
  }
}

std::string name_of(const SurveyFindings& findings, const cases::Explanation& explanation) {
  if (!findings.quality.water_may_evaporate) return name_of(explanation);
  if (explanation.kind == ExplanationKind::conducts_better)
    return name_of(explanation) + ", or water evaporates";
  if (explanation.kind == ExplanationKind::better_and_covered)
    return fmt::format("{} conducts better, or water evaporates, and {} is covered", explanation.of,
                       explanation.also);
  return name_of(explanation);
}

bool concludes(const SurveyFindings& findings) {
  return !findings.explanations.empty() && findings.explanations.front().effective >= few_draws &&
         findings.explanations.front().agreement >= least_agreement;
}

bool bears_on_chance(const SurveyFindings& findings) {
  return concludes(findings) && findings.quality.may_tell_conductivity;
}

std::string odds_words(double log_odds_to_best) {
  const double odds = std::exp(-log_odds_to_best);
  if (odds < 1.05) return "fits best";
  if (odds < cannot_tell) return fmt::format("{} to 1, cannot be told from it", one_figure(odds));
  if (odds < far_better) return fmt::format("the best fits better, {} to 1", one_figure(odds));
  if (odds > 100.0) return "the best fits more than 100 times better";
  return fmt::format("the best fits {} times better", one_figure(odds));
}

std::string narrowing_words(const std::string& place, const Learned& now, double low, double high) {
  // One figure more where a narrower range would read like the range of now.
  const auto rounds_alike = [&](int figures) {
    const auto shown = [&](double value) { return fmt::format("{:.{}f}", value, figures); };
    return shown(low) == shown(now.low) && shown(high) == shown(now.high);
  };
  int digits = now.key == "ratio" ? 1 : 2;
  if (rounds_alike(digits)) ++digits;
  return fmt::format(
      "{}: the range {:.{}f} to {:.{}f}{} of {} would narrow to about {:.{}f} to "
      "{:.{}f}.",
      place, now.low, digits, now.high, digits, now.key == "ratio" ? "" : " W/(m·K)", now.of, low,
      digits, high, digits);
}

std::string apart_words(const std::string& probe, const std::string& one, double expected,
                        const std::string& other, double also_expected) {
  return fmt::format("Read {} next: if *{}* there should be {:.1f} °C, if *{}* {:.1f} °C.", probe,
                     one, expected, other, also_expected);
}

std::string first_step(const SurveyFindings& findings) {
  if (!concludes(findings)) return "";
  const Explained& best = findings.explanations.front();
  if (findings.explanations.size() > 1 &&
      std::exp(-findings.explanations[1].log_odds) < cannot_tell)
    return "";
  switch (best.what.kind) {
    case ExplanationKind::conducts_better:
    case ExplanationKind::better_and_covered:
      return fmt::format(
          "Before anything is built, have a sample of {} drilled: by the readings it conducts "
          "better than drawn, as wet masonry does. If the sample is wet, keep water out and let "
          "the masonry dry first.",
          best.what.of);
    case ExplanationKind::covered:
      return findings.named
                 ? fmt::format(
                       "Clear the wall at {}, or leave air behind what stands there: the readings "
                       "fit a covered surface.",
                       best.what.of)
                 : "";
    default:
      return "";
  }
}

std::vector<std::string> survey_words(const SurveyModel& model, const SurveyFindings& findings) {
  std::vector<std::string> words;
  if (model.readings.empty()) return {"Nothing was read."};
  if (findings.quality.fit == Fit::refused) {
    words.emplace_back("These readings cannot tell what is wrong:");
    for (const QualityRule& rule : findings.quality.rules) {
      if (rule.fit == Fit::refused) words.push_back(rule.words);
    }
    words.emplace_back(within_no_standard);
    return words;
  }
  words.push_back(verdict(findings));
  if (findings.quality.fit == Fit::weak)
    words.emplace_back("The readings are weak, so nothing is named as the cause: see the rules.");
  if (!concludes(findings)) {
    words.push_back(read_again(findings.explanations.front()));
  } else if (!findings.next.empty()) {
    words.push_back(findings.next.front().words);
  } else {
    words.emplace_back("No single measurement more would narrow this by a tenth.");
  }
  if (findings.basis_error > 0.02)
    words.push_back(fmt::format("The fields these ranges rest on are exact to {:.2f} K only.",
                                findings.basis_error));
  words.emplace_back(within_no_standard);
  return words;
}

}  // namespace quoin::tools
