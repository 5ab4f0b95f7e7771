// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <span>
#include <vector>

#include "solver/survey/parametrised.hpp"
#include "solver/survey/table.hpp"

namespace quoin::solver {

/// A section solved for some settings, whose fields then stand for those of any setting between:
/// the energy is least among their sums. Each evaluation is a dense system of a few unknowns.
class ReducedField {
 public:
  /// Solves the section for every setting, and keeps what is watched. Throws: SolveError.
  ReducedField(const Parametrised& section, const std::vector<Setting>& training,
               const std::vector<Watched>& watched, const LinearOptions& options);
  ~ReducedField();
  ReducedField(ReducedField&&) noexcept;
  ReducedField& operator=(ReducedField&&) noexcept;

  /// How many sums of fields there are.
  [[nodiscard]] std::size_t size() const;
  /// How many fields were solved in full for them.
  [[nodiscard]] std::size_t solves() const;

  /// What each air counts for in each thing watched. Shape: shares watched by airs; slopes, if
  /// wanted, watched * airs by parameters (regions, then groups), by the logarithm of each.
  void evaluate(const Setting& setting, std::span<double> shares, Table* slopes = nullptr) const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

/// The largest difference between what the reduced and the full field say of anything watched, as a
/// share of the difference of the airs, over some settings. Throws: SolveError.
[[nodiscard]] double reduction_error(const Parametrised& section, const ReducedField& reduced,
                                     const std::vector<Setting>& settings,
                                     const std::vector<Watched>& watched,
                                     const LinearOptions& options);

}  // namespace quoin::solver
