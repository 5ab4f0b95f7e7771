// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/judge/enough.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "cases/model/painted.hpp"
#include "materials/moist_air.hpp"
#include "materials/moisture.hpp"
#include "solver/findings/crossing.hpp"
#include "solver/findings/other_temperatures.hpp"
#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/ask/question.hpp"
#include "tools/answer/ask/redrawn.hpp"
#include "tools/answer/judge/gate.hpp"
#include "tools/answer/judge/judge.hpp"

namespace quoin::tools {
namespace {

constexpr double thickness_step = 1e-4;  // m: nobody cuts a board more exactly
constexpr double whole = 1e-3;           // m: what a remark on a thickness is rounded to
constexpr double moisture_step = 5e-4;   // m3/m3

/// The margins of all verdicts for any value of what is changed, each value solved once.
class Trials {
 public:
  using Change = std::function<std::optional<cases::Variant>(double)>;

  Trials(Change change, const solver::Effort& effort)
      : change_(std::move(change)), effort_(effort) {}

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

/// The value of a grid nearest to `fails` that holds, between a value that fails and one that does.
double edge(Trials& trials, std::size_t verdict, double fails, double holds, double step) {
  const auto margin = [&](double value) { return trials.margin(verdict, value); };
  const solver::FunctionValue one{fails, margin(fails)}, other{holds, margin(holds)};
  const double about = fails < holds ? solver::crossing(margin, one, other, step)
                                     : solver::crossing(margin, other, one, step);
  const double towards = fails < holds ? 1.0 : -1.0;
  const auto on_grid = [&](double count) {
    return std::clamp(count * step, std::min(fails, holds), std::max(fails, holds));
  };
  double count = std::round(about / step);
  while (on_grid(count) != holds && margin(on_grid(count)) < 0.0) count += towards;
  while (on_grid(count - towards) != fails && margin(on_grid(count - towards)) >= 0.0)
    count -= towards;
  return on_grid(count);
}

/// Where a verdict just holds on the way from its worst value to its best.
Threshold threshold(Trials& trials, std::size_t verdict, double worst, double best, double step) {
  if (trials.margin(verdict, worst) >= 0.0) return {Threshold::Kind::holds_always, worst};
  if (trials.margin(verdict, best) < 0.0) return {Threshold::Kind::holds_never, best};
  return {Threshold::Kind::found, edge(trials, verdict, worst, best, step)};
}

/// The thickness at which a verdict holds best, near the best of some: a lining may warm one place
/// and cool another, so that neither end need be it.
double best_near(Trials& trials, std::size_t verdict, const std::vector<double>& tried) {
  const auto better = [&](double a, double b) {
    return trials.margin(verdict, a) < trials.margin(verdict, b);
  };
  const auto best = std::max_element(tried.begin(), tried.end(), better);
  double low = best == tried.begin() ? *best : *(best - 1);
  double high = best + 1 == tried.end() ? *best : *(best + 1);
  double found = *best;
  for (int k = 0; k < 12 && high - low > whole; ++k) {
    const bool above = high - found > found - low;
    const double middle = above ? (found + high) / 2 : (low + found) / 2;
    const bool rises = better(found, middle);
    (rises == above ? low : high) = rises ? found : middle;
    if (rises) found = middle;
  }
  return found;
}

/// What more of a layer does from a thickness on, judged by what the margin is known to.
Threshold::More more_than(Trials& trials, std::size_t verdict, double best, double from,
                          double most, double known) {
  if (best < most && trials.margin(verdict, most) < trials.margin(verdict, best) - known)
    return Threshold::More::harm;
  const double gained = trials.margin(verdict, most) - trials.margin(verdict, from);
  return gained > known ? Threshold::More::helps : Threshold::More::nothing;
}

/// Which thicknesses let a verdict hold: both ends are solved and some between, and the first run
/// of those that hold is followed to its ends.
Threshold thickness_for(Trials& trials, std::size_t verdict, double from, double most,
                        double known) {
  constexpr int parts = 6;
  std::vector<double> tried;
  for (int k = 0; k <= parts; ++k)
    tried.push_back(k == parts ? most : from + (most - from) * k / parts);
  const auto holds = [&](double value) { return trials.margin(verdict, value) >= 0.0; };
  if (std::none_of(tried.begin(), tried.end(), holds)) {
    const double best = best_near(trials, verdict, tried);
    if (!holds(best)) {
      return {Threshold::Kind::holds_never, best, most,
              more_than(trials, verdict, best, from, most, known)};
    }
    tried.insert(std::upper_bound(tried.begin(), tried.end(), best), best);
  }
  const auto first = std::find_if(tried.begin(), tried.end(), holds);
  const auto end = std::find_if_not(first, tried.end(), holds);
  Threshold result{Threshold::Kind::holds_always, from, most};
  if (first != tried.begin())
    result.value = edge(trials, verdict, *(first - 1), *first, thickness_step);
  if (end != tried.end()) result.until = edge(trials, verdict, *end, *(end - 1), thickness_step);
  const bool later = first != tried.begin(), ends = end != tried.end();
  result.kind = later && ends ? Threshold::Kind::between
                : later       ? Threshold::Kind::found
                : ends        ? Threshold::Kind::up_to
                              : Threshold::Kind::holds_always;
  return result;
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
                                         temperatures_with_room_at(solved, surface.air, inside))
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

const cases::Criterion& criterion_of(const SolvedVariant& solved, const std::string& name) {
  return *std::find_if(solved.variant.criteria.begin(), solved.variant.criteria.end(),
                       [&](const cases::Criterion& criterion) { return criterion.name == name; });
}

/// The greatest thickness within a range that can be built; nothing where the least cannot.
std::optional<double> greatest_built(const Trials::Change& with,
                                     const cases::ThicknessRange& range) {
  if (!with(range.from)) return std::nullopt;
  if (with(range.to)) return range.to;
  double built = range.from, refused = range.to;
  while (refused - built > thickness_step) {
    const double middle = (built + refused) / 2;
    (with(middle) ? built : refused) = middle;
  }
  const double rounded = std::max(range.from, std::floor(built / whole) * whole);
  return with(rounded) ? rounded : built;
}

void find_thickness(const SolvedVariant& solved, const solver::Effort& effort,
                    WhatIsEnough& result) {
  const cases::ThicknessRange& range = *solved.variant.enough.thickness;
  if (cases::shown(solved.variant, range.of) == nullptr)
    return;  // as in a variant before the lining
  const auto refuse = [&](const std::string& why) {
    result.warnings.push_back(
        fmt::format("how thick '{}' must be is not answered: {}", range.of, why));
  };
  if (!solved.variant.recipe) return refuse("a sheet has no layers, only a recipe has");
  if (layers_of(solved.variant, range.of).empty()) return refuse("it is no layer of the recipe");
  const Trials::Change with = [&](double value) {
    return with_thickness(solved.variant, range.of, value);
  };
  const std::optional<double> most = greatest_built(with, range);
  if (!most) return refuse(fmt::format("{:.4g} mm of it cannot be built here", 1e3 * range.from));
  if (*most < range.to) {
    result.warnings.push_back(
        fmt::format("no more than {:.4g} mm of '{}' can be built here: "
                    "thicker ones, up to {:.4g} mm, were not tried",
                    1e3 * *most, range.of, 1e3 * range.to));
  }
  if (const std::vector<std::string> lists = layers_of(solved.variant, range.of);
      lists.size() > 1) {
    result.warnings.push_back(
        fmt::format("'{}' is a layer {} times, in {}: the thickness told is that of each of them",
                    range.of, lists.size(), fmt::join(lists, " and in ")));
  }
  const bool shut_in = !gate(*with(*most)).empty();
  Trials trials(with, effort);
  for (std::size_t v = 0; v < result.each.size(); ++v) {
    result.each[v].thickness =
        shut_in ? Threshold{Threshold::Kind::dry_first, 0.0}
                : thickness_for(trials, v, range.from, *most, solved.verdicts[v].band);
  }
}

/// The moisture of a material in a state, m3/m3; nothing where it is not known.
std::optional<double> moisture_in(const cases::Variant& variant, const std::string& material,
                                  materials::NamedState state) {
  for (const cases::Region& region : variant.regions) {
    if (region.name != material) continue;
    const auto moisture = materials::moisture_of(region.material, state);
    if (const auto* known = std::get_if<double>(&moisture)) return *known;
  }
  return std::nullopt;
}

void find_moisture(const SolvedVariant& solved, const solver::Effort& effort,
                   WhatIsEnough& result) {
  const std::string& material = solved.variant.enough.moisture_of;
  if (cases::shown(solved.variant, material) == nullptr) return;
  const auto full = moisture_in(solved.variant, material, materials::NamedState::saturated);
  const auto damp = moisture_in(solved.variant, material, materials::NamedState::damp);
  if (!full || !damp) return;  // the reader refuses it
  const Trials::Change with = [&](double value) {
    return with_moisture(solved.variant, material, value);
  };
  const auto shut_in = [&](double value) { return !gate(*with(value)).empty(); };
  const bool never = shut_in(0.0);  // something else is too wet
  const bool insulated = !never && shut_in(*full);
  Trials trials(with, effort);
  for (std::size_t v = 0; v < result.each.size(); ++v) {
    std::optional<Threshold>& moisture = result.each[v].moisture;
    moisture = never ? Threshold{Threshold::Kind::dry_first, 0.0}
                     : threshold(trials, v, insulated ? *damp : *full, 0.0, moisture_step);
    if (insulated && moisture->kind == Threshold::Kind::holds_always)
      moisture->kind = Threshold::Kind::up_to_damp;
  }
}

}  // namespace

WhatIsEnough what_is_enough(const SolvedVariant& solved, const solver::Effort& effort) {
  WhatIsEnough result;
  for (const Verdict& verdict : solved.verdicts) {
    EnoughFor enough = by_air(solved, criterion_of(solved, verdict.criterion).test,
                              surface_of(solved, verdict.space));
    enough.criterion = verdict.criterion;
    enough.space = verdict.space;
    result.each.push_back(enough);
  }
  if (result.each.empty()) return result;
  if (solved.variant.enough.thickness) find_thickness(solved, effort, result);
  if (!solved.variant.enough.moisture_of.empty()) find_moisture(solved, effort, result);
  return result;
}

}  // namespace quoin::tools
