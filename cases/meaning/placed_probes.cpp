// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/placed_probes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "cases/text/words.hpp"
#include "geometry/mesh.hpp"
#include "geometry/surface.hpp"

namespace quoin::cases {
namespace {

using geometry::Mesh;
using geometry::Point;
using geometry::Surface;
using Written = Named<WrittenProbe>;

double distance(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

bool is_on(const Space& space, const std::string& on) {
  constexpr std::string_view kinds[] = {"inside", "outside", "unheated"};
  return space.name == on || kinds[static_cast<std::size_t>(space.is)] == on;
}

/// A named place on a surface: where its ends lie along it, the lesser first, m.
struct Found {
  const Surface* surface = nullptr;
  double begins = 0.0;
  double ends = 0.0;
};

/// The surfaces of a drawing, walked with the material on the left: to the right of who looks at
/// them from their air.
class Surfaces {
 public:
  Surfaces(const geometry::Drawing& drawing, const Per<SpaceId, Space>& spaces) {
    if (drawing.places.empty()) return;
    const geometry::Section section = geometry::section_of(drawing.sheet);
    if (section.cells.empty()) return;
    mesh_ = geometry::mesh_of(section, geometry::subdivision_of(section, 1.0));
    Per<SpaceId, SpaceId> air;
    for (const Space& space : spaces) air.add(space.air);
    surfaces_ = geometry::surfaces(mesh_, air);
  }

  /// How far along a surface a place of it lies, m; absent where it is not on it.
  [[nodiscard]] std::optional<double> along(const Surface& surface, Point place) const {
    for (std::size_t k = 0; k < surface.faces.size(); ++k) {
      const Point a = mesh_.place(surface.node(k)), b = mesh_.place(surface.node(k + 1));
      const double length = distance(a, b);
      if (distance(a, place) + distance(place, b) > length + 2 * geometry::snap) continue;
      const double share = length == 0.0 ? 0.0 : std::min(1.0, distance(a, place) / length);
      return surface.along[k] + share * (surface.along[k + 1] - surface.along[k]);
    }
    return std::nullopt;
  }

  [[nodiscard]] Point at(const Surface& surface, double along) const {
    std::size_t k = 0;
    while (k + 2 < surface.along.size() && surface.along[k + 1] < along) ++k;
    const Point a = mesh_.place(surface.node(k)), b = mesh_.place(surface.node(k + 1));
    const double share = std::clamp(
        (along - surface.along[k]) / (surface.along[k + 1] - surface.along[k]), 0.0, 1.0);
    return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
  }

  /// A place on a surface of these spaces; absent where it is on none.
  [[nodiscard]] std::optional<Found> find(const geometry::NamedPlace& place,
                                          const Per<SpaceId, Space>& spaces,
                                          const std::string& on) const {
    for (const Surface& surface : surfaces_) {
      if (!is_on(spaces[surface.air], on)) continue;
      const auto from = along(surface, place.from), to = along(surface, place.to);
      if (from && to) return Found{&surface, std::min(*from, *to), std::max(*from, *to)};
    }
    return std::nullopt;
  }

 private:
  Mesh mesh_;
  std::vector<Surface> surfaces_;
};

/// Whether a place has this name, or one that goes on after it: "the angle" of the corner.
bool is_called(const geometry::NamedPlace& place, const std::string& name, bool in_full) {
  const std::string with_article = name.rfind("the ", 0) == 0 ? name : "the " + name;
  return place.name == with_article || (!in_full && place.name.rfind(with_article + " ", 0) == 0);
}

/// Places one probe after the other.
class Placing {
 public:
  Placing(const geometry::Drawing& drawing, const Per<SpaceId, Space>& spaces, FaultList& faults,
          std::vector<Remark>& remarks)
      : drawing_(drawing),
        spaces_(spaces),
        surfaces_(drawing, spaces),
        faults_(faults),
        remarks_(remarks) {}

  [[nodiscard]] std::optional<Point> place(const Written& probe, const WrittenOnSurface& where) {
    if (std::none_of(spaces_.begin(), spaces_.end(),
                     [&](const Space& space) { return is_on(space, where.on); })) {
      refuse_space(probe, where.on);
      return std::nullopt;
    }
    for (const bool in_full : {true, false}) {
      std::optional<Found> found;
      std::set<std::string> names;  // as the places that begin like it are called in full
      for (const geometry::NamedPlace& named : drawing_.places) {
        if (!is_called(named, where.from, in_full)) continue;
        const auto here = surfaces_.find(named, spaces_, where.on);
        if (!here) continue;
        names.insert(named.name);
        if (!found) found = here;
      }
      if (found && names.size() == 1) return beside(probe, where, *found);
    }
    refuse_place(probe, where);
    return std::nullopt;
  }

 private:
  [[nodiscard]] std::optional<Point> beside(const Written& probe, const WrittenOnSurface& where,
                                            const Found& found) {
    const Surface& surface = *found.surface;
    const double left = found.begins - where.at, right = found.ends + where.at;
    const bool left_fits = left >= -geometry::snap, right_fits = right <= surface.along.back();
    const bool to_left = where.leg ? *where.leg == Leg::left : left_fits;
    if (to_left ? left_fits : right_fits) {
      const bool either = !where.leg && left_fits && right_fits && where.at > 0.0;
      if (either) {
        remarks_.push_back({fmt::format("'{}' lies to the left of {}, as seen from '{}': with "
                                        "`leg: right` it would lie on the other side",
                                        probe.name, where.from, spaces_[surface.air].name),
                            probe.mark.line});
      }
      return surfaces_.at(surface, std::max(0.0, to_left ? left : right));
    }
    const double room = to_left ? found.begins : surface.along.back() - found.ends;
    faults_.add(mark_of(probe, "at"),
                {fmt::format("the probe '{}' lies beyond the end of the surface", probe.name),
                 fmt::format("{:.4g} mm", 1e3 * where.at),
                 fmt::format("up to {:.4g} mm from {} to this side", 1e3 * room, where.from), ""});
    return std::nullopt;
  }

  static Mark mark_of(const Written& probe, std::string_view key) {
    const Entry* entry = probe.node->find(key);
    return entry == nullptr ? probe.mark : entry->value.mark;
  }

  void refuse_space(const Written& probe, const std::string& on) {
    std::vector<std::string> names{"inside", "outside"};
    for (const Space& space : spaces_) names.push_back(space.name);
    faults_.add(mark_of(probe, "on"), {fmt::format("no surface is on '{}'", on), on,
                                       "one of: " + joined(names, ", "), did_you_mean(on, names)});
  }

  void refuse_place(const Written& probe, const WrittenOnSurface& where) {
    std::vector<std::string> names;
    for (const geometry::NamedPlace& named : drawing_.places) {
      const bool known = std::find(names.begin(), names.end(), named.name) != names.end();
      if (!known && surfaces_.find(named, spaces_, where.on)) names.push_back(named.name);
    }
    faults_.add(
        mark_of(probe, "from"),
        {fmt::format("no one place on the surface of '{}' is called this", where.on), where.from,
         names.empty() ? "[x, y]: nothing is named on that surface"
                       : "one of: " + joined(names, ", "),
         did_you_mean(where.from, names)});
  }

  const geometry::Drawing& drawing_;
  const Per<SpaceId, Space>& spaces_;
  Surfaces surfaces_;
  FaultList& faults_;
  std::vector<Remark>& remarks_;
};

}  // namespace

std::vector<Named<Point>> placed_probes(const std::vector<Written>& written,
                                        const geometry::Drawing& drawing,
                                        const Per<SpaceId, Space>& spaces, FaultList& faults,
                                        std::vector<Remark>& remarks) {
  std::vector<Named<Point>> placed;
  std::optional<Placing> placing;
  for (const Written& probe : written) {
    std::optional<Point> point = probe.value.point;
    if (probe.value.surface) {
      if (!placing) placing.emplace(drawing, spaces, faults, remarks);
      point = placing->place(probe, *probe.value.surface);
    }
    if (point) placed.push_back({probe.name, probe.mark, probe.node, *point});
  }
  return placed;
}

}  // namespace quoin::cases
