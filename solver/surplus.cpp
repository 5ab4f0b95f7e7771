// SPDX-License-Identifier: Apache-2.0
#include "solver/surplus.hpp"

#include <cmath>

namespace quoin::solver {
namespace {

/// What a line is to its strip.
enum class Line : char { of_section, newest, older };

std::vector<Line> lines_of(const std::vector<std::uint32_t>& strip_of_cell) {
  std::vector<Line> lines(strip_of_cell.size() + 1, Line::of_section);
  std::size_t first = 0;  // cell of the current strip
  for (std::size_t cell = 1; cell < strip_of_cell.size(); ++cell) {
    if (strip_of_cell[cell] != strip_of_cell[cell - 1]) {
      first = cell;
    } else {
      lines[cell] = (cell - first) % 2 == 1 ? Line::newest : Line::older;
    }
  }
  return lines;
}

/// What a node contributes through its two neighbours along one axis.
double contribution(std::size_t node, std::size_t step, double share_before,
                    const std::vector<double>& conductance, const std::vector<double>& field,
                    const std::vector<double>& influence) {
  // On a sloping surface there is material on one side only, and no line to compare with.
  if (conductance[node - step] == 0.0 || conductance[node] == 0.0) return 0.0;
  const double across = conductance[node - step] + conductance[node];
  const auto bend = [&](const std::vector<double>& value) {
    return value[node] - (1 - share_before) * value[node - step] -
           share_before * value[node + step];
  };
  return across * std::abs(bend(field) * bend(influence));
}

double share(const std::vector<double>& lines, std::size_t k) {
  return (lines[k] - lines[k - 1]) / (lines[k + 1] - lines[k - 1]);
}

}  // namespace

void add(Blame& to, const Blame& other, double weight) {
  const auto combine = [weight](std::vector<double>& a, const std::vector<double>& b) {
    for (std::size_t k = 0; k < a.size(); ++k) a[k] += weight * b[k];
  };
  combine(to.columns, other.columns);
  combine(to.rows, other.rows);
}

Blame no_blame(const geometry::Mesh& mesh) {
  return {std::vector<double>(mesh.columns()), std::vector<double>(mesh.rows())};
}

Surplus surplus_of(const geometry::Mesh& mesh, const Assembly& assembly,
                   const std::vector<double>& field, const std::vector<double>& influence) {
  Surplus surplus{no_blame(mesh), 0.0};
  const std::vector<Line> column_lines = lines_of(mesh.section_column);
  const std::vector<Line> row_lines = lines_of(mesh.section_row);
  const auto note = [&surplus](std::vector<double>& blame, std::size_t k, Line line,
                               double amount) {
    blame[k - 1] += amount / 2;
    blame[k] += amount / 2;
    if (line == Line::newest) surplus.newest += amount;
  };
  for (std::size_t j = 0; j < mesh.ny(); ++j) {
    for (std::size_t i = 0; i < mesh.nx(); ++i) {
      const std::size_t node = mesh.node(i, j);
      if (column_lines[i] != Line::of_section) {
        note(surplus.blame.columns, i, column_lines[i],
             contribution(node, 1, share(mesh.x, i), assembly.network.east, field, influence));
      }
      if (row_lines[j] != Line::of_section) {
        note(surplus.blame.rows, j, row_lines[j],
             contribution(node, mesh.nx(), share(mesh.y, j), assembly.network.north, field,
                          influence));
      }
    }
  }
  return surplus;
}

}  // namespace quoin::solver
