// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/judged.hpp"

#include <algorithm>
#include <cmath>

#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/output/json/units.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

class JudgedFindings {
 public:
  explicit JudgedFindings(const SolvedVariant& solved)
      : solved_(solved), variant_(solved.variant) {}

  [[nodiscard]] Json outcomes() const {
    Json all = Json::array();
    for (const Outcome& outcome : solved_.outcomes) {
      Json each = {{"space", name(outcome.space)},
                   {"outcome", words_for(outcome.kind)},
                   {"tone", word_for(tone_of(outcome.kind))}};
      if (outcome.limit) {
        each["decided_by"] = deciders(outcome);
        if (outcome.unit == "1") {
          each["limit_fRsi"] = *outcome.limit;
        } else {
          each["limit_percent"] = percent(*outcome.limit);
        }
        each["margin"] = outcome.margin;
        each["band"] = outcome.band;
        each["unit"] = outcome.unit;
      }
      each["broken"] = Json::array();
      for (const BrokenLimit& limit : outcome.broken) each["broken"].push_back(limit.criterion);
      if (outcome.chance) each["chance"] = *outcome.chance;
      each["words"] = outcome.words;
      all.push_back(std::move(each));
    }
    return all;
  }

  [[nodiscard]] Json verdicts() const {
    Json all = Json::array();
    for (const Verdict& verdict : solved_.verdicts) {
      Json each = {{"criterion", verdict.criterion},
                   {"space", name(verdict.space)},
                   {"holds", verdict.holds},
                   {"has", verdict.unit == "1" ? verdict.has : percent(verdict.has)},
                   {"margin", verdict.margin},
                   {"band", verdict.band},
                   {"unit", verdict.unit},
                   {"limit_within_band", std::abs(verdict.margin) <= verdict.band}};
      const cases::Criterion& criterion = criterion_of(verdict.criterion);
      if (!criterion.guide.empty()) {
        each["guide"] = criterion.guide;
        each["source"] = criterion.source;
        each["confidence"] = words_for(criterion.confidence);
      }
      if (const auto* threshold = std::get_if<cases::FactorThreshold>(&criterion.test)) {
        each["threshold"] = threshold->threshold;
        if (threshold->resistance) each["threshold_for_Rsi_m2K_W"] = *threshold->resistance;
      }
      if (verdict.grade) {
        each["grade"] = words_for(verdict.grade->degree);
        each["chance"] = verdict.grade->chance;
        each["assumed_humidity_percent"] = percent(verdict.grade->humidity);
      }
      if (!verdict.gate.empty()) each["withheld_because"] = verdict.gate;
      all.push_back(std::move(each));
    }
    return all;
  }

 private:
  [[nodiscard]] const std::string& name(SpaceId space) const { return variant_.spaces[space].name; }

  [[nodiscard]] const cases::Criterion& criterion_of(const std::string& name) const {
    return *std::find_if(variant_.criteria.begin(), variant_.criteria.end(),
                         [&](const cases::Criterion& known) { return known.name == name; });
  }

  const SolvedVariant& solved_;
  const cases::Variant& variant_;
};

}  // namespace

Json outcomes_json(const SolvedVariant& solved) { return JudgedFindings(solved).outcomes(); }

Json verdicts_json(const SolvedVariant& solved) { return JudgedFindings(solved).verdicts(); }

}  // namespace quoin::tools
