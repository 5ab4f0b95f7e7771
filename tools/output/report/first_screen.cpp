// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/survey/survey_words.hpp"
#include "tools/answer/words/advice.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/short_legs.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools::report {
namespace {

/// "kitchen 18.5 °C, 62 % · outdoors 2.0 °C".
std::string air_words(const cases::Variant& variant) {
  std::string text;
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const cases::Space& space = variant.spaces[id];
    if (space.air != id) continue;
    text += fmt::format("{}{} {} °C", text.empty() ? "" : " · ", space.name,
                        fixed(space.temperature, 1));
    if (space.is == cases::SpaceKind::inside)
      text += space.humidity ? fmt::format(", {:.0f} %", 100 * *space.humidity)
                             : std::string(", humidity not given");
  }
  return text;
}

Cell chance_cell(const Outcome* outcome) {
  return figure_cell(outcome == nullptr || !outcome->chance ? "–" : cases_of_100(*outcome->chance));
}

/// 0 the dew point, 1 the limit.
Cell place_cell(const AirHumidity* air, double temperature) {
  if (air == nullptr) return words_cell("–");
  return bar_cell((temperature - air->dew_point) / (air->lowest_temperature - air->dew_point));
}

Table outcomes_table(const Results& results) {
  const bool rooms = std::any_of(results.variants.begin(), results.variants.end(),
                                 [](const auto& solved) { return solved.outcomes.size() > 1; });
  Table table{
      "One row a variant. On the bar the first stroke is the dew point, the second the "
      "limit against mould, each of its own air.",
      {{"variant", 2.2}, {"outcome", 1.3}},
      {},
      1};
  if (rooms) table.columns.push_back({"room"});
  table.columns.push_back({"coldest °C", 0.8});
  table.columns.push_back({"times passed in 100", 0.9});
  table.columns.push_back({"dew point | limit", 1.7});
  for (const SolvedVariant& solved : results.variants) {
    for (const solver::AirSurface* surface : judged_surfaces(solved)) {
      const double coldest = surface->coldest.temperature.value;
      Row row{words_cell(solved.variant.name), outcome_cell(solved, surface->air)};
      if (rooms) row.push_back(words_cell(solved.variant.spaces[surface->air].name));
      row.push_back(number_cell(coldest, 1));
      row.push_back(chance_cell(outcome_of(solved, surface->air)));
      row.push_back(place_cell(humidity_of(solved, surface->air), coldest));
      table.rows.push_back(std::move(row));
    }
  }
  return table;
}

bool has_fRsi(const SolvedVariant& solved) {
  return std::any_of(solved.outcomes.begin(), solved.outcomes.end(), [](const Outcome& outcome) {
    return outcome.unit == "1" ||
           std::any_of(outcome.broken.begin(), outcome.broken.end(),
                       [](const BrokenLimit& limit) { return limit.unit == "1"; });
  });
}

/// Whether an outcome is marginal because it meets its limit by no more than its band.
bool is_within_band(const SolvedVariant& solved) {
  return std::any_of(solved.outcomes.begin(), solved.outcomes.end(), [](const Outcome& outcome) {
    return outcome.kind == Outcome::Kind::marginal && outcome.margin <= outcome.band;
  });
}

bool has_chance(const SolvedVariant& solved) {
  return std::any_of(solved.outcomes.begin(), solved.outcomes.end(),
                     [](const Outcome& outcome) { return outcome.chance.has_value(); });
}

/// Whether chances rest on a survey; of a house, whose first section tells it, too.
bool is_told(const SurveyFindings& survey) {
  return survey.explanations.empty()
             ? survey.quality.fit != Fit::refused && survey.quality.may_tell_conductivity
             : bears_on_chance(survey);
}

std::string sureness(const Results& results) {
  const auto& variants = results.variants;
  double band = 0.0;
  for (const SolvedVariant& solved : variants) {
    for (const solver::AirSurface* surface : judged_surfaces(solved))
      band = std::max(band, surface->coldest.temperature.band);
  }
  const char* const beyond =
      std::any_of(variants.begin(), variants.end(),
                  [](const SolvedVariant& solved) { return solved.cut_off; })
          ? ", but the section is cut off too near the detail, which they do not count: see the "
            "warnings"
          : "";
  std::string text;
  if (std::any_of(variants.begin(), variants.end(), has_fRsi))
    text +=
        "fRsi is how far a surface follows the room: 0 as cold as outside, 1 as warm as the "
        "room. ";
  const std::string computed =
      fmt::format("The temperatures are computed to within {} K{}.", fixed_band(band, 2), beyond);
  if (std::none_of(variants.begin(), variants.end(), has_chance)) return text + computed;
  const char* const within = std::any_of(variants.begin(), variants.end(), is_within_band)
                                 ? ", as is what meets a limit only just"
                                 : "";
  return text +
         fmt::format(
             "How sure for this house: in so many of 100 cases a limit is passed, by what {} "
             "leaves "
             "open in the masonry, the surfaces and the air of the household; up to {:.0f} of 100 "
             "is safe, more is marginal{}. Not counted: draughts, the third dimension. {}",
             !results.survey            ? "a case without a survey"
             : is_told(*results.survey) ? "the survey"
                                        : "a survey that tells nothing of it",
             100 * marginal_chance, within, computed);
}

}  // namespace

FirstScreen first_screen(const Results& results) {
  const Advice advice = advice_on(results);
  FirstScreen first;
  first.place = air_words(results.variants.front().variant);
  first.sentence = advice.sentence;
  first.tone = advice.tone;
  first.steps = {advice.steps, true};
  first.sure = sureness(results);
  first.variants = outcomes_table(results);
  for (const Change& change : results.changes) first.changes.items.push_back(change.words);
  first.chosen = advice.chosen;
  return first;
}

Blocks work_part(const Results& results, const FirstScreen& first) {
  Blocks blocks;
  const auto shown = [&](std::size_t v) {
    const SolvedVariant& solved = results.variants[v];
    blocks.emplace_back(Heading{solved.variant.name, badges_of(solved)});
    blocks.emplace_back(Figure{Figure::Kind::section, v,
                               fmt::format("The section as drawn, {}, with materials, spaces, "
                                           "dimensions and cut planes",
                                           solved.variant.name)});
  };
  if (!first.steps.items.empty()) blocks.emplace_back(first.steps);
  shown(first.chosen);
  if (first.chosen != 0) shown(0);
  return blocks;
}

}  // namespace quoin::tools::report
