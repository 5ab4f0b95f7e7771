// SPDX-License-Identifier: Apache-2.0
#include "geometry/mesh.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>
#include <stdexcept>

#include "geometry/fans.hpp"

namespace quoin::geometry {
namespace {

bool is_space(const Fill& fill) { return std::holds_alternative<SpaceId>(fill); }

/// Whether one straight sloping edge runs through the point, with the same on either side of it all
/// along.
bool is_straight_slope(const Quarters& q) {
  const auto& [sw, se, ne, nw] = q;
  const bool rising = sw.split == Split::rising && sw == ne && se == undivided(sw.below) &&
                      nw == undivided(sw.above);
  const bool falling = nw.split == Split::falling && nw == se && sw == undivided(nw.below) &&
                       ne == undivided(nw.above);
  return rising || falling;
}

/// Whether temperature or flux is not smooth at a point: everywhere but on straight interfaces, at
/// square ends of one material, and where an interface runs square into a cut plane.
bool is_corner_of_field(const Quarters& cells) {
  if (std::any_of(cells.begin(), cells.end(),
                  [](const Cell& c) { return c.split != Split::none; })) {
    return !is_straight_slope(cells);
  }
  const std::array<Fill, 4> q = {cells[0].below, cells[1].below, cells[2].below, cells[3].below};
  const auto solid = [](const Fill& fill) { return is_solid(fill); };
  const auto solids = std::count_if(q.begin(), q.end(), solid);
  if (solids == 0) return false;
  for (const std::size_t k : {0u, 1u}) {  // a straight line through the point?
    if (q[k] == q[k + 1] && q[(k + 2) % 4] == q[(k + 3) % 4]) return false;
  }
  if (solids == 1) {  // square end: smooth unless two different spaces meet there
    const auto only = static_cast<std::size_t>(std::find_if(q.begin(), q.end(), solid) - q.begin());
    const Fill& one = q[(only + 1) % 4];
    const Fill& other = q[(only + 3) % 4];
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

struct Corners {
  std::vector<char> on_x;  ///< whether a line of constant x holds a corner of the field
  std::vector<char> on_y;
};

Corners corners_of(const Section& section) {
  Corners corners{std::vector<char>(section.x.size()), std::vector<char>(section.y.size())};
  for (std::size_t j = 0; j < section.y.size(); ++j) {
    for (std::size_t i = 0; i < section.x.size(); ++i) {
      if (is_corner_of_field(quarters(section, i, j))) corners.on_x[i] = corners.on_y[j] = 1;
    }
  }
  // The pressure of vapour is not smooth at the end of a membrane, nor where it turns.
  for (const Seam& seam : section.seams) {
    for (const double end : {seam.from, seam.to}) {
      const Crossing at = crossing_at({section.x, section.y},
                                      seam.upright ? Point{seam.at, end} : Point{end, seam.at});
      const Quarters around = quarters(section, at.i, at.j);
      if (std::all_of(around.begin(), around.end(), [](const Cell& c) { return is_solid(c); }))
        corners.on_x[at.i] = corners.on_y[at.j] = 1;
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

/// Numbers from 1 for groups of strips that divided cells tie together, 0 for free ones. Shape:
/// columns, then rows.
std::vector<std::uint32_t> bonds_of(const Section& section) {
  std::vector<std::size_t> leader(section.columns() + section.rows());
  std::iota(leader.begin(), leader.end(), std::size_t{0});
  const auto leader_of = [&leader](std::size_t k) {
    while (leader[k] != k) k = leader[k] = leader[leader[k]];
    return k;
  };
  std::vector<char> tied(leader.size());
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      if (section.cell(i, j).split == Split::none) continue;
      tied[i] = tied[section.columns() + j] = 1;
      const std::size_t one = leader_of(i), other = leader_of(section.columns() + j);
      leader[std::max(one, other)] = std::min(one, other);
    }
  }
  std::vector<std::uint32_t> bonds(leader.size(), 0);
  for (std::size_t k = 0; k < leader.size(); ++k) {
    if (tied[k] != 0) bonds[k] = static_cast<std::uint32_t>(leader_of(k)) + 1;
  }
  return bonds;
}

/// Calls visit(strip) for every strip of a subdivision, columns first.
template <class Visit>
void for_each_strip(Subdivision& subdivision, Visit visit) {
  std::for_each(subdivision.columns.begin(), subdivision.columns.end(), visit);
  std::for_each(subdivision.rows.begin(), subdivision.rows.end(), visit);
}

/// Gives all strips of a bond the cuts of the finest, and the same shape from either end.
void give_bound_strips_one_shape(Subdivision& subdivision,
                                 const std::vector<std::uint32_t>& bonds) {
  std::size_t k = 0;
  for_each_strip(subdivision, [&](Strip& strip) { strip.bond = bonds[k++]; });
  std::map<std::uint32_t, Strip> common;
  for_each_strip(subdivision, [&](Strip& strip) {
    if (strip.bond == 0) return;
    Strip& shared = common[strip.bond];
    const bool graded_at_all = shared.finer_at_start || strip.finer_at_start || strip.finer_at_end;
    if (strip.cuts.size() > shared.cuts.size()) shared.cuts = strip.cuts;
    shared.finer_at_start = shared.finer_at_end = graded_at_all;
  });
  for_each_strip(subdivision, [&](Strip& strip) {
    if (strip.bond == 0) return;
    const Strip& shared = common[strip.bond];
    strip.cuts = shared.cuts;
    strip.finer_at_start = shared.finer_at_start;
    strip.finer_at_end = shared.finer_at_end;
  });
}

/// Part of a divided cell of the section.
Cell part_of(const Cell& whole, std::size_t column, std::size_t row, std::size_t cells) {
  const std::size_t diagonal = whole.split == Split::rising ? column : cells - 1 - column;
  if (row == diagonal) return whole;
  return undivided(row < diagonal ? whole.below : whole.above);
}

/// The number of each cell within its strip.
std::vector<std::size_t> numbers_in_strip(const std::vector<std::uint32_t>& strip_of_cell) {
  std::vector<std::size_t> numbers(strip_of_cell.size(), 0);
  for (std::size_t k = 1; k < numbers.size(); ++k) {
    if (strip_of_cell[k] == strip_of_cell[k - 1]) numbers[k] = numbers[k - 1] + 1;
  }
  return numbers;
}

std::vector<Cell> divided_cells(const Mesh& mesh, const Subdivision& subdivision) {
  const std::vector<std::size_t> column = numbers_in_strip(mesh.section_column);
  const std::vector<std::size_t> row = numbers_in_strip(mesh.section_row);
  std::vector<Cell> cells;
  cells.reserve(mesh.columns() * mesh.rows());
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const Cell& whole = mesh.section.cell(mesh.section_column[i], mesh.section_row[j]);
      cells.push_back(whole.split == Split::none
                          ? whole
                          : part_of(whole, column[i], row[j],
                                    subdivision.columns[mesh.section_column[i]].cells()));
    }
  }
  return cells;
}

/// Whether two strips are cut alike, so that a sloping edge runs along diagonals of their cells.
bool are_cut_alike(const Strip& one, const Strip& other) {
  return one.cuts == other.cuts && one.finer_at_start == other.finer_at_start &&
         one.finer_at_end == other.finer_at_end;
}

/// Throws: invalid_argument where a sloping edge would leave the diagonals.
void refuse_unequal_cuts(const Section& section, const Subdivision& subdivision) {
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      if (section.cell(i, j).split == Split::none ||
          are_cut_alike(subdivision.columns[i], subdivision.rows[j]))
        continue;
      throw std::invalid_argument("strips that a sloping edge crosses are cut unequally");
    }
  }
}

/// Gives fans of material that touch in one point alone nodes of their own; the widest keeps that
/// of the grid.
void part_fans(const Subdivision& subdivision, Mesh& mesh) {
  const auto starts = [](const std::vector<Strip>& strips) {
    std::vector<std::size_t> at = {0};
    for (const Strip& strip : strips) at.push_back(at.back() + strip.cells());
    return at;
  };
  const std::vector<std::size_t> column = starts(subdivision.columns),
                                 row = starts(subdivision.rows);
  for (std::size_t j = 0; j < row.size(); ++j) {
    for (std::size_t i = 0; i < column.size(); ++i) {
      const Fans fans(quarters(mesh.section, i, j));
      if (fans.eighths.size() < 2) continue;
      const std::size_t at = mesh.node(column[i], row[j]);
      const auto widest = std::max_element(fans.eighths.begin(), fans.eighths.end());
      std::vector<std::size_t> node(fans.eighths.size() + 1, at);
      for (std::size_t k = 0; k < fans.eighths.size(); ++k) {
        if (fans.eighths.begin() + static_cast<std::ptrdiff_t>(k) == widest) continue;
        node[k + 1] = mesh.nodes();
        mesh.further.push_back(at);
      }
      const auto of_quarter = [&](std::size_t first) {
        return node[std::max(fans.fan[first], fans.fan[first + 1])];
      };
      mesh.touching[at] = {of_quarter(4), of_quarter(6), of_quarter(2), of_quarter(0)};
    }
  }
}

bool has_slopes(const Section& section) {
  return std::any_of(section.cells.begin(), section.cells.end(),
                     [](const Cell& cell) { return cell.split != Split::none; });
}

}  // namespace

Subdivision subdivision_of(const Section& section, double cells_per_metre) {
  std::vector<char> solid_column(section.columns());
  std::vector<char> solid_row(section.rows());
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      if (is_solid(section.cell(i, j))) {
        solid_column[i] = solid_row[j] = 1;
      }
    }
  }
  const Corners corners = corners_of(section);
  Subdivision subdivision{strips(section.x, corners.on_x, solid_column, cells_per_metre),
                          strips(section.y, corners.on_y, solid_row, cells_per_metre)};
  give_bound_strips_one_shape(subdivision, bonds_of(section));
  return subdivision;
}

Subdivision doubled(Subdivision subdivision) {
  for_each_strip(subdivision, [](Strip& strip) {
    if (!strip.cuts.empty()) bisect(strip);  // a strip without cuts holds no material
  });
  return subdivision;
}

Subdivision halved(Subdivision subdivision) {
  for_each_strip(subdivision, [](Strip& strip) {
    const std::size_t count = strip.cuts.size();
    std::vector<double> kept;
    for (std::size_t k = 0; k < count; ++k) {
      // Bound strips stay the same from either end.
      const std::size_t from_end = strip.bond != 0 ? std::min(k, count - 1 - k) : k;
      if (from_end % 2 == 1) kept.push_back(strip.cuts[k]);
    }
    strip.cuts = std::move(kept);
  });
  return subdivision;
}

Subdivision bisected(Subdivision subdivision, const std::vector<char>& columns,
                     const std::vector<char>& rows) {
  std::vector<char> marked = columns;
  marked.insert(marked.end(), rows.begin(), rows.end());
  std::map<std::uint32_t, std::vector<char>> of_bond;
  std::size_t first = 0;  // cell with which the strip begins
  for_each_strip(subdivision, [&](Strip& strip) {
    const std::size_t cells = strip.cells();
    if (strip.bond != 0) {
      std::vector<char>& shared = of_bond[strip.bond];
      shared.resize(cells);
      for (std::size_t k = 0; k < cells; ++k) {
        if (marked[first + k] != 0) shared[k] = shared[cells - 1 - k] = 1;
      }
    }
    first += cells;
  });
  first = 0;
  for_each_strip(subdivision, [&](Strip& strip) {
    const std::size_t cells = strip.cells();
    bisect(strip, [&](std::size_t k) {
      return (strip.bond != 0 ? of_bond[strip.bond][k] : marked[first + k]) != 0;
    });
    first += cells;
  });
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
  refuse_unequal_cuts(section, subdivision);
  Mesh mesh{section, {}, {}, {}, {}, {}};
  cut(section.x, subdivision.columns, mesh.x, mesh.section_column);
  cut(section.y, subdivision.rows, mesh.y, mesh.section_row);
  if (has_slopes(section)) mesh.cells = divided_cells(mesh, subdivision);
  part_fans(subdivision, mesh);
  return mesh;
}

}  // namespace quoin::geometry
