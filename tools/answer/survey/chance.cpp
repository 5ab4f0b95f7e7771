// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/chance.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "solver/survey/posterior.hpp"
#include "solver/survey/quasi_random.hpp"
#include "solver/survey/shuffled.hpp"
#include "tools/answer/survey/chance_inputs.hpp"
#include "tools/answer/survey/chance_words.hpp"
#include "tools/answer/survey/judged_room.hpp"

namespace quoin::tools {
namespace {

/// In how many months drawn at random, each with a fabric and a day drawn along with it, the
/// criterion is broken: of those in which it is warmer inside than outside.
double share_of_months(const JudgedRoom& room, const FabricDraws& fabric,
                       const std::array<MonthAir, 12>& months, const std::vector<double>& days,
                       const std::vector<std::size_t>& order) {
  std::size_t broken = 0;
  for (std::size_t k = 0; k < fabric.states.size(); ++k) {
    const MonthAir& month = months[k % months.size()];
    if (month.inside_temperature <= month.outside_temperature) continue;  // nothing is cold
    const double* day = days.data() + 3 * order[k];
    if (room.in_month(fabric.shares[k], month, {day[0], day[1], day[2]}).margin < 0.0) ++broken;
  }
  return static_cast<double>(broken) / static_cast<double>(fabric.states.size());
}

}  // namespace

FabricDraws fabric_beforehand(const SurfaceField& field, std::size_t draws) {
  FabricDraws fabric;
  const std::size_t dimensions = field.materials().size();
  const std::vector<double> normals = solver::even_normals(draws, dimensions);
  for (std::size_t k = 0; k < draws; ++k) {
    FabricState state;
    for (std::size_t m = 0; m < dimensions; ++m)
      state.materials.push_back(field.materials()[m].sd * normals[k * dimensions + m]);
    fabric.states.push_back(std::move(state));
  }
  fabric.effective = static_cast<double>(draws);
  return fabric;
}

void solve_states(const SurfaceField& field, FabricDraws& fabric) {
  for (const FabricState& state : fabric.states) fabric.shares.push_back(field.shares(state));
}

Chance chance_of(const SurfaceField& field, const FabricDraws& fabric,
                 const cases::Household& household, const ChanceQuestion& question) {
  const JudgedRoom room(field, household, question);
  const FabricState median = median_of(fabric);
  const std::vector<double> median_shares = room.shares(median);
  const std::size_t draws = fabric.states.size();
  const std::vector<double> days = solver::even_normals(draws, 3);
  const std::vector<std::size_t> order = solver::shuffled(draws);
  std::size_t broken = 0, by_fabric = 0, by_household = 0;
  std::vector<double> safe, strained;
  double sum = 0.0, squares = 0.0;
  for (std::size_t k = 0; k < draws; ++k) {
    const double* day_of = days.data() + 3 * order[k];
    const AirState day{day_of[0], day_of[1], day_of[2]};
    const std::vector<double>& shares = fabric.shares[k];
    const JudgedRoom::At at = room.at(shares, day);
    if (at.margin < 0.0) ++broken;
    sum += at.margin;
    squares += at.margin * at.margin;
    if (room.at(shares, {}).margin < 0.0) ++by_fabric;
    if (room.at(median_shares, day).margin < 0.0) ++by_household;
    const double highest = room.highest_humidity(at);
    safe.push_back(highest);
    strained.push_back(room.humidity_on(day) / highest);
  }
  // Of no case or of all one knows no better than one in as many as there are: never 0 or 1.
  const double least = 1.0 / std::max(2.0, fabric.effective);
  const auto share = [&](std::size_t number) {
    return std::clamp(static_cast<double>(number) / static_cast<double>(draws), least, 1.0 - least);
  };
  Chance chance;
  chance.criterion = question.criterion->name;
  chance.space = field.rooms()[question.room];
  chance.unit = materials::unit_of(question.criterion->test);
  chance.broken = share(broken);
  chance.fabric = share(by_fabric);
  chance.household = share(by_household);
  chance.sampling_error = std::sqrt(chance.broken * (1.0 - chance.broken) / fabric.effective);
  const double mean = sum / static_cast<double>(draws);
  tell_inputs(room, fabric, median, *question.criterion,
              squares / static_cast<double>(draws) - mean * mean, chance);
  if (materials::needs_humidity(question.criterion->test)) {
    constexpr std::array<double, 1> tenth{0.1};
    const std::vector<double> weights(draws, 1.0 / static_cast<double>(draws));
    chance.highest_safe_humidity =
        std::clamp(solver::weighted_quantiles(safe, weights, tenth)[0], 0.0, 1.0);
    constexpr std::array<double, 1> nine_tenths{0.9};
    const double as_stated = room.humidity() / room.highest_humidity(room.at(median_shares, {}));
    if (as_stated > 0.0)
      chance.worse_in_ninety =
          solver::weighted_quantiles(strained, weights, nine_tenths)[0] / as_stated;
  }
  chance.from_readings = fabric.from_readings;
  std::optional<double> by_months;
  if (question.months != nullptr)
    by_months = share_of_months(room, fabric, *question.months, days, order);
  chance.words = chance_words(*field.section().variant, chance, *question.criterion,
                              {room.humidity(), room.spread(), by_months});
  return chance;
}

}  // namespace quoin::tools
