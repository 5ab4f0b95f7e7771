// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// How one strip (a column or a row of the section) is cut into cells. Cuts are told by a parameter
/// from 0 to 1 along the strip; towards an end where the field has a corner equal steps of the
/// parameter make shorter and shorter cells.
struct Strip {
  std::vector<double> cuts;  ///< inner lines, ascending, each strictly between 0 and 1
  bool finer_at_start = false;
  bool finer_at_end = false;
  /// Strips that a sloping edge crosses from corner to corner are bound together: they have the
  /// same cuts, the same from either end. Strips of one number are bound; 0: free.
  std::uint32_t bond = 0;

  [[nodiscard]] std::size_t cells() const { return cuts.size() + 1; }
};

/// How a whole section is cut.
struct Subdivision {
  std::vector<Strip> columns;
  std::vector<Strip> rows;
};

/// Cells of a strip at distance s from a corner of the field have width proportional to
/// s^(1 - 1 / grading_exponent).
inline constexpr double grading_exponent = 2.0;

/// A subdivision suited to a section: strips that end on a line with a corner of the field grow
/// finer towards it, in step with their neighbours. About `cells_per_metre` cells fall on a strip
/// of one metre, and no strip with material has fewer than two.
[[nodiscard]] Subdivision subdivision_of(const Section& section, double cells_per_metre);

/// The same with every cell of material cut in two; each old line stays a line.
[[nodiscard]] Subdivision doubled(Subdivision subdivision);

/// The same without every second line between those of the section: the first, the third and so on
/// of each strip go. The opposite of doubled.
[[nodiscard]] Subdivision halved(Subdivision subdivision);

/// The same with some cells cut in two, and with them those that bonds ask for. Shape: one flag a
/// column and a row of cells of the mesh.
[[nodiscard]] Subdivision bisected(Subdivision subdivision, const std::vector<char>& columns,
                                   const std::vector<char>& rows);

/// How many nodes a mesh of this subdivision has.
[[nodiscard]] std::size_t nodes(const Subdivision& subdivision);

}  // namespace quoin::geometry
