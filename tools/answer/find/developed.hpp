// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What happens along one inside surface of one variant, for the surface-temperature purpose.
struct DevelopedSurface {
  SpaceId air;
  std::vector<geometry::Point> place;  ///< of each node, m
  std::vector<double> along;           ///< of each node, from the start of the surface, m
  std::vector<double> temperature;     ///< of each node, degC
  std::vector<char> is_fabric;         ///< between nodes; one fewer
};

/// The surfaces of all inside airs of a variant, in a fixed order.
[[nodiscard]] std::vector<DevelopedSurface> developed_surfaces(const SolvedVariant& solved);

/// A piece of a developed surface that has a name, from `from` to `to` along it, m; the same for a
/// point.
struct NamedStretch {
  std::string name;
  double from = 0.0;
  double to = 0.0;
};

/// The named places that lie on a surface, in the order of the recipe.
[[nodiscard]] std::vector<NamedStretch> named_stretches(const cases::Variant& variant,
                                                        const DevelopedSurface& surface);

/// The same surface of several variants, so that they can be compared: all of one air by name.
struct ComparedSurface {
  std::string air;
  std::string origin;  ///< the named point from which all count; empty: each from its own start
  struct Curve {
    std::size_t variant = 0;  ///< its position in the results
    DevelopedSurface surface;
    double origin = 0.0;  ///< where along the surface counting starts, m
  };
  std::vector<Curve> curves;  ///< at least one
};

/// Every inside surface with the variants that have it: those of one air that come in the same
/// order. They count from the first named point that lies on all of them.
[[nodiscard]] std::vector<ComparedSurface> compared_surfaces(const Results& results);

}  // namespace quoin::tools
