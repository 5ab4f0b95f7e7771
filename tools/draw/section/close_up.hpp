// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/case.hpp"
#include "geometry/mesh.hpp"

namespace quoin::tools {

/// On which sides a picture breaks a section off although it goes on.
struct Broken {
  bool left = false;
  bool right = false;
  bool below = false;
  bool above = false;

  [[nodiscard]] bool any() const { return left || right || below || above; }
};

/// What a picture shows of a section.
struct Shown {
  geometry::Section section;
  Broken broken;
};

/// The part of a section that a variant is looked at by: its close-up, or all.
[[nodiscard]] Shown shown_part(const cases::Variant& variant, const geometry::Section& section);

/// Values at the nodes of a mesh, or of a part of it.
struct MeshValues {
  geometry::Mesh mesh;
  std::vector<double> values;
};

/// The part of a mesh and of values at its nodes that lies in what is shown; on new lines they lie
/// straight between their neighbours. `shown`: of the section of the mesh.
[[nodiscard]] MeshValues shown_part(const Shown& shown, const geometry::Mesh& mesh,
                                    const std::vector<double>& values);

}  // namespace quoin::tools
