// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "tools/answer/results/survey_findings.hpp"
#include "tools/answer/survey/survey_model.hpp"

namespace quoin::tools {

/// One hypothesis after reading.
struct Inferred {
  Hypothesis hypothesis;
  solver::ReadingModel readings;
  solver::Mode mode;
  solver::Sample sample;
};

/// One explanation after reading: its hypotheses, which differ in how far a zone reaches, each
/// with what it counts for among them.
struct InferredExplanation {
  cases::Explanation what;
  std::vector<Inferred> each;
  std::vector<double> share;    ///< of the evidence; sum to one
  double log_evidence = 0.0;    ///< of the mean over the hypotheses
  double evidence_error = 0.0;  ///< sd of it by sampling
  double effective = 0.0;
};

/// Whether an explanation is about a zone, which is then tried at its extents.
[[nodiscard]] bool is_about_zone(const cases::Explanation& explanation);

/// Those that a survey asks for, or else all that apply to it.
[[nodiscard]] std::vector<cases::Explanation> explanations_of(const SurveyModel& model,
                                                              const Quality& quality);

/// What readings tell under one explanation, from a quarter of the draws.
[[nodiscard]] InferredExplanation inferred(const SurveyModel& model,
                                           const cases::Explanation& explanation,
                                           const solver::StandardDraws& standard);

/// How far reduced fields are from full ones at the modes of all explanations that may count, K.
/// Throws: SolveError.
[[nodiscard]] double error_at_modes(const SurveyModel& model,
                                    const std::vector<InferredExplanation>& explanations,
                                    const solver::LinearOptions& options);

/// The same from all draws, where more of them can move what is told. `best`: logarithm of the
/// evidence of the best explanation.
void refine(const SurveyModel& model, const solver::StandardDraws& standard, double best,
            InferredExplanation& explanation);

/// The values of an unknown over all draws of an explanation, with the weights of the draws.
struct Weighted {
  std::vector<double> values;
  std::vector<double> weights;
};

/// A function of the unknowns over all draws of an explanation.
[[nodiscard]] Weighted over_draws(
    const InferredExplanation& explanation,
    const std::function<double(const Inferred&, std::span<const double> unknowns)>& function);

/// One draw: the hypothesis it is from and the unknowns.
struct Drawn {
  const Inferred* from = nullptr;
  std::vector<double> unknowns;
};

/// Draws of an explanation that all count the same, evenly taken from its weighted ones.
[[nodiscard]] std::vector<Drawn> resampled(const InferredExplanation& explanation,
                                           std::size_t count);

/// The lowest odds of one explanation to another whichever median or sd of what is known beforehand
/// is changed by a half, one at a time; natural logarithm. From the draws of both, weighed anew.
[[nodiscard]] double lowest_log_odds(const SurveyModel& model, const InferredExplanation& best,
                                     const InferredExplanation& other);

}  // namespace quoin::tools
