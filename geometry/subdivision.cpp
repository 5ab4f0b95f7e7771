// SPDX-License-Identifier: Apache-2.0
#include "geometry/subdivision.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>

#include "geometry/field_corners.hpp"

namespace quoin::geometry {
namespace {

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
  const FieldCorners corners = field_corners(section);
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

}  // namespace quoin::geometry
