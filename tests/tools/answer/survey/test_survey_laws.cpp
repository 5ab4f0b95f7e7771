// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/survey/explain.hpp"

namespace quoin::tools {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

/// A corner with readings and a survey, invented.
struct Corner {
  double warmer = 0.0;  ///< than usual, everything, K
  bool mirrored = false;
  std::string brick = "wall brick", zone = "masonry", probe = "probe", room = "room";
  double coldest = 7.0;  ///< reading in the angle, degC

  [[nodiscard]] std::string text() const {
    struct Place {
      const char* name;
      double x, y, read;
    };
    const std::vector<Place> places{{"b0", 240, 240, coldest}, {"b1", 290, 240, 8.6},
                                    {"b2", 390, 240, 9.6},     {"b3", 540, 240, 10.6},
                                    {"b4", 240, 560, 10.5},    {"a1", 1440, 240, 13.6},
                                    {"a2", 240, 1480, 13.5},   {"o1", 540, 0, 4.4}};
    std::string probes, readings;
    for (const Place& place : places) {
      const double x = mirrored ? place.y : place.x, y = mirrored ? place.x : place.y;
      probes += std::string(probes.empty() ? "" : ", ") + place.name + ": [" + std::to_string(x) +
                ", " + std::to_string(y) + "]";
      readings += std::string("  ") + place.name +
                  ": {temperature: " + std::to_string(place.read + warmer) + ", with: " + probe +
                  "}\n";
    }
    const auto degrees = [&](double value) { return std::to_string(value + warmer); };
    return "quoin: 1\n"
           "spaces:\n"
           "  " +
           room + ": {is: inside, temperature: " + degrees(18.5) +
           ", humidity: 60}\n"
           "  outdoors: {is: outside, temperature: " +
           degrees(2.0) +
           "}\n"
           "materials:\n"
           "  " +
           brick +
           ": {like: common brick, moisture: sheltered}\n"
           "section:\n"
           "  corner:\n"
           "    leg: 1800\n"
           "    layers: [{material: lime plaster, thickness: 15}, {material: " +
           brick +
           ", thickness: 225}]\n"
           "probes: {" +
           probes +
           "}\n"
           "readings:\n" +
           readings +
           "survey:\n"
           "  hour: 7\n"
           "  heating steady for: 20 h\n"
           "  instruments: {" +
           probe +
           ": {plus or minus: 0.4, shared: 0.6}}\n"
           "  zones: {" +
           zone + ": {of: " + brick +
           ", x: [0, 800], y: [0, 800]}}\n"
           "  explanations: [as drawn, conducts better: " +
           zone +
           "]\n"
           "  air: {outdoors: {lowest: " +
           degrees(0.0) + ", highest: " + degrees(4.0) + "}}\n";
  }
};

SurveyFindings findings_of(const std::string& text, const solver::LinearOptions& options = {}) {
  const cases::Case source = cases::case_of(text, "case.yaml");
  return worked_survey({{"", &source.variants.front()}}, *source.survey, options).findings;
}

SurveyFindings findings_of(const cases::Case& source, const cases::Survey& survey) {
  return worked_survey({{"", &source.variants.front()}}, survey, {}).findings;
}

const Explained& better(const SurveyFindings& findings) {
  for (const Explained& one : findings.explanations) {
    if (one.what.kind == cases::ExplanationKind::conducts_better) return one;
  }
  FAIL("no such explanation");
  return findings.explanations.front();
}

const Learned& unknown(const Explained& explained, const std::string& key) {
  const auto found = std::find_if(explained.unknowns.begin(), explained.unknowns.end(),
                                  [&](const Learned& one) { return one.key == key; });
  REQUIRE(found != explained.unknowns.end());
  return *found;
}

/// The largest difference between what two findings tell of the factors, relative.
double apart(const SurveyFindings& one, const SurveyFindings& other) {
  const Explained &a = better(one), &b = better(other);
  REQUIRE(a.unknowns.size() == b.unknowns.size());
  double most = std::abs(a.log_odds - b.log_odds);
  for (const std::string key : {"ratio", "conductivity", "Rsi", "angle", "fRsi_design_corner"}) {
    const Learned &x = unknown(a, key), &y = unknown(b, key);
    for (const auto end : {&Learned::low, &Learned::median, &Learned::high})
      most = std::max(most, std::abs(x.*end / (y.*end) - 1.0));
  }
  return most;
}

constexpr double rounding = 1e-6;  // of sums in another order, drawn out by the mode's last step

}  // namespace

TEST_CASE("ten kelvins more on everything change no factor") {
  Corner warm;
  warm.warmer = 10.0;
  CHECK(apart(findings_of(Corner{}.text()), findings_of(warm.text())) < rounding);
}

TEST_CASE("what things are called changes no factor") {
  Corner renamed;
  renamed.brick = "a stone";
  renamed.zone = "zzz";
  renamed.probe = "an old thermometer";
  renamed.room = "attic";
  CHECK(apart(findings_of(Corner{}.text()), findings_of(renamed.text())) < rounding);
  // Twin: another reading does.
  Corner colder;
  colder.coldest = 6.0;
  CHECK(apart(findings_of(Corner{}.text()), findings_of(colder.text())) > 0.01);
}

TEST_CASE("a mirrored section tells the same") {
  Corner mirrored;
  mirrored.mirrored = true;
  // The ends of ranges rest on draws that may change places with their like.
  CHECK(apart(findings_of(Corner{}.text()), findings_of(mirrored.text())) < 1e-4);
}

TEST_CASE("a survey tells the same bits on any number of threads") {
  solver::LinearOptions two;
  two.threads = 2;
  CHECK(apart(findings_of(Corner{}.text()), findings_of(Corner{}.text(), two)) == 0.0);
}

TEST_CASE("a reading that may be off by more than the airs differ counts for nothing") {
  const cases::Case source = cases::case_of(Corner{}.text(), "case.yaml");
  cases::Survey vague = *source.survey, without = *source.survey;
  vague.readings[1].plus_or_minus = 1e9;
  without.readings.erase(without.readings.begin() + 1);
  const SurveyFindings one = findings_of(source, vague), other = findings_of(source, without);
  CHECK(apart(one, other) < rounding);
  CHECK(!better(one).readings[1].left_out.empty());
}

TEST_CASE("the order of zones and instruments and airs and explanations tells nothing") {
  const cases::Case source = cases::case_of(Corner{}.text(), "case.yaml");
  cases::Survey forwards = *source.survey;
  forwards.zones.push_back({"pier", "", "wall brick", {1.0, 1.2, 0.0, 0.3}});
  forwards.instruments.push_back(forwards.instruments.front());
  forwards.instruments.back().name = "other probe";
  forwards.readings.back().with = "other probe";
  forwards.explanations.push_back({cases::ExplanationKind::conducts_less, "pier", ""});
  cases::Survey backwards = forwards;
  std::reverse(backwards.zones.begin(), backwards.zones.end());
  std::reverse(backwards.instruments.begin(), backwards.instruments.end());
  std::reverse(backwards.airs.begin(), backwards.airs.end());
  std::reverse(backwards.explanations.begin(), backwards.explanations.end());
  // Which extents of which zone a field is solved for goes by their order: as exact as fields are.
  constexpr double fields = 0.01;
  CHECK(apart(findings_of(source, forwards), findings_of(source, backwards)) < fields);
  // Twin: what an explanation is about does tell something.
  cases::Survey other = forwards;
  other.zones.front().box.x_to = 0.4;
  CHECK(apart(findings_of(source, forwards), findings_of(source, other)) > fields);
}

TEST_CASE("the order of spaces tells nothing") {
  std::string text = Corner{}.text();
  const std::size_t room = text.find("  room:"), outdoors = text.find("  outdoors: {is"),
                    end = text.find("materials:");
  text = text.substr(0, room) + text.substr(outdoors, end - outdoors) +
         text.substr(room, outdoors - room) + text.substr(end);
  // Another air is the one whose share is what the others leave, so that other sums of fields are
  // cut: as exact as fields are.
  CHECK(apart(findings_of(Corner{}.text()), findings_of(text)) < 0.02);
}

TEST_CASE("an instrument that read nothing changes nothing") {
  const cases::Case source = cases::case_of(Corner{}.text(), "case.yaml");
  cases::Survey spare = *source.survey;
  spare.instruments.push_back(spare.instruments.front());
  spare.instruments.back().name = "spare";
  const SurveyFindings one = findings_of(source, *source.survey), more = findings_of(source, spare);
  CHECK(apart(one, more) == 0.0);
  CHECK(one.explanations.size() == more.explanations.size());
  // Twin: once it has read something it may be off.
  spare.readings.front().with = "spare";
  CHECK(better(findings_of(source, spare)).unknowns.size() == better(one).unknowns.size() + 1);
}

TEST_CASE("the whole is as fit as the worst of its rules") {
  const cases::Case source = cases::case_of(Corner{}.text(), "case.yaml");
  const auto worst = [](const Quality& quality) {
    Fit fit = Fit::good;
    for (const QualityRule& rule : quality.rules) fit = std::max(fit, rule.fit);
    return fit;
  };
  cases::Survey alone = *source.survey;
  std::erase_if(alone.readings,
                [](const cases::SurveyReading& reading) { return reading.probe.front() == 'a'; });
  const Quality without = findings_of(source, alone).quality;
  CHECK(without.fit == worst(without));
  CHECK(without.fit == Fit::weak);  // of the whole wall something is told
  CHECK_FALSE(without.may_tell_ratio);
  const Quality with = findings_of(source, *source.survey).quality;
  CHECK(with.fit == worst(with));
  CHECK(with.fit == Fit::good);
}

TEST_CASE("without readings every range is what was known before") {
  const cases::Case source = cases::case_of(Corner{}.text(), "case.yaml");
  cases::Survey nothing = *source.survey;
  nothing.readings.clear();
  const SurveyFindings found = findings_of(source, nothing);
  for (const Explained& one : found.explanations) {
    for (const Learned& learned : one.unknowns) {
      const double spread = learned.prior_high - learned.prior_low;
      if (learned.key == "fRsi_design_corner") continue;  // of fewer draws
      CHECK(learned.low == WithinAbs{learned.prior_low, 0.03 * spread});
      CHECK(learned.median == WithinAbs{learned.prior_median, 0.02 * spread});
      CHECK(learned.high == WithinAbs{learned.prior_high, 0.03 * spread});
    }
  }
  CHECK(found.words.front() == "Nothing was read.");
}

TEST_CASE("reduced fields are exact to two hundredths of a kelvin wherever unknowns may lie") {
  const cases::Case source = cases::case_of(Corner{}.text(), "case.yaml");
  const SurveyModel model =
      survey_model({{"", &source.variants.front()}}, *source.survey, solver::LinearOptions{});
  std::mt19937 random(11);
  std::normal_distribution<double> normal;
  std::vector<solver::Setting> settings;
  for (int k = 0; k < 20; ++k) {
    const auto extent = static_cast<ZoneExtent>(k % 3);
    const Hypothesis hypothesis =
        hypothesis_of(model, {cases::ExplanationKind::conducts_better, "masonry", ""}, extent);
    std::vector<double> at;
    for (const solver::Unknown& known : hypothesis.before)
      at.push_back(known.median + known.sd * normal(random));
    settings.push_back(
        solver::setting_at({model.base[0], growth_of(model, 0, hypothesis.extents)}, at));
  }
  CHECK(error_at(model, 0, settings, {}) <= 0.02);
}

}  // namespace quoin::tools
