// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/survey_findings.hpp"
#include "tools/answer/survey/survey_model.hpp"

/// Every sentence that is said of readings: renderers only set them.
namespace quoin::tools {

inline constexpr const char* within_no_standard =
    "What readings tell is within no standard: it rests on the assumptions listed.";

/// Odds up to which the readings cannot tell one explanation from another, and from which one fits
/// far better.
inline constexpr double cannot_tell = 3.0, far_better = 10.0;

/// "corner masonry conducts better", "as drawn".
[[nodiscard]] std::string name_of(const cases::Explanation& explanation);

/// The same as this survey has to call it: where water may evaporate, a zone that seems to conduct
/// better "conducts better, or water evaporates".
[[nodiscard]] std::string name_of(const SurveyFindings& findings,
                                  const cases::Explanation& explanation);

/// Whether anything may be concluded from the readings: the best explanation agrees with them, and
/// enough draws follow it.
[[nodiscard]] bool concludes(const SurveyFindings& findings);

/// Whether chances rest on the readings; else they are told as if nothing had been read.
[[nodiscard]] bool bears_on_chance(const SurveyFindings& findings);

/// "as drawn", "conducts better", ...: as the case file has it.
[[nodiscard]] std::string kind_of(cases::ExplanationKind kind);

/// How an explanation compares with the best: odds in words, to one figure.
[[nodiscard]] std::string odds_words(double log_odds_to_best);

/// What a survey tells, in a few sentences.
[[nodiscard]] std::vector<std::string> survey_words(const SurveyModel& model,
                                                    const SurveyFindings& findings);

/// What the best explanation asks for before anything is built: a sample where masonry may be wet,
/// a wall cleared of what covers it. Empty: nothing, or it is not told from the others.
[[nodiscard]] std::string first_step(const SurveyFindings& findings);

/// "the same spots on another cold night: the range 1.3 to 2.3 would narrow to about 1.4 to 2.1."
[[nodiscard]] std::string narrowing_words(const std::string& place, const Learned& now, double low,
                                          double high);

/// Where two explanations, by their names, expect different readings, degC.
[[nodiscard]] std::string apart_words(const std::string& probe, const std::string& one,
                                      double expected, const std::string& other,
                                      double also_expected);

}  // namespace quoin::tools
