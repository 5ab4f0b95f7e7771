// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/smoothing.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace quoin::tools {
namespace {

using geometry::Cell;
using geometry::Mesh;
using geometry::RegionId;

bool is_material(const Cell& cell) { return std::holds_alternative<RegionId>(cell.below); }

/// How one axis is cut finer.
struct FineAxis {
  std::vector<double> lines;
  std::vector<std::uint32_t> strip;  ///< of the section, of each fine cell
  std::vector<std::size_t> first;    ///< fine line of each old line
};

FineAxis fine_axis(const std::vector<double>& lines, const std::vector<std::uint32_t>& strips,
                   double longest) {
  FineAxis axis{{lines.front()}, {}, {0}};
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
    constexpr double most = 24.0;
    const double length = lines[k + 1] - lines[k];
    const double parts = std::clamp(std::ceil(length / longest), 1.0, most);
    for (double part = 1.0; part <= parts; ++part) {
      axis.lines.push_back(part == parts ? lines[k + 1] : lines[k] + length * part / parts);
      axis.strip.push_back(strips[k]);
    }
    axis.first.push_back(axis.lines.size() - 1);
  }
  return axis;
}

/// Slope at a node between two chords, limited so that the cubic does not overshoot.
double limited(double slope, double before, double after) {
  if (before * after <= 0.0) return 0.0;
  const double most = 3.0 * std::min(std::abs(before), std::abs(after));
  return std::clamp(slope, -most, most);
}

std::vector<double> slopes(const std::vector<double>& x, const std::vector<double>& v) {
  const std::size_t n = x.size();
  std::vector<double> chord(n - 1), slope(n);
  for (std::size_t k = 0; k + 1 < n; ++k) chord[k] = (v[k + 1] - v[k]) / (x[k + 1] - x[k]);
  if (n == 2) return {chord[0], chord[0]};
  for (std::size_t k = 1; k + 1 < n; ++k) {
    const double before = x[k] - x[k - 1], after = x[k + 1] - x[k];
    const double parabola = (chord[k - 1] * after + chord[k] * before) / (before + after);
    slope[k] = limited(parabola, chord[k - 1], chord[k]);
  }
  const auto end = [](double near, double next, double at_next) {
    const double parabola = 2.0 * near - at_next;
    return near * next <= 0.0 ? near : limited(parabola, near, near);
  };
  slope.front() = end(chord.front(), chord[1], slope[1]);
  slope.back() = end(chord.back(), chord[n - 3], slope[n - 2]);
  return slope;
}

/// Values at the fine lines of old lines `from` to `to`, put where `at` says.
void interpolate(const std::vector<double>& lines, const FineAxis& fine, std::size_t from,
                 std::size_t to, const std::function<double(std::size_t)>& old_value,
                 const std::function<double&(std::size_t)>& at) {
  std::vector<double> x, v;
  for (std::size_t k = from; k <= to; ++k) {
    x.push_back(lines[k]);
    v.push_back(old_value(k));
  }
  const std::vector<double> slope = slopes(x, v);
  for (std::size_t k = 0; k + 1 < x.size(); ++k) {
    const double h = x[k + 1] - x[k];
    const std::size_t first = fine.first[from + k], last = fine.first[from + k + 1];
    at(first) = v[k];
    for (std::size_t f = first + 1; f < last; ++f) {
      const double t = (fine.lines[f] - x[k]) / h, u = 1.0 - t;
      at(f) = u * u * (1.0 + 2.0 * t) * v[k] + t * t * (1.0 + 2.0 * u) * v[k + 1] +
              t * u * h * (u * slope[k] - t * slope[k + 1]);
    }
  }
  at(fine.first[to]) = v.back();
}

/// Calls `act` with the first and the last old line of each strip of the section.
void for_each_strip(const std::vector<std::uint32_t>& strips,
                    const std::function<void(std::size_t, std::size_t)>& act) {
  for (std::size_t first = 0; first < strips.size();) {
    std::size_t last = first + 1;
    while (last < strips.size() && strips[last] == strips[first]) ++last;
    act(first, last);
    first = last;
  }
}

}  // namespace

FineField refined(const Mesh& mesh, const std::vector<double>& field, double longest) {
  const auto& cells = mesh.section.cells;
  if (std::any_of(cells.begin(), cells.end(),
                  [](const Cell& cell) { return cell.split != geometry::Split::none; })) {
    return {mesh, field};
  }
  const FineAxis columns = fine_axis(mesh.x, mesh.section_column, longest);
  const FineAxis rows = fine_axis(mesh.y, mesh.section_row, longest);
  FineField fine;
  fine.mesh.section = mesh.section;
  fine.mesh.x = columns.lines;
  fine.mesh.y = rows.lines;
  fine.mesh.section_column = columns.strip;
  fine.mesh.section_row = rows.strip;
  const std::size_t nx = fine.mesh.nx();

  std::vector<double> along_rows(nx * mesh.ny());  // finer in x only
  for (std::size_t j = 0; j < mesh.ny(); ++j) {
    for_each_strip(mesh.section_column, [&](std::size_t first, std::size_t last) {
      const bool solid = (j > 0 && is_material(mesh.cell(first, j - 1))) ||
                         (j < mesh.rows() && is_material(mesh.cell(first, j)));
      if (!solid) return;
      interpolate(
          mesh.x, columns, first, last, [&](std::size_t i) { return field[mesh.node(i, j)]; },
          [&](std::size_t i) -> double& { return along_rows[j * nx + i]; });
    });
  }
  fine.values.resize(nx * fine.mesh.ny());
  for (std::size_t i = 0; i < nx; ++i) {
    for_each_strip(mesh.section_row, [&](std::size_t first, std::size_t last) {
      const std::uint32_t row = mesh.section_row[first];
      const auto shows_material = [&](std::size_t column) {
        return is_material(mesh.section.cell(columns.strip[column], row));
      };
      if (!(i > 0 && shows_material(i - 1)) && !(i + 1 < nx && shows_material(i))) return;
      interpolate(
          mesh.y, rows, first, last, [&](std::size_t j) { return along_rows[j * nx + i]; },
          [&](std::size_t j) -> double& { return fine.values[j * nx + i]; });
    });
  }
  return fine;
}

}  // namespace quoin::tools
