// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/section/close_up.hpp"

#include <algorithm>

#include "geometry/close_up.hpp"

namespace quoin::tools {
namespace {

using geometry::Cell;
using geometry::Mesh;
using geometry::Section;

/// One axis of a mesh between two places.
struct Part {
  std::vector<double> lines;
  std::vector<std::uint32_t> strips;  ///< of the part of the section, of each cell
  std::vector<std::size_t> cells;     ///< of the mesh, of each cell
};

Part part_of(const std::vector<double>& lines, const std::vector<double>& section_lines) {
  Part part;
  const double from = section_lines.front(), to = section_lines.back();
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
    const double start = std::max(lines[k], from), end = std::min(lines[k + 1], to);
    if (end - start < geometry::snap / 2) continue;
    if (part.lines.empty()) part.lines.push_back(start);
    part.lines.push_back(end);
    part.cells.push_back(k);
    const auto strip =
        std::upper_bound(section_lines.begin(), section_lines.end(), (start + end) / 2);
    part.strips.push_back(static_cast<std::uint32_t>(strip - section_lines.begin() - 1));
  }
  return part;
}

/// Where a place lies in a strip between lines, 0 at its start.
double share(const std::vector<double>& lines, std::size_t cell, double at) {
  return (at - lines[cell]) / (lines[cell + 1] - lines[cell]);
}

bool has_slopes(const Section& section) {
  return std::any_of(section.cells.begin(), section.cells.end(),
                     [](const Cell& cell) { return cell.split != geometry::Split::none; });
}

}  // namespace

Shown shown_part(const cases::Variant& variant, const Section& section) {
  if (!variant.close_up || has_slopes(section)) return {section, {}};
  Shown shown{geometry::close_up(section, *variant.close_up), {}};
  const Section& part = shown.section;
  shown.broken = {part.x.front() > section.x.front() + geometry::snap,
                  part.x.back() < section.x.back() - geometry::snap,
                  part.y.front() > section.y.front() + geometry::snap,
                  part.y.back() < section.y.back() - geometry::snap};
  return shown;
}

MeshValues shown_part(const Shown& shown, const Mesh& mesh, const std::vector<double>& values) {
  if (!shown.broken.any()) return {mesh, values};
  const Part columns = part_of(mesh.x, shown.section.x), rows = part_of(mesh.y, shown.section.y);
  MeshValues part{{shown.section, columns.lines, rows.lines, columns.strips, rows.strips, {}}, {}};
  if (!mesh.cells.empty()) {
    for (const std::size_t j : rows.cells) {
      for (const std::size_t i : columns.cells) part.mesh.cells.push_back(mesh.cell(i, j));
    }
  }
  for (std::size_t j = 0; j < part.mesh.ny(); ++j) {
    const std::size_t row = rows.cells[j == 0 ? 0 : j - 1];
    const double v = share(mesh.y, row, part.mesh.y[j]);
    for (std::size_t i = 0; i < part.mesh.nx(); ++i) {
      const std::size_t column = columns.cells[i == 0 ? 0 : i - 1];
      const double u = share(mesh.x, column, part.mesh.x[i]);
      const auto along = [&](std::size_t at) {
        const double first = values[mesh.node(column, at)],
                     next = values[mesh.node(column + 1, at)];
        return u == 0.0 ? first : u == 1.0 ? next : first + u * (next - first);
      };
      const double low = along(row), high = along(row + 1);
      part.values.push_back(v == 0.0 ? low : v == 1.0 ? high : low + v * (high - low));
    }
  }
  return part;
}

}  // namespace quoin::tools
