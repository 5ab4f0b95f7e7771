// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

#include "geometry/mesh.hpp"
#include "tools/draw/section/outlines.hpp"

namespace quoin::tools {

/// Where a field on the nodes of a mesh reaches a level, within the material.
struct Isotherm {
  double level = 0.0;
  std::vector<geometry::Outline> lines;   ///< in the coordinates of the section, m
  std::vector<geometry::Outline> warmer;  ///< closed outlines of where the field is at the level
                                          ///< or above it; even-odd
};

/// Finds isotherms on one mesh. Lines and areas share every crossing of a mesh line, so bands fill
/// the material without a gap; crossings are exact where the field is linear along mesh lines.
class IsothermFinder {
 public:
  explicit IsothermFinder(const geometry::Mesh& mesh);

  /// One isotherm for each level. Shape: `field` one value a node; nodes outside the material are
  /// never read.
  [[nodiscard]] std::vector<Isotherm> isotherms(const std::vector<double>& field,
                                                const std::vector<double>& levels) const;

 private:
  const geometry::Mesh& mesh_;
  std::vector<Edge> surface_;  ///< of the material, with the material on the left
};

/// Round levels strictly between two values: 1, 2 or 5 times a power of ten apart, at most `most`.
[[nodiscard]] std::vector<double> round_levels(double low, double high, std::size_t most);

/// The line with only the points needed to stay within `tolerance` of it.
[[nodiscard]] geometry::Outline simplified(const geometry::Outline& line, double tolerance);

}  // namespace quoin::tools
