// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/advised_steps.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "cases/text/sentences.hpp"
#include "materials/moisture.hpp"
#include "tools/answer/judge/gate.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/lined.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/judge/safe_humidity.hpp"
#include "tools/answer/survey/survey_words.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/filled.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/answer/words/remedy.hpp"
#include "tools/answer/words/steps.hpp"

namespace quoin::tools {
namespace {

using Kind = Outcome::Kind;

/// "the coldest spot goes from 8.7 to 9.6 °C: wet".
std::string gain(const SolvedVariant& before, const SolvedVariant& after) {
  const double was = coldest_in(before), is = coldest_in(after);
  const Outcome* outcome = worst_outcome(after);
  if (outcome == nullptr || !std::isfinite(was)) return "";
  const int decimals = std::abs(is - was) < 0.05 ? 1 : decimals_for({was, is}, 1);
  const std::string moves =
      std::abs(is - was) < 0.05
          ? fmt::format("the coldest spot stays at {} °C", fixed(is, decimals))
          : fmt::format("the coldest spot goes from {} to {} °C", fixed(was, decimals),
                        fixed(is, decimals));
  return fmt::format("{}: {}", moves, badge(*outcome));
}

/// The remedy that only dries, or that airs, among others; null where the case shows none.
template <class Wanted>
const SolvedVariant* alone(const Results& results, Wanted wanted) {
  const SolvedVariant& first = results.variants.front();
  for (std::size_t v = 1; v < results.variants.size(); ++v) {
    const SolvedVariant& later = results.variants[v];
    if (is_remedy(first, later) && wanted(steps_of(first, later))) return &later;
  }
  return nullptr;
}

std::string with_gain(const std::string& step, const SolvedVariant& before,
                      const SolvedVariant* after) {
  const std::string gained = after == nullptr ? "" : gain(before, *after);
  return gained.empty() ? step + "." : fmt::format("{}: {}.", step, gained);
}

bool is_wet(const SolvedVariant& solved) {
  return std::any_of(solved.variant.regions.begin(), solved.variant.regions.end(),
                     [](const cases::Region& region) {
                       return region.part == materials::Part::fabric &&
                              materials::wetter_than_damp(region.material, region.moisture);
                     });
}

/// What is built into a variant that no temperature tells.
std::string not_counted(const SolvedVariant& first, const SolvedVariant& best) {
  std::string text;
  if (lined_inside(best.variant)) text += " Condensation behind the lining is not counted in that.";
  if (fills_cavity(first, best))
    text += " Rain and damp that cross the filled cavity are not counted in that.";
  return text;
}

/// Where nothing has to be done: what a variant would give all the same.
std::vector<std::string> steps_of_safe(const Results& results, std::size_t chosen) {
  if (chosen == 0) return {};
  const SolvedVariant& first = results.variants.front();
  const SolvedVariant& best = results.variants[chosen];
  const std::string more =
      fmt::format("Nothing has to be done here against wet or mould; \"{}\" would give more margin",
                  best.variant.name);
  return {with_gain(more, first, &best) +
          (steps_of(first, best).built ? not_counted(first, best) : std::string())};
}

/// Up to which humidity the room of the best variant keeps its limit; empty: that is not missing.
std::string drier_step(const SolvedVariant& first, const SolvedVariant& best) {
  const auto humidity = drier_air(best);
  const Outcome* worst = worst_outcome(best);
  if (!humidity || worst == nullptr) return "";
  const cases::Space& room = best.variant.spaces[worst->space];
  std::optional<double> now = room.humidity;
  for (const cases::Space& was : first.variant.spaces) {
    if (was.name == room.name) now = was.humidity;
  }
  const double there = 100 * room.humidity.value_or(0.0);
  const std::string known = now && *now != room.humidity.value_or(0.0)
                                ? fmt::format("now about {:.0f} %, in \"{}\" {:.0f} %", 100 * *now,
                                              best.variant.name, there)
                                : fmt::format("now about {:.0f} %", there);
  return fmt::format(
      "Keep {} from ever passing {:.0f} % humidity ({}): its limit is then passed in at most 10 of "
      "100 cases, instead of {}.{}",
      room.name, 100 * *humidity, known, cases_of_100(worst->chance.value_or(0.0)),
      safe_when_drier(best) ? "" : " That alone does not make it safe.");
}

/// What has to be done to the masonry, then to the section, then to the air.
std::vector<std::string> steps_to(const Results& results, std::size_t chosen) {
  const SolvedVariant& first = results.variants.front();
  const SolvedVariant& best = results.variants[chosen];
  const Steps steps = steps_of(first, best);
  std::vector<std::string> all;
  const auto only_dries = [](const Steps& each) {
    return !each.dried.empty() && !each.built && each.airs.empty();
  };
  const SolvedVariant* dries = only_dries(steps) ? &best : alone(results, only_dries);
  // Where nothing mends it, what drying gains is told all the same.
  const bool shown_dry =
      !steps.dried.empty() || (dries != nullptr && (is_wet(first) || chosen == 0));
  if (shown_dry) {
    const std::vector<std::string> dried =
        steps.dried.empty() ? steps_of(first, *dries).dried : steps.dried;
    all.push_back(with_gain(fmt::format("Keep water out and let {} dry", cases::joined(dried)),
                            first, dries));
  } else if (is_wet(first)) {
    all.emplace_back(
        "Keep water out and let the masonry dry: no variant of this case shows it dry.");
  }
  // What a step gains is told from where the one before it ends, if the case shows that.
  const SolvedVariant& from = shown_dry && dries != nullptr && dries != &best ? *dries : first;
  const bool by_air = !steps.airs.empty() && !steps.built;
  const std::string drier = drier_step(first, best);
  if (by_air) {
    all.push_back(with_gain(fmt::format("Drier or warmer air, as in \"{}\", {}", best.variant.name,
                                        cases::joined(steps.airs)),
                            from, &best));
  } else if (chosen != 0 && &best != dries) {
    all.push_back(with_gain(fmt::format("{} \"{}\"", all.empty() ? "Carry out" : "Then carry out",
                                        best.variant.name),
                            from, &best) +
                  not_counted(first, best));
    // How dry a room has to be is told by the step below, where there is one.
    if (!steps.airs.empty() && (drier.empty() || steps.warmer))
      all.push_back(fmt::format("And keep {}: \"{}\" counts on it.", cases::joined(steps.airs),
                                best.variant.name));
  }
  if (!drier.empty()) all.push_back(drier);
  const Outcome::Kind now = worst_outcome(first)->kind;
  if (all.empty() && now != Kind::not_judged)
    all.emplace_back(
        "What would mend it is not in this case: add variants that dry it, line it or air the "
        "room, and solve again.");
  return all;
}

}  // namespace

double coldest_in(const SolvedVariant& solved) {
  const Outcome* worst = worst_outcome(solved);
  return worst == nullptr ? std::nan("")
                          : surface_of(solved, worst->space).coldest.temperature.value;
}

std::optional<double> drier_air(const SolvedVariant& solved) {
  const Outcome* worst = worst_outcome(solved);
  if (worst == nullptr || worst->kind == Kind::safe || worst->kind == Kind::not_judged ||
      worst->kind == Kind::fails || worst->kind == Kind::dry_first) {
    return std::nullopt;
  }
  return safe_humidity(solved, surface_of(solved, worst->space));
}

bool safe_when_drier(const SolvedVariant& solved) {
  const auto& broken = worst_outcome(solved)->broken;
  const bool other = std::any_of(broken.begin(), broken.end(),
                                 [](const BrokenLimit& limit) { return limit.unit == "1"; });
  return !other && solved.outcomes.size() == 1 && gate(solved.variant).empty();
}

std::vector<std::string> advised_steps(const Results& results, std::size_t chosen) {
  const SolvedVariant& first = results.variants.front();
  const bool safe = worst_outcome(first)->kind == Kind::safe && !is_wet(first);
  std::vector<std::string> all = safe ? steps_of_safe(results, chosen) : steps_to(results, chosen);
  if (std::string step = results.survey ? first_step(*results.survey) : ""; !step.empty())
    all.insert(all.begin(), std::move(step));
  return all;
}

}  // namespace quoin::tools
