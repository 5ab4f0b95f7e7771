// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/judge/outcome.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "tools/answer/judge/gate.hpp"
#include "tools/answer/judge/judge.hpp"

namespace quoin::tools {
namespace {

using Kind = Outcome::Kind;

bool by_humidity(const Verdict& verdict) { return verdict.unit != "1"; }

/// Whether passing this limit means mould: from 80 % on it does, and where the author says so. A
/// stricter limit of another name is there for something else, such as corrosion.
bool means_mould(const Verdict& verdict) {
  constexpr double mould_starts = 0.79;  // critical humidity dips below 80 %
  return by_humidity(verdict) &&
         (verdict.limit >= mould_starts || verdict.criterion.find("mould") != std::string::npos);
}

/// All that is asked of the coldest spot of a room.
std::vector<Verdict> all_asked(const SolvedVariant& solved, const solver::AirSurface& surface) {
  std::vector<Verdict> all;
  for (const Verdict& verdict : solved.verdicts) {
    if (verdict.space == surface.air) all.push_back(verdict);
  }
  const AirHumidity* air = humidity_of(solved, surface.air);
  const bool stated = air != nullptr && air->limit_by != mould_limit().name;
  if (air != nullptr && !stated) all.push_back(judged(solved, surface, mould_limit()));
  return all;
}

/// The first in the order of `before` of those that `counts`; null where none does.
template <class Counts, class Before>
const Verdict* first_of(const std::vector<Verdict>& all, Counts counts, Before before) {
  const Verdict* first = nullptr;
  for (const Verdict& verdict : all) {
    if (counts(verdict) && (first == nullptr || before(verdict, *first))) first = &verdict;
  }
  return first;
}

bool tighter(const Verdict& a, const Verdict& b) { return a.margin < b.margin; }

Outcome by(const Verdict& verdict, Kind kind) {
  Outcome outcome;
  outcome.kind = kind;
  outcome.decided_by = verdict.criterion;
  outcome.limit = verdict.limit;
  outcome.margin = verdict.margin;
  outcome.band = verdict.band;
  outcome.unit = verdict.unit;
  return outcome;
}

Outcome by_dew_point(const solver::AirSurface& surface, const AirHumidity& air, Kind kind) {
  Outcome outcome;
  outcome.kind = kind;
  outcome.decided_by = "dew point";
  outcome.limit = 1.0;
  outcome.margin = air.margin_to_condensation;
  outcome.band = surface.coldest.temperature.band;
  outcome.unit = "K";
  return outcome;
}

/// What decides, everything but the words.
Outcome decided(const SolvedVariant& solved, const solver::AirSurface& surface,
                const std::vector<Verdict>& all, double chance) {
  const AirHumidity* air = humidity_of(solved, surface.air);
  const double band = surface.coldest.temperature.band;
  if (air != nullptr && air->margin_to_condensation <= band)
    return by_dew_point(surface, *air,
                        air->margin_to_condensation < -band ? Kind::wet : Kind::at_the_dew_point);
  const auto fails = [](const Verdict& each) { return !each.holds; };
  if (const Verdict* mould = first_of(
          all, [&](const Verdict& each) { return fails(each) && means_mould(each); }, tighter))
    return by(*mould, Kind::mould);
  const auto factor_first = [](const Verdict& a, const Verdict& b) {
    return by_humidity(a) == by_humidity(b) ? tighter(a, b) : by_humidity(b);
  };
  if (const Verdict* other = first_of(all, fails, factor_first)) return by(*other, Kind::fails);
  if (all.empty()) return {};
  const Verdict* nearest = first_of(all, by_humidity, tighter);
  const Verdict* within = first_of(
      all, [](const Verdict& each) { return each.margin <= each.band; }, tighter);
  if (nearest == nullptr)
    nearest = first_of(
        all, [](const Verdict&) { return true; }, tighter);
  if (!gate(solved.variant).empty()) return by(*nearest, Kind::dry_first);
  if (chance > marginal_chance) return by(*nearest, Kind::marginal);
  if (within != nullptr) return by(*within, Kind::marginal);
  const bool unknown = std::any_of(
      solved.variant.criteria.begin(), solved.variant.criteria.end(),
      [&](const auto& each) { return materials::needs_humidity(each.test) && air == nullptr; });
  return unknown ? Outcome{} : by(*nearest, Kind::safe);
}

}  // namespace

Tone tone_of(Outcome::Kind kind) {
  switch (kind) {
    case Outcome::Kind::wet:
    case Outcome::Kind::mould:
    case Outcome::Kind::fails:
      return Tone::bad;
    case Outcome::Kind::at_the_dew_point:
    case Outcome::Kind::dry_first:
    case Outcome::Kind::marginal:
      return Tone::doubtful;
    case Outcome::Kind::safe:
      return Tone::good;
    case Outcome::Kind::not_judged:
      return Tone::plain;
  }
  return Tone::plain;
}

Outcome outcome_in(const SolvedVariant& solved, const solver::AirSurface& surface,
                   std::optional<double> chance) {
  const std::vector<Verdict> all = all_asked(solved, surface);
  if (!chance) {
    for (const Chance& each : solved.chances) {
      if (each.space == surface.air && each.unit == "%RH")
        chance = std::max(chance.value_or(0.0), each.broken);
    }
  }
  Outcome outcome = decided(solved, surface, all, chance.value_or(0.0));
  outcome.space = surface.air;
  outcome.chance = chance;
  return outcome;
}

std::vector<Outcome> outcomes(const SolvedVariant& solved) {
  std::vector<Outcome> all;
  for (const solver::AirSurface* surface : judged_surfaces(solved))
    all.push_back(outcome_in(solved, *surface));
  return all;
}

const Outcome* outcome_of(const SolvedVariant& solved, SpaceId air) {
  for (const Outcome& outcome : solved.outcomes) {
    if (outcome.space == air) return &outcome;
  }
  return nullptr;
}

const Outcome* worst_outcome(const SolvedVariant& solved) {
  const auto worse = [](const Outcome& a, const Outcome& b) {
    return a.kind == b.kind ? a.chance.value_or(0.0) > b.chance.value_or(0.0) : a.kind < b.kind;
  };
  const auto worst = std::min_element(solved.outcomes.begin(), solved.outcomes.end(), worse);
  return worst == solved.outcomes.end() ? nullptr : &*worst;
}

bool any_bad(const Results& results) {
  return std::any_of(results.variants.begin(), results.variants.end(), [](const auto& solved) {
    return std::any_of(solved.outcomes.begin(), solved.outcomes.end(),
                       [](const Outcome& outcome) { return tone_of(outcome.kind) == Tone::bad; });
  });
}

}  // namespace quoin::tools
