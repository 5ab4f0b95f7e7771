// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <memory>
#include <vector>

#include "tools/answer/survey/explain.hpp"
#include "tools/answer/survey/hypotheses.hpp"
#include "tools/answer/survey/surface_field.hpp"

namespace quoin::tools {

/// The lowest fRsi of each room of the sections as found, with the resistances for surface
/// temperature and the conductivities that readings tell.
class DesignFactors {
 public:
  /// Throws: SolveError.
  DesignFactors(const SurveyModel& model, const solver::LinearOptions& options);

  [[nodiscard]] std::size_t solves() const;

  /// Of each room, key `fRsi_design_corner`.
  [[nodiscard]] std::vector<Learned> learned(const SurveyModel& model,
                                             const InferredExplanation& explanation);

 private:
  [[nodiscard]] Spread known_before(const SurveyModel& model, const Hypothesis& hypothesis,
                                    std::size_t section, std::size_t room);

  std::vector<std::unique_ptr<SurfaceField>> fields_;  ///< of each section
  std::map<std::vector<double>, Spread> before_;       ///< those worked out, by what they rest on
};

/// The fabric that a draw tells of, for a field of its section.
[[nodiscard]] FabricState fabric_of(const SurveyModel& model, const SurfaceField& field,
                                    const Hypothesis& hypothesis, std::span<const double> unknowns);

}  // namespace quoin::tools
