// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/window_edge.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/paint.hpp"
#include "geometry/section.hpp"

namespace quoin::geometry {
namespace {

double length_of(const WindowEdge& window) {
  return window.wall.value_or(cut_distance(thickness_of(window.layers)));
}

SubFrameAt sub_frame_of(const WindowEdge& window) {
  return placed(window.sub_frame, frame_of(window), thickness_of(window.layers));
}

/// A place along the wall and below its inside face, on the sheet; on the raster of sections, so
/// that what is drawn again from a sheet is the same to the bit.
Point at(Edge edge, double along, double depth) {
  along = on_raster(along);
  depth = on_raster(depth);
  switch (edge) {
    case Edge::jamb:
      return {along, 0.0 - depth};  // not -0
    case Edge::foot:
      return {depth, along};
    case Edge::top:
      return {depth, 0.0 - along};
  }
  return {};
}

Patch patch(Fill fill, Outline outline) { return {fill, std::move(outline), std::nullopt}; }

/// A lining, and where it lies: parallel to a face that is cut back by the splay from its foot, the
/// innermost place where frame or sub-frame meets the wall.
struct Lining {
  Lining(const WindowEdge& window, double foot)
      : foot(foot),
        splay(window.splay),
        // It follows the splay: seen along the wall it is longer than it is thick.
        slant(splay == 0.0 ? 1.0 : std::hypot(1.0, splay / foot)),
        cover(slant * thickness_of(window.lining)) {}

  /// Where its face lies along the wall at a depth.
  [[nodiscard]] double face(double depth) const {
    return depth >= foot ? cover : cover - splay * (foot - depth) / foot;
  }

  double foot, splay, slant;
  double cover;  ///< along the wall, m
};

void paint_lining(Sheet& sheet, const WindowEdge& window, Edge edge, const Lining& lining,
                  double to_depth) {
  if (window.splay > 0) {
    sheet.push_back(patch(window.inside,
                          {at(edge, 0, lining.foot), at(edge, 0, 0), at(edge, -window.splay, 0)}));
  }
  double along = lining.cover;
  for (const Layer& layer : window.lining) {
    const double next = along - lining.slant * layer.thickness;
    sheet.push_back(
        patch(layer.region, {at(edge, next, lining.foot), at(edge, along, lining.foot),
                             at(edge, along - window.splay, 0), at(edge, next - window.splay, 0)}));
    if (to_depth > lining.foot)  // beside a sub-frame that stands out before the frame
      sheet.push_back(patch(layer.region, block(edge, next, along, lining.foot, to_depth)));
    along = next;
    draw(sheet, layer.behind,
         {at(edge, along, std::max(lining.foot, to_depth)), at(edge, along, lining.foot),
          at(edge, along - window.splay, 0)});
  }
}

/// The layers of the wall from a depth outwards, before what stands behind them.
void paint_rebate(Sheet& sheet, const WindowEdge& window, Edge edge, double from_depth,
                  RegionId material) {
  if (window.rebate <= 0) return;
  double depth = 0.0;
  for (const Layer& layer : window.layers) {
    const double next = depth + layer.thickness;
    if (next > from_depth + snap_tolerance) {
      sheet.push_back(patch(material.valid() ? material : layer.region,
                            block(edge, 0, window.rebate, std::max(depth, from_depth), next)));
    }
    depth = next;
  }
}

std::vector<NamedPlace> places_of(const WindowEdge& window, Edge edge, const EdgeWords& words,
                                  const Lining& lining) {
  const SubFrameAt sub = sub_frame_of(window);
  const double frame = frame_of(window).inside;
  const bool covered = lining.face(frame) >= sub.width - snap_tolerance;
  const Point frame_edge = at(edge, covered ? lining.face(frame) : sub.width, frame);
  const Point arris = at(edge, lining.face(0), 0);
  std::vector<NamedPlace> places = {{"the frame edge", frame_edge, frame_edge},
                                    {std::string(words.arris), arris, arris}};
  Point end = frame_edge;  // of the lining
  if (!covered) {
    end = at(edge, lining.face(sub.faces.inside), sub.faces.inside);
    const Point outer = at(edge, sub.width, sub.faces.inside);
    places.push_back({"the edge of the sub-frame", end, end});
    places.push_back({"the sub-frame", end, outer});
    places.push_back({"the sub-frame", outer, frame_edge});
  }
  places.push_back({std::string(words.place), end, arris});
  places.push_back({"the frame", frame_edge, at(edge, light_of(window), frame)});
  places.push_back({std::string(words.wall), at(edge, -length_of(window), 0), arris});
  return places;
}

std::optional<std::string> objection_to_rebate(const WindowEdge& window) {
  if (window.rebate <= 0) return std::nullopt;
  const double thickness = thickness_of(window.layers);
  const SubFrameAt sub = sub_frame_of(window);
  const double shallowest = std::max(frame_of(window).outside, sub.faces.outside);
  if (shallowest > thickness - snap_tolerance) {
    return "a rebate is masonry in front of the frame, but the frame is flush with the outside";
  }
  if (window.rebate > light_of(window) - snap_tolerance) {
    return "the rebate covers the whole frame: model more of the frame";
  }
  const double from = std::min(frame_of(window).outside, sub.faces.outside);
  double depth = 0.0;
  for (const Layer& layer : window.layers) {
    depth += layer.thickness;
    if (layer.hollow && depth > from + snap_tolerance) {
      return "the rebate is hollow: an air layer lies in front of the frame";
    }
  }
  return std::nullopt;
}

}  // namespace

Outline block(Edge edge, double from, double to, double inside, double outside) {
  const Point a = at(edge, from, inside), b = at(edge, to, outside);
  return rectangle(std::min(a.x, b.x), std::max(a.x, b.x), std::min(a.y, b.y), std::max(a.y, b.y));
}

InDepth frame_of(const WindowEdge& window) {
  const double outside = thickness_of(window.layers) - window.frame_setback;
  return {outside - window.frame_depth, outside};
}

double light_of(const WindowEdge& window) { return sub_frame_of(window).width + window.frame_seen; }

void paint_wall(Sheet& sheet, const WindowEdge& window, Edge edge, double beyond) {
  const double thickness = thickness_of(window.layers);
  const double wall = length_of(window), light = light_of(window);
  const InDepth frame = frame_of(window);
  const SubFrameAt sub = sub_frame_of(window);
  const double room_ends = std::max(frame.inside, sub.faces.inside);
  const double open_begins = std::min(frame.outside, sub.faces.outside);
  sheet.push_back(patch(window.inside, block(edge, -wall, light, -space_margin, 0)));
  if (room_ends > 0) sheet.push_back(patch(window.inside, block(edge, 0, light, 0, room_ends)));
  sheet.push_back(patch(window.outside,
                        block(edge, -wall, light, thickness, thickness + beyond + space_margin)));
  if (open_begins < thickness)
    sheet.push_back(patch(window.outside, block(edge, 0, light, open_begins, thickness)));
  double depth = 0.0;
  for (const Layer& layer : window.layers) {
    const double next = depth + layer.thickness;
    sheet.push_back(patch(layer.region, block(edge, -wall, 0, depth, next)));
    if (layer.hollow && window.closer.valid())
      sheet.push_back(patch(window.closer, block(edge, -window.closer_depth, 0, depth, next)));
    depth = next;
    draw(sheet, layer.behind, {at(edge, -wall, depth), at(edge, 0, depth)});
  }
}

void set_window(Drawing& drawing, const WindowEdge& window, Edge edge, const EdgeWords& words,
                RegionId rebate) {
  const InDepth frame = frame_of(window);
  const SubFrameAt sub = sub_frame_of(window);
  const double wall = length_of(window), light = light_of(window);
  const Lining lining(window, sub.faces.inside);
  paint_lining(drawing.sheet, window, edge, lining, frame.inside);
  paint_rebate(drawing.sheet, window, edge, std::min(frame.outside, sub.faces.outside), rebate);
  if (sub.width > 0) {
    drawing.sheet.push_back(patch(window.sub_frame.region,
                                  block(edge, 0, sub.width, sub.faces.inside, sub.faces.outside)));
  }
  drawing.sheet.push_back(
      patch(window.frame, block(edge, sub.width, light, frame.inside, frame.outside)));

  const double inner_wall = wall - window.splay + lining.cover;
  drawing.flanks = {{.name = "wall",
                     .layers = window.layers,
                     .inside = window.inside,
                     .outside = window.outside,
                     .internal = inner_wall,
                     .overall_internal = inner_wall,
                     .external = wall},
                    {.name = "frame",
                     .layers = {{window.frame, window.frame_depth}},
                     .inside = window.inside,
                     .outside = window.outside,
                     .internal = light - lining.cover,
                     .overall_internal = light - lining.cover,
                     .external = light}};
  drawing.thickness = thickness_of(window.layers);
  drawing.places = places_of(window, edge, words, lining);
}

std::optional<std::string> objection_to_window(const WindowEdge& window, const EdgeWords& words) {
  const double thickness = thickness_of(window.layers), wall = length_of(window);
  if (auto objection = objection_to_frame(window.frame_setback, window.frame_depth, thickness))
    return objection;
  if (auto objection = objection_to_sub_frame(window.sub_frame, frame_of(window), thickness))
    return objection;
  const SubFrameAt sub = sub_frame_of(window);
  const auto needs = [&](std::string_view what) {
    return "a " + std::string(what) + " needs a " + std::string(words.face) +
           " between frame and room, but the " + (sub.width > 0 ? "sub-frame" : "frame") +
           " is flush with the inside";
  };
  if (sub.faces.inside < snap_tolerance) {
    if (window.splay > 0) return needs("splay");
    if (!window.lining.empty()) return needs(words.cover);
  }
  if (window.splay >= wall - snap_tolerance) {
    return "the splay cuts back the whole wall: make the wall longer";
  }
  if (thickness_of(window.lining) > light_of(window) - snap_tolerance) {
    return "the " + std::string(words.cover) + " covers the whole frame";
  }
  if (auto objection = objection_to_rebate(window)) return objection;
  return objection_to_closer(window.layers, window.closer, window.closer_depth, wall);
}

}  // namespace quoin::geometry
