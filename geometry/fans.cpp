// SPDX-License-Identifier: Apache-2.0
#include "geometry/fans.hpp"

#include <algorithm>

namespace quoin::geometry {
namespace {

/// A cell about a point; nothing beyond the section.
Cell quarter(const Section& section, std::size_t i, std::size_t j, bool east, bool north) {
  if ((!east && i == 0) || (!north && j == 0)) return undivided(std::monostate{});
  const std::size_t column = east ? i : i - 1;
  const std::size_t row = north ? j : j - 1;
  if (column >= section.columns() || row >= section.rows()) return undivided(std::monostate{});
  return section.cell(column, row);
}

}  // namespace

Quarters quarters(const Section& section, std::size_t i, std::size_t j) {
  return {quarter(section, i, j, false, false), quarter(section, i, j, true, false),
          quarter(section, i, j, true, true), quarter(section, i, j, false, true)};
}

Fans::Fans(const Quarters& cells) {
  const auto& [sw, se, ne, nw] = cells;
  const std::array<bool, 8> solid = {
      is_solid(ne.at(CellSide::south)), is_solid(ne.at(CellSide::west)),
      is_solid(nw.at(CellSide::east)),  is_solid(nw.at(CellSide::south)),
      is_solid(sw.at(CellSide::north)), is_solid(sw.at(CellSide::east)),
      is_solid(se.at(CellSide::west)),  is_solid(se.at(CellSide::north))};
  const auto start = std::find(solid.begin(), solid.end(), false) - solid.begin();
  if (start == 8) return;
  bool inside = false;
  for (std::size_t k = 0; k < 8; ++k) {
    const std::size_t at = (static_cast<std::size_t>(start) + k) % 8;
    if (solid[at] && !inside) eighths.push_back(0);
    inside = solid[at];
    if (!inside) continue;
    fan[at] = eighths.size();
    ++eighths.back();
  }
}

}  // namespace quoin::geometry
