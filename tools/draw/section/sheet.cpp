// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/section/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "tools/draw/canvas/hatch.hpp"
#include "tools/draw/section/rooms.hpp"

namespace quoin::tools {

double draw_heading(Canvas& canvas, std::string_view title, std::string_view line) {
  const double width = page_width - 2 * page_edge;
  const Lettering large{17.0, Anchor::start, 0.0, true, black, {}};
  const Lettering plain{13.0, Anchor::start, 0.0, false, grey, {}};
  double y = 7.0;
  for (const std::string& words : wrapped(title, bold_width * large.size, width, 3))
    canvas.text({page_edge, y += 20.0}, words, large);
  y += 3.0;
  for (const std::string& words : wrapped(line, plain.size, width, 2))
    canvas.text({page_edge, y += 17.0}, words, plain);
  return y + 11.0;
}

double draw_key_words(Canvas& canvas, Point at, std::string_view words) {
  constexpr double indent = 46.0, pitch = 15.0;
  const Lettering lettering{12.0, Anchor::start, 0.0, false, black, {}};
  double y = at.y + 4.2;
  for (const std::string& line :
       wrapped(words, lettering.size, page_width - page_edge - at.x - indent, 3)) {
    canvas.text({at.x + indent, y}, line, lettering);
    y += pitch;
  }
  return y - 0.2;
}

void call_out_spaces(Callouts& callouts, const View& view, const cases::Variant& variant,
                     const std::vector<geometry::SpaceId>& spaces) {
  for (const geometry::SpaceId id : spaces) {
    if (const std::optional<Box> room = room_of(view, id))
      callouts.add(room->centre, {1.0, -1.0}, fitted(variant.spaces[id].name, 13.0, 150.0));
  }
}

void draw_probes(Canvas& canvas, const View& view, const cases::Variant& variant,
                 const std::vector<std::string>& words, Callouts& callouts, TakenRoom& taken) {
  for (std::size_t p = 0; p < variant.probes.size(); ++p) {
    if (!view.shows(variant.probes[p].place)) continue;
    const Point at = view(variant.probes[p].place);
    constexpr Stroke pen{{0x101010}, 1.3};
    canvas.circle(at, 3.5, {white, pen});
    canvas.line({at.x - 6.0, at.y}, {at.x + 6.0, at.y}, pen);
    canvas.line({at.x, at.y - 6.0}, {at.x, at.y + 6.0}, pen);
    taken.take(Box{at, 12.0, 12.0, 0.0});
  }
  for (std::size_t p = 0; p < variant.probes.size(); ++p) {
    if (!view.shows(variant.probes[p].place)) continue;
    std::string name = fitted(variant.probes[p].name, 13.0, 150.0);
    if (p < words.size()) name += " " + words[p];
    callouts.add(view(variant.probes[p].place), {1.0, -1.0}, name);
  }
}

double draw_whole(Canvas& canvas, const cases::Variant& variant, const geometry::Section& section,
                  Point corner, double width) {
  const Shown shown = shown_part(variant, section);
  if (!shown.broken.any()) return corner.y;
  const bool narrow = width < 320.0;
  const View whole(section, {corner.x, corner.y + 8.0}, std::min(width, 200.0), 120.0);
  const Looks looks(variant.regions);
  tint_spaces(canvas, whole, variant);
  for (const geometry::RegionId id : geometry::ids(variant.regions)) {
    const auto shape = whole(outlines(
        whole.section(), [&](const geometry::Fill& fill) { return fill == geometry::Fill{id}; }));
    if (!shape.empty()) canvas.area(shape, {looks[id].ground, {}});
  }
  draw_edges(canvas, whole, variant.regions.size(), {black, 0.4});
  const geometry::Section& part = shown.section;
  const auto inside = [](Point p, const View& view) {
    return Point{std::clamp(p.x, view.corner().x, view.corner().x + view.width()),
                 std::clamp(p.y, view.corner().y, view.corner().y + view.height())};
  };
  const Point from = inside(whole({part.x.front(), part.y.back()}), whole);
  const Point to = inside(whole({part.x.back(), part.y.front()}), whole);
  canvas.rectangle(from, to.x - from.x, to.y - from.y, {{}, {{0x8f1d2c}, 1.6}});
  const double foot = whole.corner().y + whole.height() + 10.0;
  const double left = narrow ? corner.x : whole.corner().x + whole.width() + 12.0;
  double y = narrow ? foot + 8.0 : whole.corner().y + 14.0;
  for (const std::string& line : wrapped("All of the section as it is computed. The frame is the "
                                         "part drawn large; beyond the kinked lines it goes on.",
                                         12.0, corner.x + width - left, 6)) {
    canvas.text({left, y}, line, {12.0, Anchor::start, 0.0, false, black, {}});
    y += 16.0;
  }
  return narrow ? y : foot;
}

double draw_whole_beside(Canvas& canvas, const cases::Variant& variant, const View& view,
                         const geometry::Section& section, double right, double bottom) {
  constexpr double least = 150.0;
  const double room = page_width - page_edge - right;
  if (room < least) {
    return draw_whole(canvas, variant, section, {page_edge, bottom}, page_width - 2 * page_edge);
  }
  const double top = view.corner().y + std::max(0.0, view.height() - 270.0);
  return std::max(bottom, draw_whole(canvas, variant, section, {right, top}, room));
}

std::string description_of(const cases::Variant& variant) {
  std::string words = variant.cut == cases::Cut::horizontal ? "Plan cut" : "Vertical cut";
  std::string_view joint = " between ";
  for (const cases::Space& space : variant.spaces) {
    words +=
        fmt::format("{}{} ({:.1f} °C)", joint, fitted(space.name, 1.0, 60.0), space.temperature);
    joint = " and ";
  }
  joint = ", of ";
  for (const cases::Region& region : variant.regions) {
    words += fmt::format("{}{}", joint, fitted(region.name, 1.0, 60.0));
    joint = ", ";
  }
  return words + ".";
}

}  // namespace quoin::tools
