// SPDX-License-Identifier: Apache-2.0
#include "tools/svg_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace quoin::tools {
namespace {

struct Direction {
  double x, y;
};

/// Sixteen ways round the compass, those nearest to a wanted one first.
std::array<Direction, 16> ways(Point wanted) {
  std::array<Direction, 16> all{};
  for (std::size_t k = 0; k < all.size(); ++k) {
    const double angle = std::numbers::pi / 8.0 * static_cast<double>(k);
    all[k] = {std::cos(angle), std::sin(angle)};
  }
  const double length = std::max(std::hypot(wanted.x, wanted.y), 1e-9);
  const auto nearness = [&](const Direction& way) {  // rounded: equal ones keep their order
    return std::round(1e6 * (way.x * wanted.x + way.y * wanted.y) / length);
  };
  std::stable_sort(all.begin(), all.end(), [&](const Direction& a, const Direction& b) {
    return nearness(a) > nearness(b);
  });
  return all;
}

bool contains(const View& view, const Box& box) {
  return box.centre.x - box.width / 2 >= view.corner().x &&
         box.centre.x + box.width / 2 <= view.corner().x + view.width() &&
         box.centre.y - box.height / 2 >= view.corner().y &&
         box.centre.y + box.height / 2 <= view.corner().y + view.height();
}

}  // namespace

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

void draw_callout(Canvas& canvas, const View& view, Point at, Point away, std::string_view words,
                  TakenRoom& taken) {
  const Lettering lettering{13.0, Anchor::middle, 0.0, true, "#101010", ""};
  const double width = text_width(words, lettering.size) + 14.0;
  constexpr double height = 20.0;
  const auto place = [&](double distance, const Direction& way) {
    const double reach = std::min(std::abs(way.x) > 1e-6 ? width / 2 / std::abs(way.x) : 1e9,
                                  std::abs(way.y) > 1e-6 ? height / 2 / std::abs(way.y) : 1e9);
    return Box{
        {at.x + way.x * (distance + reach), at.y + way.y * (distance + reach)}, width, height, 0.0};
  };
  const auto draw = [&](double distance, const Direction& way) {
    const Box box = place(distance, way);
    canvas.line(at, {at.x + way.x * distance, at.y + way.y * distance},
                "stroke=\"#101010\" stroke-width=\"1\"");
    canvas.rectangle({box.centre.x - width / 2, box.centre.y - height / 2}, width, height,
                     "rx=\"3\" fill=\"#ffffff\" stroke=\"#101010\" stroke-width=\"1\"");
    canvas.text({box.centre.x, box.centre.y + 4.6}, words, lettering);
    taken.take(box);
  };
  constexpr double nearest = 15.0, farthest = 120.0, stride = 5.0;
  for (const bool in_air : {true, false}) {
    for (double distance = nearest; distance <= farthest; distance += stride) {
      for (const Direction& way : ways(away)) {
        const Box box = place(distance, way);
        const bool onward = way.x * away.x + way.y * away.y > 0.0;
        const bool allowed = in_air ? onward && view.is_in_air(box) : contains(view, box);
        if (!allowed || !taken.is_free(box)) continue;
        draw(distance, way);
        return;
      }
    }
  }
}

void draw_probes(Canvas& canvas, const View& view, const cases::Variant& variant,
                 const std::vector<std::string>& words, TakenRoom& taken) {
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
    std::string name = fitted(variant.probes[p].name, 13.0, 120.0);
    if (p < words.size()) name += " " + words[p];
    draw_callout(canvas, view, view(variant.probes[p].place), {1.0, -1.0}, name, taken);
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
