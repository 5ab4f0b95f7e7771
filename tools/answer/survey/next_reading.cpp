// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/next_reading.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "cases/model/survey.hpp"
#include "solver/survey/narrowing.hpp"
#include "tools/answer/survey/felt_air.hpp"
#include "tools/answer/survey/survey_words.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::tools {
namespace {

constexpr double worth_saying = 0.9;  ///< sd left, of 1
constexpr double of_readings =
    7.0 / 5.0;                   ///< variance of Student's t as information: (nu+3)/(nu+1)
constexpr double telling = 4.0;  ///< square of the difference over the variances

/// What a measurement would add: rows of slopes by the active unknowns and the scale, and their
/// own variances.
struct Candidate {
  std::string what;
  std::string place;  ///< in words: "from ..."
  solver::Table slopes;
  std::vector<double> variance;
};

bool lasts(UnknownKind kind) {
  return kind == UnknownKind::conductivity || kind == UnknownKind::ratio;
}

class Next {
 public:
  explicit Next(const WorkedSurvey& worked)
      : worked_(worked), model_(worked.model), best_(hypothesis_with_most(worked.inferred[0])) {}

  std::vector<NextStep> steps() {
    list_candidates();
    std::vector<NextStep> all;
    for (std::size_t u = 0; u < model_.unknowns.size(); ++u) {
      const UnknownKind kind = model_.unknowns[u].kind;
      const bool wanted = model_.survey->zones.empty() || !worked_.findings.quality.may_tell_ratio
                              ? kind == UnknownKind::conductivity
                              : kind == UnknownKind::ratio;
      if (!wanted || worked_.findings.explanations[0].unknowns.empty()) continue;
      if (kind == UnknownKind::ratio && worked_.inferred[0].what.of != model_.unknowns[u].of &&
          model_.survey->zones.size() > 1)
        continue;
      narrow(u, all);
    }
    std::stable_sort(all.begin(), all.end(), [](const NextStep& a, const NextStep& b) {
      return a.width_to / a.width_from < b.width_to / b.width_from;
    });
    std::erase_if(all, [](const NextStep& s) { return s.width_to > worth_saying * s.width_from; });
    if (all.size() > 3) all.resize(3);
    if (auto apart = telling_apart()) all.insert(all.begin(), std::move(*apart));
    if (!all.empty() && all.front().target != "explanations")
      all.front().words = "Most would be learned from " + all.front().words;
    return all;
  }

 private:
  static const Inferred& hypothesis_with_most(const InferredExplanation& explanation) {
    const auto most = std::max_element(explanation.share.begin(), explanation.share.end());
    return explanation.each[static_cast<std::size_t>(most - explanation.share.begin())];
  }

  [[nodiscard]] std::size_t dimensions() const { return best_.readings.active.size() + 1; }

  void add_read(const std::string& what, const std::string& place,
                const std::vector<SurveyedReading>& places) {
    FeltAirs felt;
    solver::ReadingModel read = reading_model(model_, places, best_.hypothesis,
                                              best_.readings.unknowns_at(best_.mode.at), felt);
    std::vector<double> predicted(places.size());
    solver::Table slopes(places.size(), read.active.size());
    read.predict(std::span(best_.mode.at).first(read.active.size()), predicted, &slopes);
    Candidate candidate{what, place, solver::Table(places.size(), dimensions()), {}};
    for (std::size_t j = 0; j < places.size(); ++j) {
      for (std::size_t u = 0; u < read.active.size(); ++u) candidate.slopes(j, u) = slopes(j, u);
      // A pad that was not read yet is known as it is stated, each of its own.
      const cases::Pad* pad = places[j].pad;
      const bool new_pad = pad != nullptr && !read.spots[j].pad->unknown;
      const double by_pad = new_pad ? predicted[j] * pad->plus_or_minus / 2 : 0.0;
      candidate.variance.push_back(
          of_readings * (std::pow(places[j].deviation, 2) + std::pow(places[j].joints, 2)) +
          std::pow(by_pad, 2));
    }
    candidates_.push_back(std::move(candidate));
  }

  void list_candidates() {
    for (const SurveyedReading& place : model_.candidates)
      add_read(place.probe, place.probe, {place});
    list_pads();
    for (const SurveyUnknown& unknown : model_.unknowns) {
      if (unknown.kind != UnknownKind::air_felt) continue;
      const auto u = *model_.find(UnknownKind::air_felt, unknown.of);
      const auto& active = best_.readings.active;
      const auto found = std::find(active.begin(), active.end(), u);
      if (found == active.end()) continue;
      Candidate log{"24 h log of the air outside",
                    fmt::format("a log of '{}' over 24 hours before reading", unknown.of),
                    solver::Table(1, dimensions()),
                    {}};
      log.slopes(0, std::size_t(found - active.begin())) = best_.readings.unknowns[u].sd;
      constexpr double usual_lag = 14.0;
      log.variance.push_back(std::pow(0.3, 2) + std::pow(felt_from_history(24.0, usual_lag), 2));
      candidates_.push_back(std::move(log));
    }
  }

  /// One pad on the zone and one on the reference, read in one night.
  void list_pads() {
    if (model_.survey->zones.empty() || model_.unknowns.empty()) return;
    const cases::Pad& pad = model_.survey->pads.empty() ? usual_pad_ : model_.survey->pads.front();
    std::vector<SurveyedReading> pair;
    for (const bool within : {true, false}) {
      for (const SurveyedReading& reading : model_.readings) {
        const double nearest = *std::min_element(reading.to_zone.begin(), reading.to_zone.end());
        if (!reading.is_inside || !reading.left_out.empty() ||
            (within ? nearest > 0.0 : nearest < 0.4) || reading.to_angle < 0.15)
          continue;
        SurveyedReading padded = reading;
        padded.instrument = nullptr;
        padded.pad = &pad;
        padded.deviation = before::pad_difference;
        padded.joints = 0.0;
        pair.push_back(std::move(padded));
        break;
      }
    }
    if (pair.size() == 2)
      add_read("pads on zone and reference",
               fmt::format("a pad on {} and one on {} together", pair[0].probe, pair[1].probe),
               pair);
  }

  void narrow(std::size_t unknown, std::vector<NextStep>& all) {
    const auto& active = best_.readings.active;
    const auto found = std::find(active.begin(), active.end(), unknown);
    if (found == active.end()) return;
    std::vector<double> target(dimensions(), 0.0);
    target[std::size_t(found - active.begin())] = 1.0;
    const double now = solver::spread_along(best_.mode.covariance, target);
    for (const Candidate& candidate : candidates_) {
      const solver::Table after =
          solver::narrowed(best_.mode.covariance, candidate.slopes, candidate.variance);
      add(unknown, candidate.what, candidate.place, solver::spread_along(after, target) / now, all);
    }
    std::vector<std::size_t> lasting;
    for (std::size_t k = 0; k < active.size(); ++k) {
      if (lasts(model_.unknowns[active[k]].kind)) lasting.push_back(k);
    }
    const solver::Table again = solver::read_again(best_.mode.covariance, lasting);
    add(unknown, "same spots on another night", "the same spots on another cold night",
        solver::spread_along(again, target) / now, all);
  }

  void add(std::size_t unknown, const std::string& what, const std::string& place, double left,
           std::vector<NextStep>& all) {
    const SurveyUnknown& one = model_.unknowns[unknown];
    const char* key = one.kind == UnknownKind::ratio ? "ratio" : "conductivity";
    for (const Learned& learned : worked_.findings.explanations[0].unknowns) {
      if (learned.key != key || learned.of != one.of) continue;
      const auto moved = [&](double end) {
        return learned.median * std::pow(end / learned.median, left);
      };
      const double low = moved(learned.low), high = moved(learned.high);
      all.push_back({what, key, learned.high - learned.low, high - low,
                     narrowing_words(place, learned, low, high)});
    }
  }

  [[nodiscard]] std::string name(std::size_t explanation) const {
    return name_of(worked_.findings, worked_.findings.explanations[explanation].what);
  }

  /// The place where the two best explanations expect the most different readings.
  std::optional<NextStep> telling_apart() {
    if (worked_.inferred.size() < 2 || worked_.findings.explanations[1].log_odds < -std::log(10.0))
      return std::nullopt;
    std::optional<NextStep> best;
    double most = telling;
    for (const SurveyedReading& place : model_.candidates) {
      std::array<double, 2> expected{}, variance{};
      for (std::size_t e = 0; e < 2; ++e) {
        const Inferred& one = hypothesis_with_most(worked_.inferred[e]);
        FeltAirs felt;
        const solver::ReadingModel read =
            reading_model(model_, std::vector<SurveyedReading>{place}, one.hypothesis,
                          one.readings.unknowns_at(one.mode.at), felt);
        solver::Table slopes(1, read.active.size());
        read.predict(std::span(one.mode.at).first(read.active.size()), std::span(&expected[e], 1),
                     &slopes);
        std::vector<double> along(one.mode.covariance.rows, 0.0);
        for (std::size_t u = 0; u < read.active.size(); ++u) along[u] = slopes(0, u);
        variance[e] = std::pow(solver::spread_along(one.mode.covariance, along), 2);
      }
      const double own = of_readings * (std::pow(place.deviation, 2) + std::pow(place.joints, 2));
      const double apart =
          std::pow(expected[0] - expected[1], 2) / (variance[0] + variance[1] + 2 * own);
      if (apart <= most) continue;
      most = apart;
      best = NextStep{place.probe, "explanations", std::abs(expected[0] - expected[1]),
                      std::sqrt(variance[0] + variance[1] + 2 * own),
                      apart_words(place.probe, name(0), expected[0], name(1), expected[1])};
    }
    return best;
  }

  const WorkedSurvey& worked_;
  const SurveyModel& model_;
  const Inferred& best_;
  std::vector<Candidate> candidates_;
  /// Where the survey names no pad. Common practice, no source.
  const cases::Pad usual_pad_{"", 0.10, 0.05};
};

}  // namespace

std::vector<NextStep> next_steps(const WorkedSurvey& worked) { return Next(worked).steps(); }

}  // namespace quoin::tools
