// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <vector>

#include "solver/scheme/assembly.hpp"
#include "solver/scheme/basis.hpp"

namespace quoin::solver {

/// The solver of an assembled section with its fixed nodes taken out. Nodes beyond the grid have
/// neighbours in no order, which the direct method alone can follow. Throws: SolveError.
/// Shape: right-hand sides and temperatures hold a value for each unknown of the assembly.
[[nodiscard]] std::unique_ptr<LinearSolver> solver_of(const Assembly& assembly,
                                                      const LinearOptions& options);

/// An assembled section made ready to be solved for any number of temperatures and sources.
class Network {
 public:
  /// Throws: SolveError.
  Network(Assembly assembly, const LinearOptions& options);

  [[nodiscard]] const Assembly& assembly() const { return assembly_; }

  /// One field for each air: that air at 1, all others at 0. Throws: SolveError.
  [[nodiscard]] Basis basis(const Per<SpaceId, SpaceId>& air) const;

  /// Temperature of each unknown for sources, W/m, all airs at 0. As the network is symmetric this
  /// is also how a source at each unknown would move the mean weighted by these. Sources at fixed
  /// nodes and outside the material move nothing. Shape: unknowns. Throws: SolveError.
  [[nodiscard]] std::vector<double> response(std::vector<double> sources) const;

 private:
  Assembly assembly_;
  std::unique_ptr<LinearSolver> solver_;
};

}  // namespace quoin::solver
