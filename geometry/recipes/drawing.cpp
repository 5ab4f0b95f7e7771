// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/drawing.hpp"

#include <algorithm>
#include <utility>

namespace quoin::geometry {

double cut_distance(double thickness) { return std::max(1.0, 3 * thickness); }

double thickness_of(const std::vector<Layer>& layers) {
  double sum = 0.0;
  for (const Layer& layer : layers) sum += layer.thickness;
  return sum;
}

std::vector<Layer> together(std::vector<Layer> first, const std::vector<Layer>& second) {
  first.insert(first.end(), second.begin(), second.end());
  return first;
}

void draw(Sheet& sheet, MembraneId membrane, Outline line) {
  if (membrane.valid()) sheet.push_back({membrane, std::move(line), {}});
}

void stand(Sheet& sheet, const std::vector<Layer>& layers, double x, double from, double to) {
  for (const Layer& layer : layers) {
    sheet.push_back({layer.region, rectangle(x, x + layer.thickness, from, to), {}});
    x += layer.thickness;
    draw(sheet, layer.behind, {{x, from}, {x, to}});
  }
}

void lay(Sheet& sheet, const std::vector<Layer>& layers, double y, double from, double to) {
  for (const Layer& layer : layers) {
    sheet.push_back({layer.region, rectangle(from, to, y - layer.thickness, y), {}});
    y -= layer.thickness;
    draw(sheet, layer.behind, {{from, y}, {to, y}});
  }
}

std::optional<std::string> objection_to_frame(double setback, double depth, double wall_thickness) {
  if (setback + depth <= wall_thickness + snap_tolerance) return std::nullopt;
  return "the frame stands into the room: its setback and depth together exceed the thickness of "
         "the wall";
}

}  // namespace quoin::geometry
