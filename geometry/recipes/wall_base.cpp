// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/wall_base.hpp"

#include <algorithm>

namespace quoin::geometry {
namespace {

constexpr double usual_void_depth = 0.3;  // m
constexpr double deepest_void = 0.5;      // below the ground outside, for U by ISO 13370, m. Memory
constexpr double seen_around = 0.4;       // of wall and floor on a close-up, at least, m

/// The levels and faces of a wall base, m.
struct Lines {
  explicit Lines(const WallBase& base)
      : outside(thickness_of(base.layers)),
        masonry(outside - thickness_of(base.foundation)),
        floor_end(std::max(0.0, masonry)),
        top(base.wall.value_or(cut_distance(outside))),
        floor_under(-thickness_of(base.floor)),
        footing_under(-base.footing_depth),
        footing_top(footing_under + base.footing_height),
        void_floor(floor_under - base.void_depth.value_or(usual_void_depth)),
        edge_end(-base.edge_depth) {
    const double reach = std::max({2.5 * base.floor_width, 3.0, 3 * outside});
    west = -base.floor_width / 2;
    east = outside + reach;
    bottom = std::min(0.0, base.ground_level) - reach;
  }

  double outside;    ///< face of the wall
  double masonry;    ///< inside face of the foundation
  double floor_end;  ///< where the floor meets the wall
  double top, floor_under, footing_under, footing_top, void_floor, edge_end;
  double west, east, bottom;
};

/// The ground on both sides of the wall, up to the floor and to the level outside.
void fill_ground(Sheet& sheet, const WallBase& base, const Lines& at, double wall_top) {
  sheet.push_back({base.ground, rectangle(at.west, at.floor_end, at.bottom, 0), {}});
  sheet.push_back({base.ground, rectangle(at.floor_end, at.outside, at.bottom, wall_top), {}});
  sheet.push_back({base.ground, rectangle(at.outside, at.east, at.bottom, base.ground_level), {}});
}

Sheet air(const WallBase& base, const Lines& at) {
  return {{base.inside, rectangle(at.west, 0, 0, at.top), {}},
          {base.outside, rectangle(at.outside, at.east, base.ground_level, at.top), {}}};
}

Sheet sheet_of(const WallBase& base, const Lines& at) {
  Sheet sheet = air(base, at);
  fill_ground(sheet, base, at, 0);
  const bool suspended = base.beneath.valid();
  if (suspended) {
    sheet.push_back(
        {base.beneath, rectangle(at.west, at.masonry, at.void_floor, at.floor_under), {}});
  }
  lay(sheet, base.floor, 0, at.west, at.floor_end);
  stand(sheet, base.edge_insulation, at.masonry - thickness_of(base.edge_insulation), at.edge_end,
        suspended ? at.floor_under : 0);
  const double middle = (at.masonry + at.outside) / 2;
  sheet.push_back({base.footing,
                   rectangle(middle - base.footing_width / 2, middle + base.footing_width / 2,
                             at.footing_under, at.footing_top),
                   {}});
  stand(sheet, base.foundation, at.masonry, at.footing_top, 0);
  if (at.masonry < 0) lay(sheet, base.floor, 0, at.masonry, 0);  // on the ledge
  stand(sheet, base.layers, 0, 0, at.top);
  if (base.course_height) {
    const double y = *base.course_height, x = y < 0 ? at.masonry : at.floor_end;
    if (base.damp_course.valid()) {
      sheet.push_back(
          {base.damp_course, rectangle(x, at.outside, y, y + base.course_thickness), {}});
    }
    draw(sheet, base.course_sheet, {{x, y}, {at.outside, y}});
  }
  return sheet;
}

/// The floor without the wall: soil in its place, and nothing above that, so that no heat crosses
/// where the wall stood.
Sheet floor_alone(const WallBase& base, const Lines& at) {
  Sheet sheet = air(base, at);
  fill_ground(sheet, base, at, std::min(0.0, base.ground_level));
  lay(sheet, base.floor, 0, at.west, 0);
  return sheet;
}

std::vector<Flank> flanks(const WallBase& base, const Lines& at) {
  Flank wall{.name = "wall", .layers = base.layers, .inside = base.inside, .outside = base.outside};
  Flank floor{.name = "floor",
              .layers = base.floor,
              .inside = base.inside,
              .outside = base.beneath,
              .looks = Facing::up};
  if (base.beneath.valid()) {
    floor.over_void = {{base.ground, base.floor_width, thickness_of(base.foundation)},
                       std::max(0.0, -base.ground_level),
                       base.foundation,
                       base.outside};
    // The walls around the void, up to the top of the floor, belong to the floor.
    if (is_shallow(base)) {
      wall.internal = wall.overall_internal = wall.external = at.top;
      floor.internal = floor.overall_internal = base.floor_width / 2;
      floor.external = base.floor_width / 2 + at.outside;
    }
  } else {
    wall.internal = wall.overall_internal = at.top;
    wall.external = at.top - base.ground_level;
    floor.outside = base.outside;
    floor.on_ground = {base.ground, base.floor_width, at.outside};
    floor.internal = floor.overall_internal = base.floor_width / 2;
    floor.external = base.floor_width / 2 + at.outside;
  }
  return {wall, floor};
}

std::vector<NamedPlace> places(const WallBase& base, const Lines& at) {
  const Point foot{0, 0}, top{0, at.top};
  std::vector<NamedPlace> all = {{"the foot of the wall", foot, foot}};
  const double course = base.course_height.value_or(0.0);
  if (course > 0) {
    const Point there{0, course};
    all.push_back({"the wall at the damp course", there, there});
    all.push_back({"the wall below the damp course", foot, there});
    all.push_back({"the wall above the damp course", there, top});
  } else {
    all.push_back({"the wall above the floor", foot, top});
  }
  all.push_back({"the floor", {at.west, 0}, foot});
  return all;
}

}  // namespace

Drawing drawing_of(const WallBase& base) {
  const Lines at(base);
  Drawing drawing;
  drawing.sheet = sheet_of(base, at);
  drawing.flanks = flanks(base, at);
  drawing.thickness = at.outside;
  drawing.places = places(base, at);
  if (!base.beneath.valid()) drawing.floor_alone = floor_alone(base, at);
  drawing.heat_sinks_in = base.beneath;
  const double around = std::max({seen_around, at.outside, base.footing_width / 2});
  const double lowest = base.beneath.valid() ? std::min(at.footing_under, at.void_floor)
                                             : std::min(at.footing_under, at.edge_end);
  drawing.close_up = rectangle(std::max(at.west, -2 * around), at.outside + around,
                               std::min(lowest, base.ground_level) - around / 2, at.top);
  return drawing;
}

bool is_shallow(const WallBase& base) {
  return base.ground_level - Lines(base).void_floor <= deepest_void + snap_tolerance;
}

std::optional<std::string> objection_to(const WallBase& base) {
  const Lines at(base);
  const bool suspended = base.beneath.valid();
  const double shallowest = std::min(0.0, base.ground_level);
  if (at.footing_under > shallowest - snap_tolerance) {
    return "the footing stands above the ground outside: set it deeper";
  }
  if (at.footing_top > at.floor_under + snap_tolerance) {
    return "the footing reaches into the floor: set it deeper, or make it lower";
  }
  if (base.footing_width < at.outside - at.masonry - snap_tolerance) {
    return "the footing is narrower than the foundation on it";
  }
  if (base.ground_level > at.top - snap_tolerance) {
    return "the ground outside is as high as the wall: make the wall longer";
  }
  if (at.masonry < at.west + snap_tolerance) {
    return "the foundation is wider than the floor it carries";
  }
  if (suspended && base.floor.empty()) {
    return "a floor over a void needs layers";
  }
  if (!suspended && base.void_depth) {
    return "a void has a depth, but no name: say which unheated space it is, `void: underfloor`";
  }
  if (suspended && at.void_floor < at.footing_under + snap_tolerance) {
    return "the void is as deep as the footing";
  }
  if (!base.edge_insulation.empty() && at.edge_end > at.floor_under - snap_tolerance && suspended) {
    return "the edge insulation ends within the floor: let it go deeper";
  }
  if (thickness_of(base.edge_insulation) > at.masonry - at.west - snap_tolerance) {
    return "the edge insulation is as thick as the floor is wide";
  }
  if ((base.damp_course.valid() || base.course_sheet.valid()) && !base.course_height) {
    return "the damp course has no height: say how high above the floor it lies";
  }
  if (base.damp_course.valid() && base.course_sheet.valid()) {
    return "the damp course is drawn either as a material or as a sheet: leave one out";
  }
  if (base.course_height && (*base.course_height < at.footing_top - snap_tolerance ||
                             *base.course_height + base.course_thickness > at.top)) {
    return "the damp course does not lie in the wall or its foundation";
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
