// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/compare.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <utility>

#include "cases/meaning/wall_remarks.hpp"
#include "materials/moist_air.hpp"
#include "tools/answer/find/colder.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/words/figures.hpp"

namespace quoin::tools {
namespace {

constexpr double noticeable = 0.05;  // K

double distance(geometry::Point a, geometry::Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

const solver::AirSurface* surface_of(const SolvedVariant& solved, const std::string& space) {
  for (const solver::AirSurface& surface : solved.surface.airs) {
    if (solved.variant.spaces[surface.air].name == space) return &surface;
  }
  return nullptr;
}

/// The widest band of the cold spots of an air, K: what its surface is known to.
double band_of(const solver::AirSurface& surface) {
  double band = surface.coldest.temperature.band;
  for (const solver::Spot& spot : surface.cold_spots) band = std::max(band, spot.temperature.band);
  return band;
}

std::string moved(const std::string& from, const std::string& to) {
  return from == to ? ", still at " + to : fmt::format(" and moves it from {} to {}", from, to);
}

/// Whether the same cold spot of both is warmer in the later one.
bool spot_is_warmer(const std::string& name, const SolvedVariant& first,
                    const solver::AirSurface& was, const SolvedVariant& later,
                    const solver::AirSurface& is) {
  const auto coldest = [&](const SolvedVariant& solved, const solver::AirSurface& surface) {
    double lowest = std::numeric_limits<double>::infinity();
    for (const solver::Spot& spot : surface.cold_spots) {
      if (words_for(solved, spot) == name) lowest = std::min(lowest, spot.temperature.value);
    }
    return lowest;
  };
  const double before = coldest(first, was), after = coldest(later, is);
  return std::isfinite(before) && std::isfinite(after) && after > before;
}

/// What the air of a room gains or loses in vapour where another temperature is stated beside the
/// same relative humidity: who heats a room adds no water to it. Empty where it is not so.
std::string other_vapour(const cases::Space& before, const cases::Space& after) {
  constexpr double other_room = 0.5;  // K
  constexpr double same = 0.005;
  if (!before.humidity || !after.humidity || after.moisture || before.moisture) return "";
  if (std::abs(after.temperature - before.temperature) < other_room ||
      std::abs(*after.humidity - *before.humidity) > same) {
    return "";
  }
  const double share = materials::saturation_pressure(after.temperature) /
                       materials::saturation_pressure(before.temperature);
  const bool warmer = share > 1.0;
  const double alone = *before.humidity / share;
  return fmt::format(
      "; at the same {:.0f} % its air holds {:.0f} % {} vapour: with none {} {}",
      100 * *after.humidity, 100 * std::abs(share - 1.0), warmer ? "more" : "less",
      warmer ? "added" : "taken out",
      alone >= 1.0 ? "it would drip" : fmt::format("it would be at {:.0f} %", 100 * alone));
}

std::string words(const Change& change, const SolvedVariant& first, const solver::AirSurface& was,
                  const SolvedVariant& later, const solver::AirSurface& is) {
  const double rise = change.after - change.before;
  const std::string room = first.variant.spaces[was.air].name;
  const std::string from = words_for(first, was.coldest);
  const std::string to = words_for(later, is.coldest);
  std::string text;
  if (std::abs(rise) < noticeable) {
    text = fmt::format("{}: leaves the coldest spot of {} at {} °C", change.variant, room,
                       fixed(change.after, 1));
  } else {
    const int decimals = decimals_for({change.before, change.after}, 1);
    text = fmt::format("{}: {} the coldest spot of {} from {} to {} °C", change.variant,
                       rise > 0 ? "raises" : "lowers", room, fixed(change.before, decimals),
                       fixed(change.after, decimals));
  }
  text += moved(from, to);
  std::set<std::string> named;  // of a name the biggest drop is told, which comes first
  for (const Colder& colder : change.colder) {
    if (!named.insert(colder.name).second) continue;
    if (rise < -noticeable && colder.name == to && from == to) continue;  // told already
    const int decimals = decimals_for({colder.before, colder.after}, 1);
    text += fmt::format("; {}{} gets colder, from {} to {} °C",
                        spot_is_warmer(colder.name, first, was, later, is) ? "a place beside " : "",
                        colder.name, fixed(colder.before, decimals), fixed(colder.after, decimals));
  }
  text += other_vapour(first.variant.spaces[was.air], later.variant.spaces[is.air]);
  if (cases::is_less_vented(first.variant, later.variant))
    text += "; less air passes the void, where timber rots in standing air";
  return text;
}

}  // namespace

std::vector<Change> changes(const std::vector<SolvedVariant>& variants) {
  std::vector<Change> result;
  for (std::size_t v = 1; v < variants.size(); ++v) {
    const SolvedVariant& first = variants.front();
    const SolvedVariant& later = variants[v];
    for (const solver::AirSurface& was : first.surface.airs) {
      const auto* is = surface_of(later, first.variant.spaces[was.air].name);
      if (is == nullptr) continue;
      Change change;
      change.variant = later.variant.name;
      change.space = was.air;
      change.before = was.coldest.temperature.value;
      change.after = is->coldest.temperature.value;
      change.moved = distance(was.coldest.place, is->coldest.place);
      change.colder = colder_places(first, was.air, later, is->air,
                                    std::max(noticeable, band_of(was) + band_of(*is)));
      change.words = words(change, first, was, later, *is);
      result.push_back(std::move(change));
    }
  }
  return result;
}

}  // namespace quoin::tools
