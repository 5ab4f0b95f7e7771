// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/surveyed_section.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/mesh.hpp"
#include "geometry/thinned.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {
namespace {

using geometry::CellSide;
using geometry::Point;

constexpr double chord = 0.030;          ///< over which a turn of the surface is looked at, m
constexpr double least_turn = 0.5;       ///< sine of it
constexpr double upright_inside = 0.13;  // m2K/W; ISO 6946 (memory)

Point minus(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
double length(Point a) { return std::hypot(a.x, a.y); }
double cross(Point a, Point b) { return a.x * b.y - a.y * b.x; }

/// Lines that draw slopes in steps lie close: cutting their cells would cost much and tell little.
geometry::Mesh mesh_of(const geometry::Section& section, double cells_per_metre) {
  constexpr std::size_t enough_for_steps = 10'000;
  geometry::Subdivision cuts = geometry::subdivision_of(section, cells_per_metre);
  if (section.deviation > 0.0) cuts = geometry::thinned(std::move(cuts), enough_for_steps);
  return geometry::mesh_of(section, cuts);
}

/// Where the surface is some way before or after a node, on the nodes.
Point some_way(const geometry::Mesh& mesh, const geometry::Surface& surface, std::size_t k,
               bool forwards) {
  std::size_t at = k;
  while (true) {
    const bool ended = forwards ? at == surface.faces.size() : at == 0;
    if (ended || std::abs(surface.along[at] - surface.along[k]) >= chord - 1e-9) break;
    at = forwards ? at + 1 : at - 1;
  }
  return mesh.place(surface.node(at));
}

/// Where inside surfaces turn towards the room, sharpest first within a chord.
std::vector<Point> angles_of(const cases::Variant& variant, const geometry::Mesh& mesh,
                             const std::vector<geometry::Surface>& surfaces) {
  struct Turn {
    Point at;
    double sharpness = 0.0;
  };
  std::vector<Turn> turns;
  for (const geometry::Surface& surface : surfaces) {
    if (variant.spaces[surface.air].is == cases::SpaceKind::outside) continue;
    for (std::size_t k = 1; k < surface.faces.size(); ++k) {
      const Point here = mesh.place(surface.node(k));
      const Point come = minus(here, some_way(mesh, surface, k, false));
      const Point go = minus(some_way(mesh, surface, k, true), here);
      // Material on the left: a turn to the right goes round the room.
      const double turn = -cross(come, go) / (length(come) * length(go));
      if (turn > least_turn) turns.push_back({here, turn});
    }
  }
  std::stable_sort(turns.begin(), turns.end(),
                   [](const Turn& a, const Turn& b) { return a.sharpness > b.sharpness; });
  std::vector<Point> angles;
  for (const Turn& turn : turns) {
    const bool near = std::any_of(angles.begin(), angles.end(), [&](Point angle) {
      return length(minus(angle, turn.at)) < 2 * chord;
    });
    if (!near) angles.push_back(turn.at);
  }
  return angles;
}

bool lies_in(const cases::SurveyBox& box, Point place) {
  constexpr double edge = 1e-6;
  return place.x >= box.x_from - edge && place.x <= box.x_to + edge &&
         place.y >= box.y_from - edge && place.y <= box.y_to + edge;
}

/// What the faces of one mesh depend on, each kind once.
class Kinds {
 public:
  Kinds(SurveyedSection& section, const std::vector<cases::Stretch>& stretches)
      : section_(section),
        stretches_(stretches),
        standard_(physics_of(*section.variant, materials::Purpose::heat_flow)),
        design_(physics_of(*section.variant, materials::Purpose::surface_temperature)) {}

  std::size_t group(const geometry::Face& face) {
    const cases::Space& space = section_.variant->spaces[face.space];
    SurfaceKind kind;
    kind.space = face.space;
    kind.stated = space.resistance;
    const cases::RegionId region = section_.zoned.regions[face.region.index].region;
    kind.design = design_.surface_resistance(face.space, region, face.facing);
    const geometry::Mesh& mesh = section_.parametrised.mesh;
    const Point from = mesh.place(face.from), to = mesh.place(face.to);
    const Point middle{(from.x + to.x) / 2, (from.y + to.y) / 2};
    if (space.is != cases::SpaceKind::outside) {
      kind.ratio = standard_.surface_resistance(face.space, region, face.facing) / upright_inside;
      kind.at_angle = std::any_of(section_.angles.begin(), section_.angles.end(), [&](Point angle) {
        return length(minus(angle, middle)) < angle_reach;
      });
      for (std::size_t s = 0; s < stretches_.size(); ++s) {
        if (lies_in(stretches_[s].box, middle)) kind.stretches.push_back(s);
      }
    }
    auto& kinds = section_.kinds;
    const auto found = std::find(kinds.begin(), kinds.end(), kind);
    const auto number = static_cast<std::size_t>(found - kinds.begin());
    if (found == kinds.end()) kinds.push_back(kind);
    return number;
  }

 private:
  SurveyedSection& section_;
  const std::vector<cases::Stretch>& stretches_;
  solver::Physics standard_;
  solver::Physics design_;
};

/// Places that lines of the grid should run through: probes, ends of stretches and of angles.
std::vector<Point> lines_wanted(const cases::Variant& variant, const std::vector<Point>& angles,
                                const std::vector<cases::Stretch>& stretches) {
  std::vector<Point> places;
  for (const cases::Probe& probe : variant.probes) places.push_back(probe.place);
  for (const Point angle : angles) {
    for (const double way : {-angle_reach, angle_reach})
      places.push_back({angle.x + way, angle.y + way});
  }
  for (const cases::Stretch& stretch : stretches) {
    places.push_back({stretch.box.x_from, stretch.box.y_from});
    places.push_back({stretch.box.x_to, stretch.box.y_to});
  }
  std::erase_if(places,
                [](Point place) { return !std::isfinite(place.x) || !std::isfinite(place.y); });
  return places;
}

std::vector<Point> places_read(const std::string& name, const cases::Variant& variant,
                               const cases::Survey& survey) {
  std::vector<Point> places;
  for (const cases::SurveyReading& reading : survey.readings) {
    for (const cases::Probe& probe : variant.probes) {
      if (reading.section == name && probe.name == reading.probe) places.push_back(probe.place);
    }
  }
  return places;
}

geometry::Per<cases::SpaceId, cases::SpaceId> airs_of(const cases::Variant& variant) {
  geometry::Per<cases::SpaceId, cases::SpaceId> air;
  for (const cases::Space& space : variant.spaces) air.add(space.air);
  return air;
}

}  // namespace

std::size_t SurveyedSection::air_number(cases::SpaceId space) const {
  const auto found = std::find(airs.begin(), airs.end(), variant->spaces[space].air);
  return static_cast<std::size_t>(found - airs.begin());
}

SurveyedSection surveyed_section(const std::string& name, const cases::Variant& variant,
                                 const cases::Survey& survey, double cells_per_metre) {
  std::vector<cases::Zone> zones = survey.zones;
  for (cases::Zone& zone : zones) {
    if (zone.section != name) zone.of.clear();  // of another section: meets no material
  }
  std::vector<cases::Stretch> stretches = survey.stretches;
  for (cases::Stretch& stretch : stretches) {
    if (stretch.section != name) stretch.box = {1e9, 1e9, 1e9, 1e9};
  }
  SurveyedSection result;
  result.name = name;
  result.variant = &variant;
  const auto air = airs_of(variant);
  const geometry::Section plain = geometry::section_of(variant.sheet);
  const geometry::Mesh coarse = mesh_of(plain, 2.0 / chord);
  result.angles = angles_of(variant, coarse, geometry::surfaces(coarse, air));
  result.zoned = zoned_section(variant, zones, places_read(name, variant, survey),
                               lines_wanted(variant, result.angles, stretches));
  solver::Parametrised& parametrised = result.parametrised;
  parametrised.mesh = mesh_of(result.zoned.section, cells_per_metre);
  parametrised.regions = result.zoned.regions.size();
  parametrised.faces = geometry::faces(parametrised.mesh);
  for (const geometry::Face& face : parametrised.faces) {
    if (std::find(result.airs.begin(), result.airs.end(), air[face.space]) == result.airs.end())
      result.airs.push_back(air[face.space]);
  }
  std::sort(result.airs.begin(), result.airs.end());
  parametrised.airs = result.airs.size();
  Kinds kinds(result, stretches);
  for (const geometry::Face& face : parametrised.faces)
    parametrised.group.push_back(kinds.group(face));
  for (const SurfaceKind& kind : result.kinds)
    parametrised.group_air.push_back(result.air_number(kind.space));
  result.surfaces = geometry::surfaces(parametrised.mesh, air);
  return result;
}

std::optional<OnSurface> nearest_on_surface(const SurveyedSection& section, Point place) {
  std::optional<OnSurface> best;
  const geometry::Mesh& mesh = section.parametrised.mesh;
  for (std::size_t s = 0; s < section.surfaces.size(); ++s) {
    const geometry::Surface& surface = section.surfaces[s];
    for (std::size_t f = 0; f < surface.faces.size(); ++f) {
      const Point from = mesh.place(surface.node(f)), to = mesh.place(surface.node(f + 1));
      const Point way = minus(to, from), wanted = minus(place, from);
      const double drawn = length(way);
      const double share =
          std::clamp((wanted.x * way.x + wanted.y * way.y) / (drawn * drawn), 0.0, 1.0);
      const double distance =
          length(minus(place, {from.x + share * way.x, from.y + share * way.y}));
      if (best && distance >= best->distance) continue;
      const double along = surface.along[f] + share * (surface.along[f + 1] - surface.along[f]);
      best = OnSurface{s, along, f, distance};
    }
  }
  return best;
}

solver::Watched mean_about(const SurveyedSection& section, const OnSurface& place, double width) {
  const geometry::Surface& surface = section.surfaces[place.surface];
  const double from = std::max(surface.along.front(), place.along - width / 2);
  const double to = std::min(surface.along.back(), place.along + width / 2);
  solver::Watched watched;
  if (to - from < 1e-9) {
    const double span = surface.along[place.face + 1] - surface.along[place.face];
    const double share = (place.along - surface.along[place.face]) / span;
    return {{surface.node(place.face), 1.0 - share}, {surface.node(place.face + 1), share}};
  }
  for (std::size_t f = 0; f < surface.faces.size(); ++f) {
    const double start = surface.along[f], span = surface.along[f + 1] - start;
    const double low = std::max(from, start), high = std::min(to, start + span);
    if (high <= low || span <= 0.0) continue;
    // The mean of a straight line over a part of it is its value in the middle of the part.
    const double share = ((low + high) / 2 - start) / span;
    const double weight = (high - low) / (to - from);
    watched.emplace_back(surface.node(f), weight * (1.0 - share));
    watched.emplace_back(surface.node(f + 1), weight * share);
  }
  return watched;
}

solver::Watched at_point(const SurveyedSection& section, Point place) {
  const geometry::Mesh& mesh = section.parametrised.mesh;
  const auto cell = [](const std::vector<double>& lines, double at) {
    const auto above = std::upper_bound(lines.begin() + 1, lines.end() - 1, at);
    return static_cast<std::size_t>(above - lines.begin()) - 1;
  };
  const std::size_t i = cell(mesh.x, place.x), j = cell(mesh.y, place.y);
  const double u = std::clamp((place.x - mesh.x[i]) / (mesh.x[i + 1] - mesh.x[i]), 0.0, 1.0);
  const double v = std::clamp((place.y - mesh.y[j]) / (mesh.y[j + 1] - mesh.y[j]), 0.0, 1.0);
  const geometry::Cell& here = mesh.cell(i, j);
  solver::Watched watched;
  double sum = 0.0;
  for (const bool north : {false, true}) {
    for (const bool east : {false, true}) {
      // Beside a slope a corner of the cell may be none of the material.
      if (!geometry::is_solid(here.at(east ? CellSide::east : CellSide::west)) &&
          !geometry::is_solid(here.at(north ? CellSide::north : CellSide::south)))
        continue;
      const double weight = (east ? u : 1 - u) * (north ? v : 1 - v);
      watched.emplace_back(mesh.corner(i, j, east, north), weight);
      sum += weight;
    }
  }
  if (!(sum > 0.0)) {
    const auto found = nearest_on_surface(section, place);
    return found ? mean_about(section, *found, 0.0) : solver::Watched{};
  }
  for (auto& [node, weight] : watched) weight /= sum;
  return watched;
}

}  // namespace quoin::tools
