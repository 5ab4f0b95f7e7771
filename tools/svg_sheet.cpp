// SPDX-License-Identifier: Apache-2.0
#include "tools/svg_sheet.hpp"

#include <fmt/format.h>

namespace quoin::tools {
double draw_heading(Canvas& canvas, std::string_view title, std::string_view line) {
  const double width = page_width - 2 * page_edge;
  canvas.text({page_edge, 27.0}, fitted(title, 17.0, width),
              {17.0, Anchor::start, 0.0, true, "#1c1c1c", ""});
  canvas.text({page_edge, 47.0}, fitted(line, 13.0, width),
              {13.0, Anchor::start, 0.0, false, "#484848", ""});
  return 58.0;
}

double draw_note(Canvas& canvas, std::string_view note, double top) {
  double y = top + 12.0;
  for (const std::string& line : wrapped(note, 11.5, page_width - 2 * page_edge, 3)) {
    canvas.text({page_edge, y}, line, {11.5, Anchor::start, 0.0, false, "#484848", ""});
    y += 15.0;
  }
  return y;
}

void draw_probes(Canvas& canvas, const View& view, const cases::Variant& variant,
                 const std::vector<std::string>& words, Callouts& callouts, TakenRoom& taken) {
  for (std::size_t p = 0; p < variant.probes.size(); ++p) {
    const Point at = view(variant.probes[p].place);
    canvas.open("stroke=\"#101010\" stroke-width=\"1.3\" fill=\"#ffffff\"");
    canvas.circle(at, 3.5);
    canvas.line({at.x - 6.0, at.y}, {at.x + 6.0, at.y});
    canvas.line({at.x, at.y - 6.0}, {at.x, at.y + 6.0});
    canvas.close();
    taken.take(Box{at, 12.0, 12.0, 0.0});
  }
  for (std::size_t p = 0; p < variant.probes.size(); ++p) {
    std::string name = fitted(variant.probes[p].name, 13.0, 150.0);
    if (p < words.size()) name += " " + words[p];
    callouts.add(view(variant.probes[p].place), {1.0, -1.0}, name);
  }
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
