// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/twins.hpp"

#include <array>
#include <cmath>
#include <limits>

#include "solver/survey/narrowing.hpp"
#include "tools/answer/survey/hypotheses.hpp"
#include "tools/answer/survey/quality.hpp"

namespace quoin::testing {
namespace {

using tools::Inferred;
using tools::UnknownKind;

constexpr double five = 1.6448536269514722;  // sd from the median to 5 and 95 of 100

/// The mode of a hypothesis, by an inference that may be changed.
template <class Change>
Inferred at_mode(const tools::SurveyModel& model, tools::Hypothesis hypothesis, Change change) {
  Inferred result;
  result.hypothesis = std::move(hypothesis);
  std::vector<double> medians;
  for (const solver::Unknown& unknown : result.hypothesis.before) medians.push_back(unknown.median);
  tools::FeltAirs felt;
  result.readings = tools::reading_model(model, result.hypothesis, medians, felt);
  solver::Inference inference = tools::inference_of(model, result.readings);
  change(inference);
  result.mode = solver::mode_of(inference, std::vector<double>(inference.dimensions(), 0.0));
  return result;
}

/// Ends of the range of an unknown from the mode and a covariance of the stand-ins.
bool holds(const Inferred& inferred, const solver::Table& covariance, std::size_t unknown,
           double truth) {
  const auto& active = inferred.readings.active;
  for (std::size_t k = 0; k < active.size(); ++k) {
    if (active[k] != unknown) continue;
    const solver::Unknown& before = inferred.hypothesis.before[unknown];
    const double at = before.median + before.sd * inferred.mode.at[k];
    const double reach = five * before.sd * std::sqrt(covariance(k, k));
    return std::abs(truth - at) <= reach;
  }
  return false;
}

struct Truth {
  std::size_t ratio = 0;
  std::size_t conductivity = 0;
  double ratio_at = 0.0;
  double conductivity_at = 0.0;
};

SlipHeld by_mode(const Inferred& inferred, const solver::Table& covariance, const Truth& truth) {
  return {holds(inferred, covariance, truth.ratio, truth.ratio_at),
          holds(inferred, covariance, truth.conductivity, truth.conductivity_at)};
}

SlipHeld naive(const tools::SurveyModel& model, tools::Hypothesis hypothesis, const Truth& truth) {
  for (std::size_t u = 0; u < hypothesis.before.size(); ++u) {
    if (u != truth.ratio && u != truth.conductivity) hypothesis.before[u].sd = 0.0;
  }
  const Inferred inferred = at_mode(model, hypothesis, [](solver::Inference& inference) {
    inference.degrees = std::numeric_limits<double>::infinity();
    inference.scale_spread = 0.0;
  });
  return by_mode(inferred, inferred.mode.covariance, truth);
}

SlipHeld weighted(const tools::SurveyModel& model, const tools::Hypothesis& hypothesis,
                  const Truth& truth) {
  const Inferred inferred = at_mode(
      model, hypothesis, [](solver::Inference& inference) { inference.scale_spread = 0.0; });
  const solver::Inference inference = tools::inference_of(model, inferred.readings);
  const std::size_t n = inference.unknowns;
  std::vector<double> predicted(inference.read.size());
  solver::Table slopes(inference.read.size(), n), before(n, n);
  inference.model(std::span(inferred.mode.at).first(n), predicted, &slopes);
  for (std::size_t u = 0; u < n; ++u) before(u, u) = 1.0;
  std::vector<double> variance;
  for (std::size_t j = 0; j < predicted.size(); ++j) {
    const double scale = inference.scale[j], off = (inference.read[j] - predicted[j]) / scale;
    variance.push_back(scale * scale * (inference.degrees + off * off) / (inference.degrees + 1));
  }
  return by_mode(inferred, solver::narrowed(before, slopes, variance), truth);
}

/// By sampling, over some extents of the zone.
SlipHeld sampled(const tools::SurveyModel& model, const cases::Explanation& explanation,
                 bool one_extent, double scale_spread, const Truth& truth) {
  std::vector<tools::ZoneExtent> extents{tools::ZoneExtent::as_drawn};
  if (!one_extent && tools::has_extents(model, explanation))
    extents = {tools::ZoneExtent::smaller, tools::ZoneExtent::as_drawn, tools::ZoneExtent::larger};
  tools::InferredExplanation all;
  const solver::StandardDraws standard(4096, model.unknowns.size() + 1, 5.0);
  double sum = 0.0;
  for (const tools::ZoneExtent extent : extents) {
    const auto change = [&](solver::Inference& inference) {
      inference.scale_spread = scale_spread;
    };
    Inferred one = at_mode(model, tools::hypothesis_of(model, explanation, extent), change);
    solver::Inference inference = tools::inference_of(model, one.readings);
    change(inference);
    one.sample = solver::sample_of(inference, one.mode, standard);
    all.each.push_back(std::move(one));
    all.share.push_back(
        std::exp(all.each.back().sample.log_evidence - all.each.front().sample.log_evidence));
    sum += all.share.back();
  }
  for (double& share : all.share) share /= sum;
  const auto within = [&](std::size_t unknown, double value) {
    const tools::Weighted draws = tools::over_draws(
        all, [&](const Inferred&, std::span<const double> unknowns) { return unknowns[unknown]; });
    const std::array<double, 2> ends{0.05, 0.95};
    const auto found = solver::weighted_quantiles(draws.values, draws.weights, ends);
    return found[0] <= value && value <= found[1];
  };
  return {within(truth.ratio, truth.ratio_at), within(truth.conductivity, truth.conductivity_at)};
}

}  // namespace

std::optional<SlipHeld> held_with(Slip slip, const MadeSurvey& made) {
  const std::vector<tools::HouseSection> house{{"", &made.source.variants.front()}};
  const tools::SurveyModel model = tools::survey_model(house, made.survey, {});
  const tools::Quality quality = tools::quality_of(model);
  if (quality.fit == tools::Fit::refused || !quality.may_tell_ratio) return std::nullopt;
  Truth truth;
  truth.ratio = *model.find(UnknownKind::ratio, made.survey.zones.front().name);
  truth.conductivity = *model.find(UnknownKind::conductivity, made.survey.zones.front().of);
  truth.ratio_at = std::log(made.ratio);
  truth.conductivity_at =
      std::log(made.conductivity / model.unknowns[truth.conductivity].reference);
  const tools::Hypothesis hypothesis =
      tools::hypothesis_of(model, made.truth, tools::ZoneExtent::as_drawn);
  switch (slip) {
    case Slip::naive:
      return naive(model, hypothesis, truth);
    case Slip::weighted:
      return weighted(model, hypothesis, truth);
    case Slip::fixed_scale:
      return sampled(model, made.truth, false, 0.0, truth);
    case Slip::one_extent:
      break;
  }
  return sampled(model, made.truth, true, solver::Inference{}.scale_spread, truth);
}

}  // namespace quoin::testing
