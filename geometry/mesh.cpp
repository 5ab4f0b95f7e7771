// SPDX-License-Identifier: Apache-2.0
#include "geometry/mesh.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

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

/// Cuts in two between every two neighbours that `wanted` picks by their position, ends included.
template <class Wanted>
void bisect(Strip& strip, Wanted wanted) {
  std::vector<double> finer;
  for (std::size_t k = 0; k <= strip.cuts.size(); ++k) {
    const double from = k == 0 ? 0.0 : strip.cuts[k - 1];
    const double to = k == strip.cuts.size() ? 1.0 : strip.cuts[k];
    if (wanted(k)) finer.push_back((from + to) / 2);
    if (k < strip.cuts.size()) finer.push_back(to);
  }
  strip.cuts = std::move(finer);
}

void bisect(Strip& strip) {
  bisect(strip, [](std::size_t) { return true; });
}

Strip strip_of(double length, bool start, bool end, bool solid, double cells_per_metre) {
  Strip strip{{}, start, end};
  if (!solid) return strip;
  const double graded_length = start && end ? length / 2 : length;
  const double wanted =
      cells_per_metre * std::pow(graded_length, 1.0 / grading_exponent) * (start && end ? 2 : 1);
  do {
    bisect(strip);
  } while (static_cast<double>(strip.cells()) * std::numbers::sqrt2 < wanted);
  return strip;
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
    for (const double t : strips[s].cuts) nodes.push_back(lines[s] + length * graded(t, strips[s]));
    nodes.push_back(lines[s + 1]);
    strip_of_cell.insert(strip_of_cell.end(), strips[s].cells(), static_cast<std::uint32_t>(s));
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
  // A strip without cuts holds no material.
  const auto twice = [](Strip& strip) {
    if (!strip.cuts.empty()) bisect(strip);
  };
  std::for_each(subdivision.columns.begin(), subdivision.columns.end(), twice);
  std::for_each(subdivision.rows.begin(), subdivision.rows.end(), twice);
  return subdivision;
}

Subdivision halved(Subdivision subdivision) {
  const auto halve = [](Strip& strip) {
    std::vector<double> kept;
    for (std::size_t k = 1; k < strip.cuts.size(); k += 2) kept.push_back(strip.cuts[k]);
    strip.cuts = std::move(kept);
  };
  std::for_each(subdivision.columns.begin(), subdivision.columns.end(), halve);
  std::for_each(subdivision.rows.begin(), subdivision.rows.end(), halve);
  return subdivision;
}

Subdivision bisected(Subdivision subdivision, const std::vector<char>& columns,
                     const std::vector<char>& rows) {
  const auto cut_marked = [](std::vector<Strip>& strips, const std::vector<char>& marked) {
    std::size_t first = 0;  // cell of the mesh with which the strip begins
    for (Strip& strip : strips) {
      const std::size_t cells = strip.cells();
      bisect(strip, [&](std::size_t k) { return marked[first + k] != 0; });
      first += cells;
    }
  };
  cut_marked(subdivision.columns, columns);
  cut_marked(subdivision.rows, rows);
  return subdivision;
}

std::size_t nodes(const Subdivision& subdivision) {
  const auto lines = [](const std::vector<Strip>& strips) {
    return std::accumulate(strips.begin(), strips.end(), std::size_t{1},
                           [](std::size_t sum, const Strip& strip) { return sum + strip.cells(); });
  };
  return lines(subdivision.columns) * lines(subdivision.rows);
}

Mesh mesh_of(const Section& section, const Subdivision& subdivision) {
  Mesh mesh{section, {}, {}, {}, {}};
  cut(section.x, subdivision.columns, mesh.x, mesh.section_column);
  cut(section.y, subdivision.rows, mesh.y, mesh.section_row);
  return mesh;
}

}  // namespace quoin::geometry
