// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/chances.hpp"

#include <algorithm>
#include <cmath>

#include "tools/answer/ask/physics.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/survey/chance.hpp"
#include "tools/answer/survey/explain.hpp"
#include "tools/answer/survey/fabric_after.hpp"
#include "tools/answer/survey/survey_words.hpp"

namespace quoin::tools {
namespace {

constexpr std::size_t draws = 2048;

bool any_to_judge(const SolvedVariant& solved) {
  const auto humid = [](const cases::Space& space) { return space.humidity.has_value(); };
  const auto& spaces = solved.variant.spaces;
  return (!solved.variant.criteria.empty() || std::any_of(spaces.begin(), spaces.end(), humid)) &&
         !solved.surface.airs.empty();
}

}  // namespace

Degree degree_of(double chance) {
  if (chance < 0.1) return Degree::unlikely;
  if (chance < 0.5) return Degree::marginal;
  return chance < 0.9 ? Degree::likely : Degree::near_certain;
}

std::vector<Chance> chances_of(const SolvedVariant& solved, const ChanceGround& ground,
                               const solver::LinearOptions& options) {
  std::vector<Chance> all;
  if (!any_to_judge(solved)) return all;
  const bool read = ground.worked != nullptr && bears_on_chance(ground.worked->findings);
  if (ground.worked != nullptr && !read) {
    // Readings that tell nothing are as good as none.
    return chances_of(solved, {ground.household, nullptr, ground.section}, options);
  }
  const cases::Survey survey = read ? carried_over(ground.worked->model) : cases::Survey{};
  const SurfaceField field(ground.section, solved.variant, survey, options);
  FabricDraws fabric = read ? fabric_after(*ground.worked, field, ground.section, draws)
                            : fabric_beforehand(field, draws);
  solve_states(field, fabric);
  const double outside = solved.variant.spaces[outside_of(solved.variant)].temperature;
  const std::vector<cases::Criterion> criteria = looked_at(solved.variant);
  for (const cases::Criterion& criterion : criteria) {
    for (const solver::AirSurface& surface : solved.surface.airs) {
      const cases::Space& space = solved.variant.spaces[surface.air];
      if (materials::needs_humidity(criterion.test) && !space.humidity) continue;
      const auto& rooms = field.rooms();
      const auto room = std::find(rooms.begin(), rooms.end(), surface.air);
      if (room == rooms.end()) continue;
      const auto year = std::find_if(solved.years.begin(), solved.years.end(),
                                     [&](const Year& one) { return one.air == surface.air; });
      all.push_back(chance_of(field, fabric, ground.household,
                              {&criterion, static_cast<std::size_t>(room - rooms.begin()),
                               surface.coldest.temperature.value, outside,
                               year == solved.years.end() ? nullptr : &year->months}));
    }
  }
  return all;
}

void grade_by_chance(SolvedVariant& solved) {
  for (Verdict& verdict : solved.verdicts) {
    for (const Chance& chance : solved.chances) {
      if (chance.criterion != verdict.criterion || chance.space != verdict.space ||
          !chance.highest_safe_humidity)
        continue;
      verdict.grade = Grade{degree_of(chance.broken), chance.broken,
                            solved.variant.spaces[verdict.space].humidity.value_or(0.0)};
    }
  }
}

}  // namespace quoin::tools
