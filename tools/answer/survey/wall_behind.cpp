// SPDX-License-Identifier: Apache-2.0
#include <cmath>
#include <cstddef>

#include "geometry/mesh.hpp"
#include "tools/answer/survey/surveyed_section.hpp"

namespace quoin::tools {

WallBehind wall_behind(const SurveyedSection& section, const OnSurface& place) {
  const geometry::Mesh& mesh = section.parametrised.mesh;
  const geometry::Face& face = section.surfaces[place.surface].faces[place.face];
  const geometry::Point from = mesh.place(face.from), to = mesh.place(face.to);
  const geometry::Point way{to.x - from.x, to.y - from.y};
  const geometry::Point inwards{-way.y, way.x};  // material on the left
  const bool along_x = std::abs(inwards.x) > std::abs(inwards.y);
  const int step = (along_x ? inwards.x : inwards.y) > 0.0 ? 1 : -1;
  // The column and row of the first cell behind the face.
  const geometry::Point middle{(from.x + to.x) / 2, (from.y + to.y) / 2};
  const auto cell = [](const std::vector<double>& lines, double at, int towards) {
    std::size_t k = 0;
    while (k + 2 < lines.size() &&
           (towards > 0 ? lines[k + 1] <= at + 1e-9 : lines[k + 1] < at - 1e-9))
      ++k;
    return static_cast<std::ptrdiff_t>(k);
  };
  std::ptrdiff_t i = cell(mesh.x, middle.x, along_x ? step : 1);
  std::ptrdiff_t j = cell(mesh.y, middle.y, along_x ? 1 : step);
  WallBehind wall;
  const auto columns = static_cast<std::ptrdiff_t>(mesh.columns());
  const auto rows = static_cast<std::ptrdiff_t>(mesh.rows());
  wall.exit = middle;
  while (i >= 0 && j >= 0 && i < columns && j < rows) {
    const auto ci = static_cast<std::size_t>(i), cj = static_cast<std::size_t>(j);
    const geometry::Cell& at = mesh.cell(ci, cj);
    const geometry::Fill& fill = geometry::is_solid(at.below) ? at.below : at.above;
    if (const auto* space = std::get_if<geometry::SpaceId>(&fill)) {
      wall.opposite = *space;
      break;
    }
    const auto* region = std::get_if<geometry::RegionId>(&fill);
    if (region == nullptr) break;
    const double thickness = along_x ? mesh.x[ci + 1] - mesh.x[ci] : mesh.y[cj + 1] - mesh.y[cj];
    if (!wall.pieces.empty() && wall.pieces.back().region == region->index) {
      wall.pieces.back().thickness += thickness;
    } else {
      wall.pieces.push_back({region->index, thickness});
    }
    (along_x ? wall.exit.x : wall.exit.y) =
        along_x ? mesh.x[step > 0 ? ci + 1 : ci] : mesh.y[step > 0 ? cj + 1 : cj];
    (along_x ? i : j) += step;
  }
  // Rows and columns beyond the material are cut away: there the air goes on.
  if (!wall.opposite.valid() && !wall.pieces.empty() &&
      (i < 0 || j < 0 || i >= columns || j >= rows)) {
    const auto found = nearest_on_surface(section, wall.exit);
    if (found && found->distance < 1e-3)
      wall.opposite = section.surfaces[found->surface].faces[found->face].space;
  }
  return wall;
}

}  // namespace quoin::tools
