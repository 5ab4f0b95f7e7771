// SPDX-License-Identifier: Apache-2.0
#include "tools/compare.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "solver/courses.hpp"
#include "tools/places.hpp"

namespace quoin::tools {
namespace {

constexpr double same_place = 0.15;  // m: linings move a surface by less
constexpr double noticeable = 0.05;  // K

double distance(geometry::Point a, geometry::Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

const solver::AirSurface* surface_of(const SolvedVariant& solved, const std::string& space) {
  for (const solver::AirSurface& surface : solved.surface.airs) {
    if (solved.variant.spaces[surface.air].name == space) return &surface;
  }
  return nullptr;
}

/// Calls visit(place, temperature) for every node of an air's surfaces.
template <class Visit>
void for_each_surface_node(const SolvedVariant& solved, SpaceId air, Visit visit) {
  for (const solver::Course& course : solver::courses_of(solved.surface)) {
    if (course.surface.air != air) continue;
    for (std::size_t k = 0; k < course.place.size(); ++k) {
      visit(course.place[k], course.temperature[k]);
    }
  }
}

/// Temperature of the part of an air's surface that corresponds to a spot of another variant: of
/// the part with the same name the coldest; without a name the nearest point, if one is near.
std::optional<double> corresponding(const SolvedVariant& solved, SpaceId air,
                                    const std::string& name, geometry::Point place) {
  std::optional<double> found;
  double nearest = same_place;
  for_each_surface_node(solved, air, [&](geometry::Point here, double temperature) {
    if (!name.empty()) {
      if (name_of_place(solved.variant, here) != name) return;
      if (!found || temperature < *found) found = temperature;
    } else if (const double away = distance(here, place); away < nearest) {
      nearest = away;
      found = temperature;
    }
  });
  return found;
}

/// The place that lost most, looking at the cold spots of before and of after.
struct Drop {
  double kelvin = 0.0;
  geometry::Point place;
  std::string words;
  double before = 0.0;
  double after = 0.0;
};

Drop biggest_drop(const SolvedVariant& first, const solver::AirSurface& was,
                  const SolvedVariant& later, const solver::AirSurface& is) {
  Drop drop;
  const auto look = [&](const SolvedVariant& solved, const solver::Spot& spot,
                        const SolvedVariant& other, SpaceId other_air, bool spot_is_before) {
    const auto there =
        corresponding(other, other_air, name_of_place(solved.variant, spot.place), spot.place);
    if (!there) return;
    const double before = spot_is_before ? spot.temperature.value : *there;
    const double after = spot_is_before ? *there : spot.temperature.value;
    if (before - after > drop.kelvin) {
      drop = {before - after, spot.place, words_for(solved, spot), before, after};
    }
  };
  for (const solver::Spot& spot : was.cold_spots) look(first, spot, later, is.air, true);
  for (const solver::Spot& spot : is.cold_spots) look(later, spot, first, was.air, false);
  return drop;
}

std::string words(const Change& change, const SolvedVariant& first, const solver::AirSurface& was,
                  const SolvedVariant& later, const solver::AirSurface& is, const Drop& drop) {
  const double rise = change.after - change.before;
  const std::string room = first.variant.spaces[was.air].name;
  const std::string from = words_for(first, was.coldest);
  const std::string to = words_for(later, is.coldest);
  std::string text =
      std::abs(rise) < noticeable
          ? fmt::format("{}: leaves the coldest spot of {} at {:.1f} °C", change.variant, room,
                        change.after)
          : fmt::format("{}: {} the coldest spot of {} from {:.1f} to {:.1f} °C", change.variant,
                        rise > 0 ? "raises" : "lowers", room, change.before, change.after);
  if (from != to) {
    text += fmt::format(" and moves it from {} to {}", from, to);
  } else {
    text += fmt::format(", still at {}", to);
  }
  const bool told = rise < -noticeable && from == to && from == drop.words;
  if (drop.kelvin > noticeable && !told) {
    text += fmt::format("; {} gets colder, from {:.1f} to {:.1f} °C", drop.words, drop.before,
                        drop.after);
  }
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
      const Drop drop = biggest_drop(first, was, later, *is);
      Change change;
      change.variant = later.variant.name;
      change.space = was.air;
      change.before = was.coldest.temperature.value;
      change.after = is->coldest.temperature.value;
      change.moved = distance(was.coldest.place, is->coldest.place);
      change.biggest_drop = drop.kelvin;
      change.drop_place = drop.place;
      change.words = words(change, first, was, later, *is, drop);
      result.push_back(std::move(change));
    }
  }
  return result;
}

}  // namespace quoin::tools
