// SPDX-License-Identifier: Apache-2.0
#include "geometry/two_sided.hpp"

#include <algorithm>
#include <numeric>

namespace quoin::geometry {
namespace {

/// The membranes on each line of one axis, by the cells along it.
std::vector<std::vector<MembraneId>> on_lines(const std::vector<Seam>& seams, bool upright,
                                              const std::vector<double>& lines,
                                              const std::vector<double>& along) {
  std::vector<std::vector<MembraneId>> membranes(lines.size());
  for (const Seam& seam : seams) {
    if (seam.upright != upright) continue;
    const auto found = std::lower_bound(lines.begin(), lines.end(), seam.at);
    if (found == lines.end() || *found != seam.at || found == lines.begin() ||
        found + 1 == lines.end())
      continue;
    auto& line = membranes[static_cast<std::size_t>(found - lines.begin())];
    line.resize(along.size() - 1);
    for (std::size_t k = 0; k + 1 < along.size(); ++k) {
      if (along[k] >= seam.from && along[k + 1] <= seam.to) line[k] = seam.membrane;
    }
  }
  return membranes;
}

/// Marks the lines through a place where fans of material touch in one point, as if a membrane lay
/// on them: that alone lets each fan have a node of its own there. Outer lines have cells on one
/// side only.
void mark(std::vector<std::vector<MembraneId>>& lines, std::size_t line, std::size_t cells) {
  if (line > 0 && line + 1 < lines.size()) lines[line].resize(cells);
}

/// Numbers the lines of one axis, those with membranes or marks twice.
void number(const std::vector<std::vector<MembraneId>>& membranes, std::vector<std::size_t>& before,
            std::vector<std::size_t>& after, std::vector<std::size_t>& lines) {
  for (std::size_t k = 0; k < membranes.size(); ++k) {
    before.push_back(lines.size());
    lines.push_back(k);
    if (!membranes[k].empty()) lines.push_back(k);
    after.push_back(lines.size() - 1);
  }
}

}  // namespace

TwoSided::TwoSided(const Mesh& mesh)
    : mesh_nx_(mesh.nx()),
      upright_(on_lines(mesh.section.seams, true, mesh.x, mesh.y)),
      level_(on_lines(mesh.section.seams, false, mesh.y, mesh.x)) {
  for (const auto& [place, nodes] : mesh.touching) {
    mark(upright_, place % mesh.nx(), mesh.rows());
    mark(level_, place / mesh.nx(), mesh.columns());
  }
  number(upright_, before_x_, after_x_, column_);
  number(level_, before_y_, after_y_, row_);
  add_twins(mesh);
  join();
  find_fans(mesh);
}

void TwoSided::find_fans(const Mesh& mesh) {
  // The line before a place belongs to the cells before it, the line after to those after.
  const auto cell_at = [](std::size_t line, bool after, std::size_t cells) {
    return after && line < cells ? line : line - 1;
  };
  for (const auto& [place, nodes] : mesh.touching) {
    const std::size_t i = place % mesh.nx(), j = place / mesh.nx();
    for (std::size_t row = before_y_[j]; row <= after_y_[j]; ++row) {
      for (std::size_t column = before_x_[i]; column <= after_x_[i]; ++column) {
        const std::size_t left = cell_at(i, column == after_x_[i], mesh.columns());
        const std::size_t below = cell_at(j, row == after_y_[j], mesh.rows());
        of_fan_[row * nx() + column] = mesh.corner(left, below, left < i, below < j);
      }
    }
  }
}

void TwoSided::add_twins(const Mesh& mesh) {
  // Looks at the half of a side between two cells that ends at both nodes.
  const auto look = [](Twins& twins, MembraneId membrane, double length, const Fill& here,
                       const Fill& there) {
    if (!is_solid(here) || !is_solid(there)) return;
    if (membrane.valid()) {
      twins.parted.push_back({membrane, length / 2});
    } else {
      twins.joined = true;
    }
  };
  const auto side_by_side = [&](Twins& twins, std::size_t i, std::size_t j) {
    look(twins, upright_[i][j], mesh.y[j + 1] - mesh.y[j], mesh.cell(i - 1, j).at(CellSide::east),
         mesh.cell(i, j).at(CellSide::west));
  };
  const auto one_above = [&](Twins& twins, std::size_t i, std::size_t j) {
    look(twins, level_[j][i], mesh.x[i + 1] - mesh.x[i], mesh.cell(i, j - 1).at(CellSide::north),
         mesh.cell(i, j).at(CellSide::south));
  };
  for (std::size_t i = 0; i < mesh.nx(); ++i) {
    if (upright_[i].empty()) continue;
    for (std::size_t row = 0; row < ny(); ++row) {
      const std::size_t j = row_[row];
      Twins twins{row * nx() + before_x_[i], row * nx() + after_x_[i], false, {}};
      if (row == before_y_[j] && j > 0) side_by_side(twins, i, j - 1);
      if (row == after_y_[j] && j < mesh.rows()) side_by_side(twins, i, j);
      twins_.push_back(std::move(twins));
    }
  }
  for (std::size_t j = 0; j < mesh.ny(); ++j) {
    if (level_[j].empty()) continue;
    for (std::size_t column = 0; column < nx(); ++column) {
      const std::size_t i = column_[column];
      Twins twins{before_y_[j] * nx() + column, after_y_[j] * nx() + column, false, {}};
      if (column == before_x_[i] && i > 0) one_above(twins, i - 1, j);
      if (column == after_x_[i] && i < mesh.columns()) one_above(twins, i, j);
      twins_.push_back(std::move(twins));
    }
  }
}

void TwoSided::join() {
  leader_.resize(size());
  std::iota(leader_.begin(), leader_.end(), std::size_t{0});
  // At most four nodes lie at one place, so a few rounds give all of them the least.
  for (bool changed = true; changed;) {
    changed = false;
    for (const Twins& twins : twins_) {
      if (!twins.joined || leader_[twins.one] == leader_[twins.other]) continue;
      const std::size_t least = std::min(leader_[twins.one], leader_[twins.other]);
      leader_[twins.one] = leader_[twins.other] = least;
      changed = true;
    }
  }
}

}  // namespace quoin::geometry
