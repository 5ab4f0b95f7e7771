// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/colder.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "tools/answer/find/developed.hpp"
#include "tools/answer/find/places.hpp"

namespace quoin::tools {
namespace {

constexpr double same_point = 2e-5;  // m: lines of sections are that near at least
constexpr double parallel = 1e-6;    // of the sine of the angle between two pieces

using Surfaces = std::vector<DevelopedSurface>;

Surfaces surfaces_of(const SolvedVariant& solved, SpaceId air) {
  Surfaces all;
  for (DevelopedSurface& surface : developed_surfaces(solved)) {
    if (surface.air == air) all.push_back(std::move(surface));
  }
  return all;
}

geometry::Point direction(const DevelopedSurface& surface, std::size_t piece) {
  const geometry::Point a = surface.place[piece], b = surface.place[piece + 1];
  const double length = std::hypot(b.x - a.x, b.y - a.y);
  return {(b.x - a.x) / length, (b.y - a.y) / length};
}

bool along_each_other(geometry::Point a, geometry::Point b) {
  return std::abs(a.x * b.y - a.y * b.x) < parallel;
}

/// The temperature at a share of a piece of a surface.
double within(const DevelopedSurface& surface, std::size_t piece, double share) {
  return (1.0 - share) * surface.temperature[piece] + share * surface.temperature[piece + 1];
}

/// The temperature where some surfaces run through a point in a direction.
std::optional<double> through(const Surfaces& surfaces, geometry::Point point,
                              geometry::Point way) {
  for (const DevelopedSurface& surface : surfaces) {
    for (std::size_t piece = 0; piece + 1 < surface.place.size(); ++piece) {
      if (surface.is_fabric[piece] == 0 || !along_each_other(direction(surface, piece), way))
        continue;
      const geometry::Point a = surface.place[piece], b = surface.place[piece + 1];
      const double length = std::hypot(b.x - a.x, b.y - a.y);
      const double along =
          (point.x - a.x) * (b.x - a.x) / length + (point.y - a.y) * (b.y - a.y) / length;
      const double off =
          std::abs((point.x - a.x) * (b.y - a.y) - (point.y - a.y) * (b.x - a.x)) / length;
      if (off > same_point || along < -same_point || along > length + same_point) continue;
      return within(surface, piece, std::clamp(along / length, 0.0, 1.0));
    }
  }
  return std::nullopt;
}

/// The temperature so far along a surface, of fabric.
std::optional<double> at(const DevelopedSurface& surface, double along) {
  for (std::size_t piece = 0; piece + 1 < surface.along.size(); ++piece) {
    const double from = surface.along[piece], to = surface.along[piece + 1];
    if (along < from - same_point || along > to + same_point || surface.is_fabric[piece] == 0)
      continue;
    return within(surface, piece, std::clamp((along - from) / (to - from), 0.0, 1.0));
  }
  return std::nullopt;
}

/// A named point on a surface of either variant, and where along each it lies.
struct Shared {
  std::size_t surface_before = 0;
  double before = 0.0, after = 0.0;  // m
};

geometry::Point place_at(const DevelopedSurface& surface, double along) {
  const auto node = std::lower_bound(surface.along.begin(), surface.along.end(), along);
  return surface.place[std::min<std::size_t>(static_cast<std::size_t>(node - surface.along.begin()),
                                             surface.place.size() - 1)];
}

double apart(geometry::Point a, geometry::Point b) { return std::hypot(b.x - a.x, b.y - a.y); }

/// A stretch on one of the surfaces before.
struct Earlier {
  std::size_t surface = 0;
  NamedStretch stretch;
};

/// What a stretch was before: of its name, run the same way, and the nearest, as either side of a
/// partition has an angle of one name.
std::optional<Earlier> same_stretch(const SolvedVariant& first, const Surfaces& before,
                                    const DevelopedSurface& after, const NamedStretch& is) {
  const geometry::Point from = place_at(after, is.from), to = place_at(after, is.to);
  std::optional<Earlier> same;
  double nearest = std::numeric_limits<double>::infinity();
  for (std::size_t s = 0; s < before.size(); ++s) {
    for (const NamedStretch& was : named_stretches(first.variant, before[s])) {
      if (was.name != is.name) continue;
      const geometry::Point start = place_at(before[s], was.from),
                            end = place_at(before[s], was.to);
      if ((end.x - start.x) * (to.x - from.x) + (end.y - start.y) * (to.y - from.y) < 0.0) continue;
      const double away = apart(start, from) + apart(end, to);
      if (away >= nearest) continue;
      nearest = away;
      same = Earlier{s, was};
    }
  }
  return same;
}

/// The named points that a surface shares with those of before.
std::vector<Shared> shared_points(const SolvedVariant& first, const Surfaces& before,
                                  const SolvedVariant& later, const DevelopedSurface& after) {
  std::vector<Shared> all;
  for (const NamedStretch& is : named_stretches(later.variant, after)) {
    const auto was = same_stretch(first, before, after, is);
    if (!was) continue;
    all.push_back({was->surface, was->stretch.from, is.from});
    all.push_back({was->surface, was->stretch.to, is.to});
  }
  return all;
}

/// The temperature before at the point that corresponds to a node of the surface after.
std::optional<double> before_at(const Surfaces& before, const std::vector<Shared>& shared,
                                const DevelopedSurface& after, std::size_t node) {
  const std::size_t pieces = after.is_fabric.size();
  const std::size_t left = node == 0 ? 0 : node - 1, right = std::min(node, pieces - 1);
  const bool corner = !along_each_other(direction(after, left), direction(after, right));
  if (!corner) {
    if (const auto same = through(before, after.place[node], direction(after, right))) return same;
  }
  const Shared* nearest = nullptr;
  for (const Shared& each : shared) {
    if (nearest == nullptr ||
        std::abs(after.along[node] - each.after) < std::abs(after.along[node] - nearest->after)) {
      nearest = &each;
    }
  }
  if (nearest == nullptr) return std::nullopt;
  return at(before[nearest->surface_before], nearest->before + after.along[node] - nearest->after);
}

std::string name_of(const SolvedVariant& later, const DevelopedSurface& surface, std::size_t node) {
  solver::Spot spot;
  spot.place = surface.place[node];
  spot.region = geometry::RegionId(0U);
  double nearest = std::numeric_limits<double>::infinity();
  for (const geometry::Face& face : geometry::faces(later.surface.field.mesh)) {
    for (const std::size_t end : {face.from, face.to}) {
      const geometry::Point here = later.surface.field.mesh.place(end);
      const double away = std::hypot(here.x - spot.place.x, here.y - spot.place.y);
      if (away < nearest) {
        nearest = away;
        spot.region = face.region;
      }
    }
  }
  return words_for(later, spot);
}

}  // namespace

std::vector<Colder> colder_places(const SolvedVariant& first, SpaceId first_air,
                                  const SolvedVariant& later, SpaceId later_air,
                                  double noticeable) {
  std::vector<Colder> all;
  const Surfaces before = surfaces_of(first, first_air);
  for (const DevelopedSurface& after : surfaces_of(later, later_air)) {
    if (after.is_fabric.empty()) continue;
    const std::vector<Shared> shared = shared_points(first, before, later, after);
    std::size_t biggest = after.place.size();  // of the stretch that is being walked; or none
    double before_there = 0.0;                 // degC
    const auto finish = [&] {
      if (biggest == after.place.size()) return;
      all.push_back({name_of(later, after, biggest), after.place[biggest], before_there,
                     after.temperature[biggest]});
      biggest = after.place.size();
    };
    for (std::size_t node = 0; node < after.place.size(); ++node) {
      const bool fabric = (node > 0 && after.is_fabric[node - 1] != 0) ||
                          (node < after.is_fabric.size() && after.is_fabric[node] != 0);
      const double is = after.temperature[node];
      const double was = fabric ? before_at(before, shared, after, node).value_or(is) : is;
      if (was - is <= noticeable) {
        finish();
      } else if (biggest == after.place.size() ||
                 was - is > before_there - after.temperature[biggest]) {
        biggest = node;
        before_there = was;
      }
    }
    finish();
  }
  std::stable_sort(all.begin(), all.end(), [](const Colder& a, const Colder& b) {
    return a.before - a.after > b.before - b.after;
  });
  return all;
}

}  // namespace quoin::tools
