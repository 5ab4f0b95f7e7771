// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/judge/outcome.hpp"

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

#include "tools/answer/judge/gate.hpp"
#include "tools/answer/judge/judge.hpp"

namespace quoin::tools {
namespace {

using Kind = Outcome::Kind;

bool by_humidity(const Verdict& verdict) { return verdict.unit != "1"; }

/// Whether a word of a name begins with one of these, in letters of either size.
bool speaks_of(const std::string& name, std::initializer_list<std::string_view> beginnings) {
  std::string small = " ";
  for (const char c : name) {
    const bool capital = c >= 'A' && c <= 'Z';
    const bool letter = capital || (c >= 'a' && c <= 'z');
    small += capital ? static_cast<char>(c - 'A' + 'a') : letter ? c : ' ';
  }
  return std::any_of(beginnings.begin(), beginnings.end(), [&](std::string_view word) {
    return small.find(" " + std::string(word)) != std::string::npos;
  });
}

/// A limit that is looked at on a surface, with its verdict.
struct Asked {
  Verdict verdict;
  bool mould = false;
};

/// All that is asked of the coldest spot of a room.
std::vector<Asked> all_asked(const SolvedVariant& solved, const solver::AirSurface& surface) {
  std::vector<Asked> all;
  for (const cases::Criterion& criterion : looked_at(solved.variant)) {
    const bool humid = humidity_of(solved, surface.air) != nullptr;
    if (materials::needs_humidity(criterion.test) && !humid) continue;
    all.push_back({judged(solved, surface, criterion), is_for_mould(criterion)});
  }
  return all;
}

/// The first in the order of `before` of those that `counts`; null where none does.
template <class Counts, class Before>
const Verdict* first_of(const std::vector<Asked>& all, Counts counts, Before before) {
  const Verdict* first = nullptr;
  for (const Asked& each : all) {
    if (counts(each) && (first == nullptr || before(each.verdict, *first))) first = &each.verdict;
  }
  return first;
}

bool tighter(const Verdict& a, const Verdict& b) { return a.margin < b.margin; }

Outcome by(const Verdict& verdict, Kind kind) {
  Outcome outcome;
  outcome.kind = kind;
  outcome.decided_by = verdict.criterion;
  outcome.limit = verdict.limit;
  outcome.has = verdict.has;
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
  outcome.has = air.surface_humidity;
  outcome.margin = air.margin_to_condensation;
  outcome.band = surface.coldest.temperature.band;
  outcome.unit = "K";
  return outcome;
}

/// What decides, everything but the words.
Outcome decided(const SolvedVariant& solved, const solver::AirSurface& surface,
                const std::vector<Asked>& all, double chance) {
  const AirHumidity* air = humidity_of(solved, surface.air);
  const double band = surface.coldest.temperature.band;
  if (air != nullptr && air->margin_to_condensation <= band)
    return by_dew_point(surface, *air,
                        air->margin_to_condensation < -band ? Kind::wet : Kind::at_the_dew_point);
  const auto fails = [](const Asked& each) { return !each.verdict.holds; };
  if (const Verdict* mould = first_of(
          all, [&](const Asked& each) { return fails(each) && each.mould; }, tighter))
    return by(*mould, Kind::mould);
  const auto factor_first = [](const Verdict& a, const Verdict& b) {
    return by_humidity(a) == by_humidity(b) ? tighter(a, b) : by_humidity(b);
  };
  if (const Verdict* other = first_of(all, fails, factor_first)) return by(*other, Kind::fails);
  if (all.empty()) return {};
  const Verdict* nearest = first_of(
      all, [](const Asked& each) { return by_humidity(each.verdict); }, tighter);
  const Verdict* within = first_of(
      all, [](const Asked& each) { return each.verdict.margin <= each.verdict.band; }, tighter);
  if (nearest == nullptr)
    nearest = first_of(
        all, [](const Asked&) { return true; }, tighter);
  if (!gate(solved.variant).empty()) return by(*nearest, Kind::dry_first);
  if (chance > marginal_chance) return by(*nearest, Kind::marginal);
  if (within != nullptr) return by(*within, Kind::marginal);
  const bool unknown = std::any_of(
      solved.variant.criteria.begin(), solved.variant.criteria.end(),
      [&](const auto& each) { return materials::needs_humidity(each.test) && air == nullptr; });
  return unknown ? Outcome{} : by(*nearest, Kind::safe);
}

/// What does not hold, the decisive one first.
std::vector<BrokenLimit> broken(const std::vector<Asked>& all, const std::string& decisive) {
  std::vector<BrokenLimit> limits;
  for (const auto& [verdict, mould] : all) {
    if (!verdict.holds)
      limits.push_back({verdict.criterion, verdict.limit, verdict.has, verdict.unit, mould});
  }
  std::stable_partition(limits.begin(), limits.end(),
                        [&](const BrokenLimit& each) { return each.criterion == decisive; });
  return limits;
}

}  // namespace

bool is_for_mould(const cases::Criterion& criterion) {
  if (!materials::needs_humidity(criterion.test)) return false;
  const auto* limit = std::get_if<cases::SurfaceHumidityLimit>(&criterion.test);
  if (limit == nullptr) return true;  // critical humidity: above it mould starts
  constexpr double none_grows = 0.70;
  const std::string name = criterion.name + " " + criterion.guide;
  if (speaks_of(name, {"mould", "mold"})) return true;
  return limit->limit >= none_grows &&
         !speaks_of(name, {"corro", "rust", "iron", "steel", "metal", "rot", "decay", "timber",
                           "wood", "salt", "mite"});
}

std::vector<cases::Criterion> looked_at(const cases::Variant& variant) {
  std::vector<cases::Criterion> all = variant.criteria;
  const bool stated = std::any_of(all.begin(), all.end(), [](const cases::Criterion& each) {
    const auto* limit = std::get_if<cases::SurfaceHumidityLimit>(&each.test);
    return limit != nullptr && limit->limit <= 0.8 && is_for_mould(each);
  });
  if (!stated) all.push_back(mould_limit());
  return all;
}

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
  const std::vector<Asked> all = all_asked(solved, surface);
  if (!chance) {
    for (const Chance& each : solved.chances) {
      if (each.space == surface.air && each.unit == "%RH")
        chance = std::max(chance.value_or(0.0), each.broken);
    }
  }
  Outcome outcome = decided(solved, surface, all, chance.value_or(0.0));
  outcome.broken = broken(all, outcome.decided_by);
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
