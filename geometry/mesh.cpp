// SPDX-License-Identifier: Apache-2.0
#include "geometry/mesh.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace quoin::geometry {
namespace {

/// The four fills that meet at one point of the section's grid, once round: SW, SE, NE, NW.
using Quarters = std::array<Fill, 4>;

bool is_solid(const Fill& fill) { return std::holds_alternative<RegionId>(fill); }
bool is_space(const Fill& fill) { return std::holds_alternative<SpaceId>(fill); }

/// Whether temperature or flux is not smooth at a point: everywhere but on straight interfaces, at
/// square ends of one material, and where an interface runs square into a cut plane.
bool is_corner_of_field(const Quarters& q) {
  const auto solids = std::count_if(q.begin(), q.end(), is_solid);
  if (solids == 0) return false;
  for (const std::size_t k : {0u, 1u}) {  // a straight line through the point?
    if (q[k] == q[k + 1] && q[(k + 2) % 4] == q[(k + 3) % 4]) return false;
  }
  if (solids == 1) {  // square end: smooth unless two different spaces meet there
    const auto solid =
        static_cast<std::size_t>(std::find_if(q.begin(), q.end(), is_solid) - q.begin());
    const Fill& one = q[(solid + 1) % 4];
    const Fill& other = q[(solid + 3) % 4];
    return is_space(one) && is_space(other) && one != other;
  }
  if (solids == 2) {
    for (std::size_t k = 0; k < 4; ++k) {
      const bool beside = is_solid(q[k]) && is_solid(q[(k + 1) % 4]);
      const bool cut = !is_space(q[(k + 2) % 4]) && !is_space(q[(k + 3) % 4]);
      if (beside && cut) return false;  // an interface meeting a cut plane at a right angle
    }
  }
  return true;
}

/// Fill of a quarter of a point; nothing beyond the section.
Fill quarter(const Section& section, std::size_t i, std::size_t j, bool east, bool north) {
  if ((!east && i == 0) || (!north && j == 0)) return std::monostate{};
  const std::size_t column = east ? i : i - 1;
  const std::size_t row = north ? j : j - 1;
  if (column >= section.columns() || row >= section.rows()) return std::monostate{};
  return section.cell(column, row).below;
}

struct Corners {
  std::vector<char> on_x;  ///< whether a line of constant x holds a corner of the field
  std::vector<char> on_y;
};

Corners corners_of(const Section& section) {
  Corners corners{std::vector<char>(section.x.size()), std::vector<char>(section.y.size())};
  for (std::size_t j = 0; j < section.y.size(); ++j) {
    for (std::size_t i = 0; i < section.x.size(); ++i) {
      const Quarters around = {
          quarter(section, i, j, false, false), quarter(section, i, j, true, false),
          quarter(section, i, j, true, true), quarter(section, i, j, false, true)};
      if (is_corner_of_field(around)) corners.on_x[i] = corners.on_y[j] = 1;
    }
  }
  return corners;
}

Strip strip_of(double length, bool start, bool end, bool solid, double cells_per_metre) {
  if (!solid) return {};
  const double graded_length = start && end ? length / 2 : length;
  const auto half = static_cast<std::uint32_t>(std::max(
      1.0, std::ceil(cells_per_metre * std::pow(graded_length, 1.0 / grading_exponent) - 0.01)));
  return {start && end ? 2 * half : half, start, end};
}

std::vector<Strip> strips(const std::vector<double>& lines, const std::vector<char>& corners,
                          const std::vector<char>& solid, double cells_per_metre) {
  std::vector<Strip> all;
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
    all.push_back(strip_of(lines[k + 1] - lines[k], corners[k] != 0, corners[k + 1] != 0,
                           solid[k] != 0, cells_per_metre));
  }
  return all;
}

/// Where in a strip of unit length a line lies, t = 0 at its start and 1 at its end.
double graded(double t, const Strip& strip) {
  if (strip.finer_at_start && strip.finer_at_end) {
    return t <= 0.5 ? std::pow(2 * t, grading_exponent) / 2
                    : 1 - std::pow(2 * (1 - t), grading_exponent) / 2;
  }
  if (strip.finer_at_start) return std::pow(t, grading_exponent);
  if (strip.finer_at_end) return 1 - std::pow(1 - t, grading_exponent);
  return t;
}

/// The nodes along one axis, and the strip of each cell.
void cut(const std::vector<double>& lines, const std::vector<Strip>& strips,
         std::vector<double>& nodes, std::vector<std::uint32_t>& strip_of_cell) {
  nodes.push_back(lines.front());
  for (std::size_t s = 0; s < strips.size(); ++s) {
    const double length = lines[s + 1] - lines[s];
    for (std::uint32_t k = 1; k <= strips[s].cells; ++k) {
      strip_of_cell.push_back(static_cast<std::uint32_t>(s));
      nodes.push_back(k == strips[s].cells
                          ? lines[s + 1]
                          : lines[s] + length * graded(double(k) / strips[s].cells, strips[s]));
    }
  }
}

}  // namespace

Subdivision subdivision_of(const Section& section, double cells_per_metre) {
  std::vector<char> solid_column(section.columns());
  std::vector<char> solid_row(section.rows());
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      if (is_solid(section.cell(i, j).below) || is_solid(section.cell(i, j).above)) {
        solid_column[i] = solid_row[j] = 1;
      }
    }
  }
  const Corners corners = corners_of(section);
  return {strips(section.x, corners.on_x, solid_column, cells_per_metre),
          strips(section.y, corners.on_y, solid_row, cells_per_metre)};
}

Subdivision doubled(Subdivision subdivision) {
  for (Strip& strip : subdivision.columns) strip.cells *= 2;
  for (Strip& strip : subdivision.rows) strip.cells *= 2;
  return subdivision;
}

Mesh mesh_of(const Section& section, const Subdivision& subdivision) {
  Mesh mesh{section, {}, {}, {}, {}};
  cut(section.x, subdivision.columns, mesh.x, mesh.section_column);
  cut(section.y, subdivision.rows, mesh.y, mesh.section_row);
  return mesh;
}

}  // namespace quoin::geometry
