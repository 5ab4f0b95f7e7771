// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/explain.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <numeric>

#include "solver/survey/quasi_random.hpp"
#include "solver/survey/shuffled.hpp"
#include "tools/answer/survey/design_factor.hpp"
#include "tools/answer/survey/next_reading.hpp"
#include "tools/answer/survey/quality.hpp"
#include "tools/answer/survey/survey_words.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::tools {
namespace {

// Of each hypothesis, and of all of them together: where there are many, each is drawn less often,
// so that a survey of many zones takes not many times as long as one of a few.
constexpr std::size_t most_draws = 4096, fewest_draws = 1024, all_draws = 65536;
constexpr double proposal_degrees = 5.0;
constexpr double few_draws = 100.0;
constexpr double named_from = 10.0;

/// How an unknown is told: what it is called, and whether it is a factor of its reference.
struct Told {
  const char* key = nullptr;  ///< null: it is not told
  const char* unit = "";
  bool factor = true;
};

Told told(UnknownKind kind) {
  switch (kind) {
    case UnknownKind::conductivity:
      return {"conductivity", "W/(m.K)", true};
    case UnknownKind::ratio:
      return {"ratio", "1", true};
    case UnknownKind::surface:
    case UnknownKind::stated_surface:
      return {"Rsi", "m2.K/W", true};
    case UnknownKind::angle:
      return {"angle", "1", true};
    case UnknownKind::cover:
      return {"cover", "1", true};
    case UnknownKind::outside_surface:
      return {"Rse", "m2.K/W", true};
    case UnknownKind::air_now:
      return {"air", "K", false};
    case UnknownKind::air_felt:
      return {"air felt", "K", false};
    case UnknownKind::offset:
      return {"offset", "K", false};
    case UnknownKind::emissivity:
      return {"emissivity", "1", false};
    case UnknownKind::pad:
      return {"pad", "1", true};
  }
  return {};
}

bool may_tell(const Quality& quality, UnknownKind kind) {
  if (kind == UnknownKind::ratio) return quality.may_tell_ratio;
  if (kind == UnknownKind::conductivity) return quality.may_tell_conductivity;
  return true;
}

std::vector<Learned> learned(const SurveyModel& model, const Quality& quality,
                             const InferredExplanation& explanation) {
  constexpr double five = 1.6448536269514722;  // of the normal distribution: 5 and 95 of 100
  std::vector<Learned> all;
  for (std::size_t u = 0; u < model.unknowns.size(); ++u) {
    const SurveyUnknown& unknown = model.unknowns[u];
    const solver::Unknown& known = explanation.each.front().hypothesis.before[u];
    const Told how = told(unknown.kind);
    if (known.sd == 0.0 || !may_tell(quality, unknown.kind)) continue;
    const auto shown = [&](double value) {
      return how.factor ? unknown.reference * std::exp(value) : value;
    };
    const Spread spread = spread_of(over_draws(
        explanation, [&](const Inferred&, std::span<const double> at) { return at[u]; }));
    all.push_back({how.key, unknown.of, how.unit, shown(known.median - five * known.sd),
                   shown(known.median), shown(known.median + five * known.sd), shown(spread.low),
                   shown(spread.median), shown(spread.high),
                   std::max(0.0, 1.0 - spread.sd / known.sd)});
  }
  return all;
}

std::vector<ExpectedReading> in_order_of_file(const SurveyModel& model,
                                              const std::vector<ExpectedReading>& readings) {
  std::vector<std::size_t> order(readings.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return model.readings[a].number < model.readings[b].number;
  });
  std::vector<ExpectedReading> ordered;
  for (const std::size_t k : order) ordered.push_back(readings[k]);
  return ordered;
}

/// Every reading, those left out too, beside what an explanation expects, in the order of the file.
std::vector<ExpectedReading> expected(const SurveyModel& model,
                                      const InferredExplanation& explanation) {
  constexpr std::array<double, 2> ends{0.05, 0.95};
  std::vector<ExpectedReading> all;
  std::size_t counted = 0;
  for (const SurveyedReading& reading : model.readings) {
    ExpectedReading one;
    one.section = model.sections[reading.section].name;
    one.probe = reading.probe;
    one.read = reading.read;
    one.left_out = reading.left_out;
    if (!reading.left_out.empty()) {
      all.push_back(std::move(one));
      continue;
    }
    // Each draw with a disagreement of its own.
    const double scale = std::hypot(reading.deviation, reading.joints);
    std::vector<double> values, weights;
    double mean = 0.0, square = 0.0;
    for (std::size_t e = 0; e < explanation.each.size(); ++e) {
      const Inferred& inferred = explanation.each[e];
      const std::size_t last = inferred.readings.active.size();
      const std::vector<double> off = solver::even_points(inferred.sample.draws.rows, 1);
      const std::vector<std::size_t> order = solver::shuffled(off.size());
      for (std::size_t k = 0; k < inferred.sample.draws.rows; ++k) {
        const double weight = explanation.share[e] * inferred.sample.weights[k];
        if (weight < 1e-8) continue;
        const double common =
            std::exp(solver::Inference{}.scale_spread * inferred.sample.draws(k, last));
        const double value = inferred.sample.predicted(k, counted);
        mean += weight * value;
        square += weight * (value * value + 2.0 * std::pow(common * scale, 2));
        values.push_back(value + common * scale * solver::student_quantile(off[order[k]], 4.0));
        weights.push_back(weight);
      }
    }
    const auto quantiles = solver::weighted_quantiles(values, weights, ends);
    one.expected = mean;
    one.low = quantiles[0];
    one.high = quantiles[1];
    one.pull = (one.read - mean) / std::sqrt(std::max(1e-12, square - mean * mean));
    all.push_back(std::move(one));
    ++counted;
  }
  return in_order_of_file(model, all);
}

double agreement_of(const SurveyModel& model, const InferredExplanation& explanation) {
  double sum = 0.0;
  for (std::size_t e = 0; e < explanation.each.size(); ++e) {
    if (explanation.share[e] < 1e-3) continue;
    const Inferred& one = explanation.each[e];
    sum += explanation.share[e] * solver::agreement(inference_of(model, one.readings), one.sample);
  }
  return std::min(1.0, sum);
}

Explained explained(const SurveyModel& model, const Quality& quality, DesignFactors& design,
                    const InferredExplanation& explanation, double best) {
  Explained result;
  result.what = explanation.what;
  result.log_odds = explanation.log_evidence - best;
  result.odds_error = explanation.evidence_error;
  result.effective = explanation.effective;
  result.agreement = agreement_of(model, explanation);
  if (explanation.effective < few_draws) return result;  // no intervals from so few
  result.unknowns = learned(model, quality, explanation);
  if (quality.may_tell_conductivity) {
    for (Learned& factor : design.learned(model, explanation))
      result.unknowns.push_back(std::move(factor));
  }
  result.readings = expected(model, explanation);
  return result;
}

/// How often each hypothesis is drawn: a power of two, which fills space evenly. What is about a
/// zone is tried at three extents of it.
std::size_t draws_of_each(const std::vector<cases::Explanation>& explanations) {
  std::size_t hypotheses = 0;
  for (const cases::Explanation& one : explanations) hypotheses += is_about_zone(one) ? 3 : 1;
  return std::clamp(std::bit_floor(all_draws / hypotheses), fewest_draws, most_draws);
}

/// What every explanation makes of the readings, the best first, from fields that are exact enough
/// where it matters. Says in the model how exact they are.
std::vector<InferredExplanation> inferred_all(SurveyModel& model, const Quality& quality,
                                              const solver::LinearOptions& options) {
  const std::vector<cases::Explanation> wanted = explanations_of(model, quality);
  const solver::StandardDraws standard(draws_of_each(wanted), model.unknowns.size() + 1,
                                       proposal_degrees);
  std::vector<InferredExplanation> all;
  double error = 0.0;
  do {
    all.clear();
    for (const cases::Explanation& one : wanted) all.push_back(inferred(model, one, standard));
    error = error_at_modes(model, all, options);
  } while (error > wanted_basis_error && solve_more(model, options));
  model.basis_error = std::max(model.basis_error, error);
  double best = all.front().log_evidence;
  for (const InferredExplanation& one : all) best = std::max(best, one.log_evidence);
  for (InferredExplanation& one : all) refine(model, standard, best, one);
  std::stable_sort(all.begin(), all.end(),
                   [](const InferredExplanation& a, const InferredExplanation& b) {
                     return a.log_evidence > b.log_evidence;
                   });
  return all;
}

}  // namespace

Spread spread_of(const Weighted& weighted) {
  constexpr std::array<double, 3> at{0.05, 0.5, 0.95};
  const auto quantiles = solver::weighted_quantiles(weighted.values, weighted.weights, at);
  double sum = 0.0, mean = 0.0, square = 0.0;
  for (std::size_t k = 0; k < weighted.values.size(); ++k) {
    sum += weighted.weights[k];
    mean += weighted.weights[k] * weighted.values[k];
  }
  mean /= sum;
  for (std::size_t k = 0; k < weighted.values.size(); ++k)
    square += weighted.weights[k] * std::pow(weighted.values[k] - mean, 2);
  return {quantiles[0], quantiles[1], quantiles[2], std::sqrt(square / sum)};
}

WorkedSurvey worked_survey(const std::vector<HouseSection>& house, const cases::Survey& survey,
                           const solver::LinearOptions& options) {
  WorkedSurvey worked;
  worked.model = survey_model(house, survey, options);
  const SurveyModel& model = worked.model;
  SurveyFindings& findings = worked.findings;
  findings.quality = quality_of(model);
  findings.airs = felt_airs_of(model);
  if (findings.quality.fit != Fit::refused) {
    worked.inferred = inferred_all(worked.model, findings.quality, options);
    DesignFactors design(model, options);
    findings.solves = design.solves();
    const double best = worked.inferred.front().log_evidence;
    for (const InferredExplanation& one : worked.inferred)
      findings.explanations.push_back(explained(model, findings.quality, design, one, best));
    double lowest = 1e9;
    for (std::size_t e = 1; e < worked.inferred.size(); ++e) {
      const double odds = lowest_log_odds(model, worked.inferred.front(), worked.inferred[e]);
      lowest = std::min(lowest, odds);
      if (worked.inferred[e].what.kind == cases::ExplanationKind::as_drawn)
        findings.lowest_odds_to_drawn = std::exp(odds);
    }
    findings.lowest_odds = worked.inferred.size() > 1 ? std::exp(lowest) : 1.0;
    findings.named = findings.quality.fit == Fit::good && findings.quality.may_name &&
                     worked.inferred.size() > 1 && findings.lowest_odds >= named_from &&
                     concludes(findings);
    if (concludes(findings)) findings.next = next_steps(worked);
  }
  findings.basis_error = model.basis_error;
  findings.solves += model.solves;
  findings.words = survey_words(model, findings);
  return worked;
}

}  // namespace quoin::tools
