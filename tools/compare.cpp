// SPDX-License-Identifier: Apache-2.0
#include "tools/compare.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

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

/// Temperature of the point of an air's surface nearest to a place; nothing where none is near.
std::optional<double> surface_temperature(const SolvedVariant& solved, SpaceId air,
                                          geometry::Point place) {
  std::optional<double> temperature;
  double nearest = same_place;
  const geometry::Mesh& mesh = solved.surface.field.mesh;
  for (const geometry::Surface& surface : geometry::surfaces(mesh, solved.surface.physics.air)) {
    if (surface.air != air) continue;
    for (std::size_t k = 0; k < surface.along.size(); ++k) {
      const double away = distance(mesh.place(surface.node(k)), place);
      if (away >= nearest) continue;
      nearest = away;
      temperature = solved.surface.temperature[surface.node(k)];
    }
  }
  return temperature;
}

/// The place that lost most, looking at the cold spots of before and of after.
struct Drop {
  double kelvin = 0.0;
  solver::Spot spot;
  const SolvedVariant* where = nullptr;  ///< the variant whose spot it is
  double before = 0.0;
  double after = 0.0;
};

Drop biggest_drop(const SolvedVariant& first, const solver::AirSurface& was,
                  const SolvedVariant& later, const solver::AirSurface& is) {
  Drop drop;
  const auto look = [&](const SolvedVariant& solved, const solver::Spot& spot, double before,
                        double after) {
    if (before - after > drop.kelvin) drop = {before - after, spot, &solved, before, after};
  };
  for (const solver::Spot& spot : was.cold_spots) {
    if (const auto after = surface_temperature(later, is.air, spot.place)) {
      look(first, spot, spot.temperature.value, *after);
    }
  }
  for (const solver::Spot& spot : is.cold_spots) {
    if (const auto before = surface_temperature(first, was.air, spot.place)) {
      look(later, spot, *before, spot.temperature.value);
    }
  }
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
  const bool told = rise < -noticeable && from == to &&
                    from == words_for(*(drop.where ? drop.where : &later), drop.spot);
  if (drop.kelvin > noticeable && drop.where != nullptr && !told) {
    text += fmt::format("; {} gets colder, from {:.1f} to {:.1f} °C",
                        words_for(*drop.where, drop.spot), drop.before, drop.after);
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
      change.drop_place = drop.spot.place;
      change.words = words(change, first, was, later, *is, drop);
      result.push_back(std::move(change));
    }
  }
  return result;
}

}  // namespace quoin::tools
