// SPDX-License-Identifier: Apache-2.0
#include "tools/enough.hpp"

#include <algorithm>
#include <functional>
#include <map>

#include "materials/moist_air.hpp"
#include "materials/moisture.hpp"
#include "solver/crossing.hpp"
#include "solver/other_temperatures.hpp"
#include "tools/conditions.hpp"
#include "tools/judge.hpp"
#include "tools/physics.hpp"
#include "tools/question.hpp"
#include "tools/redrawn.hpp"

namespace quoin::tools {
namespace {

constexpr double thickness_step = 1e-4;  // m: nobody cuts a board more exactly
constexpr double moisture_step = 5e-4;   // m3/m3

/// The margins of all verdicts for any value of what is changed, each value solved once.
class Trials {
 public:
  using Change = std::function<std::optional<cases::Variant>(double)>;

  Trials(Change change, const solver::Effort& effort)
      : change_(std::move(change)), effort_(effort) {}

  /// Whether there is anything to change, tried at one value.
  [[nodiscard]] bool possible(double value) const { return change_(value).has_value(); }

  [[nodiscard]] double margin(std::size_t verdict, double value) {
    auto known = margins_.find(value);
    if (known == margins_.end()) known = margins_.emplace(value, margins_at(value)).first;
    return known->second.at(verdict);
  }

 private:
  [[nodiscard]] std::vector<double> margins_at(double value) const {
    SolvedVariant trial;
    trial.variant = *change_(value);
    trial.surface = solver::solution_of(
        question_of(trial.variant, materials::Purpose::surface_temperature), effort_);
    std::vector<double> margins;
    for (const Verdict& verdict : verdicts(trial)) margins.push_back(verdict.margin);
    return margins;
  }

  Change change_;
  const solver::Effort& effort_;
  std::map<double, std::vector<double>> margins_;
};

/// Where a verdict just holds between its worst value and its best.
Threshold threshold(Trials& trials, std::size_t verdict, double worst, double best, double step) {
  const double at_worst = trials.margin(verdict, worst);
  if (at_worst >= 0.0) return {Threshold::Kind::holds_always, worst};
  const double at_best = trials.margin(verdict, best);
  if (at_best < 0.0) return {Threshold::Kind::holds_never, best};
  const solver::Sample one{worst, at_worst}, other{best, at_best};
  const auto margin = [&](double value) { return trials.margin(verdict, value); };
  return {Threshold::Kind::found, worst < best ? solver::crossing(margin, one, other, step)
                                               : solver::crossing(margin, other, one, step)};
}

/// How warm the room must be for its coldest spot to pass, with the vapour it holds now, degC.
double lowest_room_temperature(const SolvedVariant& solved, const materials::Test& test,
                               const solver::AirSurface& surface, double vapour_pressure) {
  const cases::Space& room = solved.variant.spaces[surface.air];
  const double outside = solved.variant.spaces[outside_of(solved.variant)].temperature;
  const solver::Field& field = solved.surface.field;
  const auto spot_at = [&](double inside) {
    return solver::at_other_temperatures(field, solver::weights_at(field, surface.coldest.place),
                                         surface.coldest.temperature,
                                         temperatures_of(solved.variant),
                                         temperatures_with(solved, surface.air, inside, outside))
        .value;
  };
  const double here = surface.coldest.temperature.value;
  const double rise = spot_at(room.temperature + 1.0) - spot_at(room.temperature);  // linear
  const double wanted =
      materials::lowest_temperature(test, vapour_pressure, {room.temperature, outside});
  return std::max(outside, room.temperature + (wanted - here) / rise);
}

EnoughFor by_air(const SolvedVariant& solved, const materials::Test& test,
                 const solver::AirSurface& surface) {
  EnoughFor enough;
  const cases::Space& room = solved.variant.spaces[surface.air];
  if (!materials::needs_humidity(test)) return enough;
  const double saturated = materials::saturation_pressure(room.temperature);
  const double most = materials::highest_pressure(test, surface.coldest.temperature.value);
  enough.highest_humidity = std::min(1.0, most / saturated);
  enough.lowest_temperature =
      lowest_room_temperature(solved, test, surface, *room.humidity * saturated);
  return enough;
}

const solver::AirSurface& surface_of(const SolvedVariant& solved, SpaceId air) {
  return *std::find_if(solved.surface.airs.begin(), solved.surface.airs.end(),
                       [&](const solver::AirSurface& surface) { return surface.air == air; });
}

const cases::Criterion& criterion_of(const SolvedVariant& solved, const std::string& name) {
  return *std::find_if(solved.variant.criteria.begin(), solved.variant.criteria.end(),
                       [&](const cases::Criterion& criterion) { return criterion.name == name; });
}

/// The moisture of a material when full of water, m3/m3; nothing where it is not known.
std::optional<double> saturation_of(const cases::Variant& variant, const std::string& material) {
  for (const cases::Region& region : variant.regions) {
    if (region.name != material) continue;
    const auto moisture = materials::moisture_of(region.material, materials::NamedState::saturated);
    if (const auto* known = std::get_if<double>(&moisture)) return *known;
  }
  return std::nullopt;
}

}  // namespace

std::vector<EnoughFor> what_is_enough(const SolvedVariant& solved, const solver::Effort& effort) {
  std::vector<EnoughFor> all;
  for (const Verdict& verdict : solved.verdicts) {
    EnoughFor enough = by_air(solved, criterion_of(solved, verdict.criterion).test,
                              surface_of(solved, verdict.space));
    enough.criterion = verdict.criterion;
    enough.space = verdict.space;
    all.push_back(enough);
  }
  const cases::Enough& asked = solved.variant.enough;
  if (asked.thickness) {
    const cases::ThicknessRange& range = *asked.thickness;
    Trials trials([&](double value) { return with_thickness(solved.variant, range.of, value); },
                  effort);
    const bool possible = trials.possible(range.from) && trials.possible(range.to);
    for (std::size_t v = 0; possible && v < all.size(); ++v)
      all[v].thickness = threshold(trials, v, range.from, range.to, thickness_step);
  }
  if (const auto most = saturation_of(solved.variant, asked.moisture_of)) {
    Trials trials(
        [&](double value) { return with_moisture(solved.variant, asked.moisture_of, value); },
        effort);
    for (std::size_t v = 0; v < all.size(); ++v)
      all[v].moisture = threshold(trials, v, *most, 0.0, moisture_step);
  }
  return all;
}

}  // namespace quoin::tools
