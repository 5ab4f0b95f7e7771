// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/mesh.hpp"

namespace quoin::tools {

/// A field on a finer mesh, for drawing.
struct FineField {
  geometry::Mesh mesh;
  std::vector<double> values;  ///< Shape: nodes
};

/// A field between its nodes: values at the nodes stay, between them run cubics without overshoot
/// along each grid line, within each strip of the section, so that bends at the faces of materials
/// stay bends. Cells become no longer than `longest`, m. A section with sloping edges stays as it
/// is. Source: Hermite cubics with slopes limited to three times the smaller difference, the usual
/// monotone interpolation.
[[nodiscard]] FineField refined(const geometry::Mesh& mesh, const std::vector<double>& field,
                                double longest);

}  // namespace quoin::tools
