// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/details.hpp"

#include <fmt/format.h>

#include <utility>

#include "geometry/sheet.hpp"

namespace quoin::testing {
namespace {

constexpr double everywhere = 1e3;  // m

using Probes = std::vector<std::pair<std::string, geometry::Point>>;

std::string text_of(const std::string& section, const Probes& probes) {
  std::string text =
      "quoin: 1\n"
      "note: invented\n"
      "spaces:\n"
      "  room: {is: inside, temperature: 18.5, humidity: 60}\n"
      "  outdoors: {is: outside, temperature: 3}\n"
      "materials:\n"
      "  wall brick: {like: common brick, moisture: sheltered}\n"
      "section:\n" +
      section + "criteria: {mould: {surface humidity: 80}}\nprobes:\n";
  for (const auto& [name, at] : probes)
    text += fmt::format("  {}: [{:.1f}, {:.1f}]\n", name, 1000 * at.x, 1000 * at.y);
  return text;
}

std::string layers(double brick) {
  return fmt::format(
      "    layers: [{{material: lime plaster, thickness: 15}}, {{material: wall brick, "
      "thickness: {:.0f}}}]\n",
      1000 * brick);
}

DrawnDetail corner(double brick) {
  const double t = brick + 0.015;
  DrawnDetail drawn;
  drawn.text = text_of("  corner:\n    leg: 2000\n" + layers(brick), {{"b0", {t, t}},
                                                                      {"b1", {t + 0.05, t}},
                                                                      {"b2", {t + 0.15, t}},
                                                                      {"b3", {t + 0.30, t}},
                                                                      {"b4", {t, t + 0.30}},
                                                                      {"b5", {t + 0.45, t}},
                                                                      {"a1", {t + 1.2, t}},
                                                                      {"a2", {t, t + 1.2}},
                                                                      {"a3", {t + 1.35, t}},
                                                                      {"o1", {t + 0.30, 0}},
                                                                      {"o2", {t + 1.2, 0}}});
  drawn.zone = {0, t + 0.56, 0, t + 0.56};
  drawn.half_zone = {0, t + 0.30, 0, t + 0.30};
  drawn.stretch = {t + 0.08, t + 0.56, t - 0.001, t + 0.001};
  drawn.inside = {"b0", "b1", "b2", "b3", "b4", "b5", "a1", "a2", "a3"};
  drawn.outside = {"o1", "o2"};
  return drawn;
}

DrawnDetail wall(double brick) {
  const double t = brick + 0.015;
  DrawnDetail drawn;
  drawn.text = text_of("  wall:\n    height: 4000\n" + layers(brick), {{"b0", {0, 0.25}},
                                                                       {"b1", {0, 0.5}},
                                                                       {"b2", {0, 0.8}},
                                                                       {"b3", {0, 1.1}},
                                                                       {"b4", {0, 1.4}},
                                                                       {"a1", {0, 2.2}},
                                                                       {"a2", {0, 2.6}},
                                                                       {"a3", {0, 3.0}},
                                                                       {"a4", {0, 3.5}},
                                                                       {"o1", {t, 0.8}},
                                                                       {"o2", {t, 2.6}}});
  drawn.zone = {0, t, 0, 1.6};
  drawn.half_zone = {0, t, 0, 0.88};
  drawn.stretch = {-0.001, 0.001, 0.4, 1.6};
  drawn.inside = {"b0", "b1", "b2", "b3", "b4", "a1", "a2", "a3", "a4"};
  drawn.outside = {"o1", "o2"};
  return drawn;
}

/// The jamb of a window: the wall's inside face at y = 0, that of the reveal at x = 15 mm.
DrawnDetail reveal(double brick) {
  DrawnDetail drawn;
  drawn.text = text_of("  reveal:\n" + layers(brick) +
                           "    wall length: 1600\n"
                           "    lining: [{material: lime plaster, thickness: 15}]\n"
                           "    frame: softwood across the grain\n"
                           "    frame depth: 56\n"
                           "    frame setback: 60\n",
                       {{"b0", {0.015, -0.200}},
                        {"b1", {0.015, -0.110}},
                        {"b2", {0.015, -0.050}},
                        {"b3", {-0.060, 0}},
                        {"b4", {-0.250, 0}},
                        {"a1", {-0.900, 0}},
                        {"a2", {-1.100, 0}},
                        {"a3", {-1.300, 0}},
                        {"o1", {-0.800, -brick - 0.015}}});
  drawn.zone = {-0.350, 0.050, -everywhere, everywhere};
  drawn.half_zone = {-0.150, 0.050, -everywhere, everywhere};
  drawn.stretch = {-0.350, -0.100, -0.001, 0.001};
  drawn.inside = {"b0", "b1", "b2", "b3", "b4", "a1", "a2", "a3"};
  drawn.outside = {"o1"};
  return drawn;
}

/// The foot of a wall: its inside face at x = 0, the floor at y = 0.
DrawnDetail foot(double brick) {
  const double t = brick + 0.015;
  DrawnDetail drawn;
  drawn.text = text_of("  wall base:\n" + layers(brick) +
                           fmt::format("    foundation: [{{material: wall brick, thickness: "
                                       "{:.0f}}}]\n",
                                       1000 * brick) +
                           "    footing: limestone rubble\n"
                           "    floor: [{material: hard limestone, thickness: 60}]\n"
                           "    floor width: 4500\n"
                           "    ground: clay soil\n"
                           "    wall length: 2200\n",
                       {{"b0", {0, 0.03}},
                        {"b1", {0, 0.10}},
                        {"b2", {0, 0.25}},
                        {"b3", {0, 0.45}},
                        {"a1", {0, 1.10}},
                        {"a2", {0, 1.50}},
                        {"a3", {0, 1.90}},
                        {"o1", {t, 0.30}},
                        {"o2", {t, 1.50}}});
  drawn.zone = {-everywhere, everywhere, -everywhere, 0.6};
  drawn.half_zone = {-everywhere, everywhere, -everywhere, 0.33};
  drawn.stretch = {-0.001, 0.001, 0.05, 0.6};
  drawn.inside = {"b0", "b1", "b2", "b3", "a1", "a2", "a3"};
  drawn.outside = {"o1", "o2"};
  return drawn;
}

}  // namespace

DrawnDetail drawn_detail(Detail detail) {
  switch (detail) {
    case Detail::corner_225:
      return corner(0.225);
    case Detail::corner_327:
      return corner(0.327);
    case Detail::corner_500:
      return corner(0.500);
    case Detail::reveal_327:
      return reveal(0.327);
    case Detail::foot_225:
      return foot(0.225);
    case Detail::wall_225:
      break;
  }
  return wall(0.225);
}

}  // namespace quoin::testing
