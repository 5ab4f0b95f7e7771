// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/hypotheses.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>

#include "tools/answer/survey/drawn_again.hpp"

namespace quoin::tools {
namespace {

using cases::Explanation;
using cases::ExplanationKind;

bool overlap(const cases::SurveyBox& a, const cases::SurveyBox& b) {
  return a.x_from < b.x_to && b.x_from < a.x_to && a.y_from < b.y_to && b.y_from < a.y_to;
}

/// Whether a zone reaches the surface that a stretch covers.
bool overlap(const cases::Zone& zone, const cases::Stretch& stretch) {
  constexpr double plaster = 0.06;  // m between masonry and the surface before it
  const cases::SurveyBox wider{zone.box.x_from - plaster, zone.box.x_to + plaster,
                               zone.box.y_from - plaster, zone.box.y_to + plaster};
  return zone.section == stretch.section && overlap(wider, stretch.box);
}

/// Whether something was read by an instrument.
bool was_used(const SurveyModel& model, const std::string& instrument) {
  return model.find(UnknownKind::offset, instrument).has_value();
}

std::vector<Explanation> usual(const SurveyModel& model) {
  const cases::Survey& survey = *model.survey;
  std::vector<Explanation> all{{ExplanationKind::as_drawn, "", ""}};
  for (const cases::Zone& zone : survey.zones) {
    all.push_back({ExplanationKind::conducts_better, zone.name, ""});
    all.push_back({ExplanationKind::conducts_less, zone.name, ""});
  }
  for (const cases::Stretch& stretch : survey.stretches)
    all.push_back({ExplanationKind::covered, stretch.name, ""});
  for (const cases::Zone& zone : survey.zones) {
    for (const cases::Stretch& stretch : survey.stretches) {
      if (overlap(zone, stretch))
        all.push_back({ExplanationKind::better_and_covered, zone.name, stretch.name});
    }
  }
  for (const cases::Instrument& one : model.instruments) {
    if (was_used(model, one.name)) all.push_back({ExplanationKind::thermometer_off, one.name, ""});
  }
  for (const SurveyUnknown& unknown : model.unknowns) {
    if (unknown.kind == UnknownKind::air_felt)
      all.push_back({ExplanationKind::colder_outside, unknown.of, ""});
  }
  return all;
}

std::vector<double> medians_of(const Hypothesis& hypothesis) {
  std::vector<double> medians;
  for (const solver::Unknown& unknown : hypothesis.before) medians.push_back(unknown.median);
  return medians;
}

/// The logarithm of a sum of exponentials.
double log_sum(const std::vector<double>& logs) {
  const double most = *std::max_element(logs.begin(), logs.end());
  double sum = 0.0;
  for (const double log : logs) sum += std::exp(log - most);
  return most + std::log(sum);
}

Inferred inferred_one(const SurveyModel& model, Hypothesis hypothesis, FeltAirs& felt,
                      const solver::StandardDraws& standard) {
  Inferred result;
  result.hypothesis = std::move(hypothesis);
  std::vector<double> at = medians_of(result.hypothesis);
  // The walls are those of the mode, and the mode is that with these walls.
  constexpr int rounds = 2;
  for (int round = 0; round < rounds; ++round) {
    result.readings = reading_model(model, result.hypothesis, at, felt);
    const solver::Inference inference = inference_of(model, result.readings);
    std::vector<double> start =
        round == 0 ? std::vector<double>(inference.dimensions(), 0.0) : result.mode.at;
    result.mode = solver::mode_of(inference, std::move(start));
    at = result.readings.unknowns_at(result.mode.at);
  }
  const solver::Inference inference = inference_of(model, result.readings);
  result.sample = solver::sample_about(inference, result.mode, standard);
  return result;
}

/// What follows from the samples of the hypotheses.
void sum_up(InferredExplanation& explanation) {
  std::vector<double> logs;
  for (const Inferred& one : explanation.each) logs.push_back(one.sample.log_evidence);
  const double all = log_sum(logs);
  explanation.log_evidence = all - std::log(static_cast<double>(logs.size()));
  explanation.share.clear();
  explanation.effective = 0.0;
  double variance = 0.0;
  for (std::size_t e = 0; e < logs.size(); ++e) {
    const solver::Sample& sample = explanation.each[e].sample;
    explanation.share.push_back(std::exp(logs[e] - all));
    variance += std::pow(explanation.share[e] * sample.evidence_error, 2);
    explanation.effective += explanation.share[e] * sample.effective;
  }
  explanation.evidence_error = std::sqrt(variance);
}

/// Draws of less weight than this move no range.
constexpr double negligible = 1e-8;
// What is not worth more draws: an explanation a hundred times worse than the best that has
// enough for its ranges, and an extent that carries less than a hundredth of its explanation.
constexpr double far_off = 4.6;
constexpr double enough_draws = 200.0;
constexpr double counts_from = 0.01;

/// What is known of one unknown beforehand, changed: in units of its sd.
struct Changed {
  double median = 0.0;
  double sd = 1.0;
};
constexpr std::array<Changed, 4> changes{{{0.5, 1.0}, {-0.5, 1.0}, {0.0, 1.5}, {0.0, 0.5}}};

/// The evidence of an explanation with one unknown known otherwise, as a logarithm.
double log_evidence(const InferredExplanation& explanation, std::size_t unknown,
                    const Changed& changed) {
  std::vector<double> logs;
  for (const Inferred& one : explanation.each) {
    const auto& active = one.readings.active;
    const auto found = std::find(active.begin(), active.end(), unknown);
    // The scale of all disagreements comes after the unknowns of the model.
    const bool is_scale = unknown == one.readings.unknowns.size();
    if (found == active.end() && !is_scale) {
      logs.push_back(one.sample.log_evidence);
      continue;
    }
    const auto column = is_scale ? active.size() : static_cast<std::size_t>(found - active.begin());
    double mean = 0.0;
    for (std::size_t k = 0; k < one.sample.draws.rows; ++k) {
      const double z = one.sample.draws(k, column);
      const double off = (z - changed.median) / changed.sd;
      mean += one.sample.weights[k] * std::exp((z * z - off * off) / 2) / changed.sd;
    }
    logs.push_back(one.sample.log_evidence + std::log(mean));
  }
  return log_sum(logs) - std::log(static_cast<double>(logs.size()));
}

}  // namespace

bool is_about_zone(const Explanation& explanation) {
  return explanation.kind == ExplanationKind::conducts_better ||
         explanation.kind == ExplanationKind::conducts_less ||
         explanation.kind == ExplanationKind::better_and_covered;
}

std::vector<Explanation> explanations_of(const SurveyModel& model, const Quality& quality) {
  std::vector<Explanation> all = model.survey->explanations;
  if (all.empty()) all = usual(model);
  const bool has_drawn = std::any_of(all.begin(), all.end(), [](const Explanation& one) {
    return one.kind == ExplanationKind::as_drawn;
  });
  if (!has_drawn) all.insert(all.begin(), Explanation{});
  std::erase_if(all, [&](const Explanation& one) {
    if (is_about_zone(one)) return !quality.may_tell_ratio;
    if (one.kind == ExplanationKind::thermometer_off) return !was_used(model, one.of);
    if (one.kind == ExplanationKind::colder_outside)
      return !model.find(UnknownKind::air_felt, one.of).has_value();
    return false;
  });
  return all;
}

InferredExplanation inferred(const SurveyModel& model, const Explanation& explanation,
                             const solver::StandardDraws& standard) {
  InferredExplanation result;
  result.what = explanation;
  std::vector<ZoneExtent> extents{ZoneExtent::as_drawn};
  if (is_about_zone(explanation) && has_extents(model, explanation))
    extents = {ZoneExtent::smaller, ZoneExtent::as_drawn, ZoneExtent::larger};
  FeltAirs felt;
  for (const ZoneExtent extent : extents)
    result.each.push_back(
        inferred_one(model, hypothesis_of(model, explanation, extent), felt, standard));
  sum_up(result);
  return result;
}

double error_at_modes(const SurveyModel& model,
                      const std::vector<InferredExplanation>& explanations,
                      const solver::LinearOptions& options) {
  double best = explanations.front().log_evidence;
  for (const InferredExplanation& one : explanations) best = std::max(best, one.log_evidence);
  double worst = 0.0;
  for (std::size_t s = 0; s < model.sections.size(); ++s) {
    std::vector<solver::Setting> settings;
    for (const InferredExplanation& explanation : explanations) {
      if (best - explanation.log_evidence > far_off) continue;
      for (std::size_t e = 0; e < explanation.each.size(); ++e) {
        const Inferred& one = explanation.each[e];
        if (explanation.share[e] < counts_from) continue;
        settings.push_back(
            solver::setting_at(one.readings.sections[s], one.readings.unknowns_at(one.mode.at)));
      }
    }
    worst = std::max(worst, error_at(model, s, settings, options));
  }
  return worst;
}

void refine(const SurveyModel& model, const solver::StandardDraws& standard, double best,
            InferredExplanation& explanation) {
  const bool far = best - explanation.log_evidence > far_off;
  bool refined = false;
  for (std::size_t e = 0; e < explanation.each.size(); ++e) {
    Inferred& one = explanation.each[e];
    if (explanation.share[e] < counts_from) continue;
    if (far && one.sample.effective > enough_draws) continue;
    // Extents share the draws by what they count for, in powers of two that fill space evenly.
    const auto fair = static_cast<std::size_t>(
        std::ceil(explanation.share[e] * static_cast<double>(standard.normals.rows)));
    const std::size_t wanted = std::min(standard.normals.rows, std::bit_ceil(fair));
    if (wanted <= one.sample.draws.rows && one.sample.effective > enough_draws) continue;
    const solver::Inference inference = inference_of(model, one.readings);
    one.sample = solver::sample_of(inference, one.mode, standard, one.sample,
                                   std::max(wanted, 2 * one.sample.draws.rows));
    draw_again(inference, standard, one.sample);
    refined = true;
  }
  if (refined) sum_up(explanation);
}

Weighted over_draws(
    const InferredExplanation& explanation,
    const std::function<double(const Inferred&, std::span<const double> unknowns)>& function) {
  Weighted result;
  for (std::size_t e = 0; e < explanation.each.size(); ++e) {
    const Inferred& one = explanation.each[e];
    for (std::size_t k = 0; k < one.sample.draws.rows; ++k) {
      const double weight = explanation.share[e] * one.sample.weights[k];
      if (weight < negligible) continue;
      const std::vector<double> at = one.readings.unknowns_at(one.sample.draws.row(k));
      result.values.push_back(function(one, at));
      result.weights.push_back(weight);
    }
  }
  return result;
}

std::vector<Drawn> resampled(const InferredExplanation& explanation, std::size_t count) {
  std::vector<Drawn> result;
  const double step = 1.0 / static_cast<double>(count);
  double passed = 0.0, next = step / 2;
  for (std::size_t e = 0; e < explanation.each.size(); ++e) {
    const Inferred& one = explanation.each[e];
    for (std::size_t k = 0; k < one.sample.draws.rows; ++k) {
      passed += explanation.share[e] * one.sample.weights[k];
      for (; next < passed && result.size() < count; next += step)
        result.push_back({&one, one.readings.unknowns_at(one.sample.draws.row(k))});
    }
  }
  return result;
}

double lowest_log_odds(const SurveyModel& model, const InferredExplanation& best,
                       const InferredExplanation& other) {
  double lowest = best.log_evidence - other.log_evidence;
  for (std::size_t u = 0; u <= model.unknowns.size(); ++u) {
    for (const Changed& changed : changes)
      lowest = std::min(lowest, log_evidence(best, u, changed) - log_evidence(other, u, changed));
  }
  return lowest;
}

}  // namespace quoin::tools
