// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/draw/section/rooms.hpp"
#include "tools/draw/section/view.hpp"

namespace quoin::tools {
namespace {

using geometry::Fill;
using geometry::RegionId;
using geometry::SpaceId;

Colour tint_of(cases::SpaceKind kind) {
  switch (kind) {
    case cases::SpaceKind::inside:
      return {0xfff6e6};
    case cases::SpaceKind::outside:
      return {0xe8f1f9};
    case cases::SpaceKind::unheated:
      return {0xf1eef6};
  }
  return {0xffffff};
}

std::string words_for(const cases::Space& space, bool with_air) {
  if (!with_air) return space.name;
  std::string words = fmt::format("{}, {:.1f} °C", space.name, space.temperature);
  if (space.humidity) words += fmt::format(", {:.0f} %", 100.0 * *space.humidity);
  return words;
}

}  // namespace

void tint_spaces(Canvas& canvas, const View& view, const cases::Variant& variant) {
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const auto shape =
        view(outlines(view.section(), [&](const Fill& fill) { return fill == Fill{id}; }));
    if (!shape.empty()) {
      canvas.area(shape, {tint_of(variant.spaces[id].is), {}});
    }
  }
}

namespace {

/// Words set into the room of a space.
struct Setting {
  double size = 13.0;
  bool upright = false;
  std::vector<std::string> lines;
};

/// How words fit a room whole, in a few lines; nothing where they do not.
std::optional<Setting> setting_in(const Box& room, const std::string& words) {
  constexpr double most_lines = 3.0, pitch = 1.25;
  const bool prefers_upright = room.height > 2 * room.width && room.width < 160.0;
  for (const double size : {13.0, 11.0}) {
    for (const bool upright : {prefers_upright, !prefers_upright}) {
      const double length = (upright ? room.height : room.width) - 12.0;
      const double depth = (upright ? room.width : room.height) - 3.0;
      const double fitting = std::min(most_lines, std::floor(depth / (pitch * size) + 0.2));
      if (fitting < 1.0) continue;
      Setting setting{size, upright,
                      wrapped(words, size, length, static_cast<std::size_t>(fitting))};
      std::string whole;
      for (const std::string& line : setting.lines) whole += (whole.empty() ? "" : " ") + line;
      if (whole == words) return setting;
    }
  }
  return std::nullopt;
}

/// With temperature and humidity, else the name alone, else, in a long room, what it holds of it.
std::optional<Setting> setting_of(const Box& room, const cases::Space& space, bool with_air) {
  if (auto setting = setting_in(room, words_for(space, with_air))) return setting;
  if (auto setting = setting_in(room, words_for(space, false))) return setting;
  constexpr double long_enough = 150.0;
  const bool upright = room.height > room.width;
  const double length = std::max(room.height, room.width) - 12.0;
  if (std::min(room.height, room.width) < 16.0 || length < long_enough) return std::nullopt;
  return Setting{13.0, upright, {fitted(words_for(space, false), 13.0, length)}};
}

void draw_setting(Canvas& canvas, const Box& room, const Setting& setting, TakenRoom& taken) {
  const Lettering lettering{setting.size, Anchor::middle, setting.upright ? 90.0 : 0.0,
                            false,        {0x3b3b3b},     {}};
  const double pitch = 1.25 * setting.size;
  double down = 0.35 * setting.size - pitch * (static_cast<double>(setting.lines.size()) - 1) / 2;
  for (const std::string& line : setting.lines) {
    const Point at{room.centre.x + (setting.upright ? down : 0.0),
                   room.centre.y + (setting.upright ? 0.0 : down)};
    taken.take(box_of(at, line, lettering));
    canvas.text(at, line, lettering);
    down += pitch;
  }
}

}  // namespace

std::vector<SpaceId> draw_spaces(Canvas& canvas, const View& view, const cases::Variant& variant,
                                 bool with_air, TakenRoom& taken) {
  tint_spaces(canvas, view, variant);
  std::vector<SpaceId> unnamed;
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const std::vector<Box> rooms = rooms_of(view, id);
    bool named = rooms.empty();
    for (const Box& room : rooms) {
      const auto setting = setting_of(room, variant.spaces[id], with_air);
      if (setting) draw_setting(canvas, room, *setting, taken);
      named = named || setting.has_value();
    }
    if (!named) unnamed.push_back(id);
  }
  return unnamed;
}

void draw_cuts(Canvas& canvas, const View& view) {
  for (const Stretch& cut : cuts(view.section())) {
    if (view.is_broken_off(cut)) continue;
    Point from = view(cut.from), to = view(cut.to);
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const Point way{(to.x - from.x) / length, (to.y - from.y) / length};
    constexpr double beyond = 7.0, clear = 3.5;  // the line stands off the material it ends
    const Point off{-way.y * clear, way.x * clear};
    canvas.line({from.x - way.x * beyond + off.x, from.y - way.y * beyond + off.y},
                {to.x + way.x * beyond + off.x, to.y + way.y * beyond + off.y}, cut_stroke);
  }
  draw_breaks(canvas, view);
}

void draw_breaks(Canvas& canvas, const View& view) {
  for (const Stretch& cut : cuts(view.section())) {
    if (view.is_broken_off(cut)) draw_break(canvas, view(cut.from), view(cut.to));
  }
}

void draw_break(Canvas& canvas, Point from, Point to) {
  constexpr double beyond = 6.0, apart = 150.0, shortest = 14.0, reach = 5.0;  // of each kink
  const double length = std::hypot(to.x - from.x, to.y - from.y);
  const Point way{(to.x - from.x) / length, (to.y - from.y) / length};
  const auto at = [&](double along, double aside) {
    return Point{from.x + way.x * along - way.y * aside, from.y + way.y * along + way.x * aside};
  };
  Line line{at(-beyond, 0.0)};
  const double kinks = length < shortest ? 0.0 : std::max(1.0, std::round(length / apart));
  for (double k = 0.5; k < kinks; ++k) {
    const double middle = length * k / kinks;
    for (const auto& [along, aside] :
         {std::pair(-4.5, 0.0), {-1.5, reach}, {1.5, -reach}, {4.5, 0.0}})
      line.push_back(at(middle + along, aside));
  }
  line.push_back(at(length + beyond, 0.0));
  canvas.polyline(line, {cut_stroke.colour, 0.9});
}

namespace {

/// An outline without what lies where the section is broken off: the lines that are left; nothing
/// where it is whole.
std::optional<std::vector<geometry::Outline>> opened(const geometry::Outline& outline,
                                                     const View& view) {
  const std::size_t count = outline.size();
  const auto is_break = [&](std::size_t k) {
    return view.is_broken_off({outline[k % count], outline[(k + 1) % count]});
  };
  std::size_t first = 0;
  while (first < count && !is_break(first)) ++first;
  if (first == count) return std::nullopt;
  std::vector<geometry::Outline> lines;
  for (std::size_t k = first + 1; k < first + count; ++k) {
    if (is_break(k)) continue;
    if (is_break(k - 1)) lines.push_back({outline[k % count]});
    lines.back().push_back(outline[(k + 1) % count]);
  }
  return lines;
}

}  // namespace

void draw_edges(Canvas& canvas, const View& view, std::size_t regions, const Stroke& stroke) {
  for (std::size_t r = 0; r < regions; ++r) {
    std::vector<geometry::Outline> closed, open;
    for (geometry::Outline& outline :
         outlines(view.section(), [&](const Fill& fill) { return fill == Fill{RegionId(r)}; })) {
      if (const auto lines = opened(outline, view)) {
        open.insert(open.end(), lines->begin(), lines->end());
      } else {
        closed.push_back(std::move(outline));
      }
    }
    if (!closed.empty()) canvas.area(view(closed), {{}, stroke});
    for (const geometry::Outline& line : open) canvas.polyline(view(line), stroke);
  }
}

void draw_membranes(Canvas& canvas, const View& view) {
  const Extent& material = view.material();
  for (const geometry::Seam& seam : view.section().seams) {
    const double low = seam.upright ? material.low.y : material.low.x;
    const double high = seam.upright ? material.high.y : material.high.x;
    const double from = std::max(seam.from, low), to = std::min(seam.to, high);
    const Point at = seam.upright ? Point{seam.at, from} : Point{from, seam.at};
    if (to - from < geometry::snap || !view.shows(at)) continue;
    canvas.line(view(at), view(seam.upright ? Point{seam.at, to} : Point{to, seam.at}),
                membrane_stroke);
  }
}

void draw_scale_bar(Canvas& canvas, const View& view, Point at) {
  constexpr double longest = 170.0;
  double length = std::pow(10.0, std::floor(std::log10(longest / view.scale())));
  if (5 * length * view.scale() <= longest) {
    length *= 5;
  } else if (2 * length * view.scale() <= longest) {
    length *= 2;
  }
  const double unit = length * view.scale() / 4;
  for (int k = 0; k < 4; ++k) {
    canvas.rectangle({at.x + k * unit, at.y}, unit, 5.0,
                     {k % 2 == 0 ? black : white, {black, 0.8}});
  }
  const Lettering lettering{12.0, Anchor::start, 0.0, false, black, {}};
  canvas.text({at.x + 4 * unit + 7.0, at.y + 7.5}, fmt::format("{:g} mm", 1000.0 * length),
              lettering);
}

}  // namespace quoin::tools
