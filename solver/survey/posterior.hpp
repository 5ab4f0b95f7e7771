// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <functional>
#include <limits>
#include <span>
#include <vector>

#include "solver/survey/table.hpp"

namespace quoin::solver {

/// What is known before and what was read. The unknowns are standard normal beforehand.
struct Inference {
  std::size_t unknowns = 0;   ///< those of the model
  std::vector<double> read;   ///< Shape: readings
  std::vector<double> scale;  ///< of the disagreement of each reading with the model, > 0
  /// What the readings should be; with a table also how each changes with each unknown.
  /// Shape: predicted readings; slopes readings by unknowns, or null.
  std::function<void(std::span<const double> at, std::span<double> predicted, Table* slopes)> model;
  /// Of Student's t for the disagreements; infinite: they are normal.
  double degrees = 4.0;
  /// How uncertain the common factor of all scales is, as sd of its logarithm; above 0 it is one
  /// more unknown, the last. 0: the scales are as given.
  double scale_spread = 0.35;

  [[nodiscard]] std::size_t dimensions() const { return unknowns + (scale_spread > 0.0 ? 1 : 0); }
};

/// Where the unknowns are most probable, and a normal distribution about there.
struct Mode {
  std::vector<double> at;    ///< Shape: dimensions
  Table covariance;          ///< from the information that readings are expected to bring
  double log_density = 0.0;  ///< of prior and readings, at the mode
  int iterations = 0;
};

/// The logarithm of the density of the unknowns beforehand times that of the readings.
[[nodiscard]] double log_density(const Inference& inference, std::span<const double> at);

/// The same, leaving behind what the readings should be. Shape: predicted readings.
[[nodiscard]] double log_density(const Inference& inference, std::span<const double> at,
                                 std::span<double> predicted);

/// The mode by Levenberg and Marquardt's method, each reading weighed by how far it lies off.
/// `start`: shape dimensions.
[[nodiscard]] Mode mode_of(const Inference& inference, std::vector<double> start);

/// Weighted draws of the unknowns after reading.
struct Sample {
  Table draws;                      ///< Shape: draws by dimensions
  std::vector<double> weights;      ///< sum to one
  Table predicted;                  ///< Shape: draws by readings
  std::vector<double> log_density;  ///< of each draw, of prior and readings
  double log_evidence = 0.0;        ///< of the mean density of the readings over the prior
  double evidence_error = 0.0;      ///< sd of log_evidence by sampling
  double effective = 0.0;           ///< how many independent draws it is worth
};

/// Draws of a standard multivariate t, for any number of dimensions up to some.
struct StandardDraws {
  StandardDraws(std::size_t draws, std::size_t dimensions, double degrees);

  double degrees = 5.0;
  std::vector<double> stretch;  ///< of each draw
  Table normals;                ///< Shape: draws by dimensions
};

/// Importance sampling about the mode with the first quarter of the standard draws: enough to tell
/// an explanation that is far from the best. The standard draws have as many dimensions as the
/// inference at least.
[[nodiscard]] Sample sample_about(const Inference& inference, const Mode& mode,
                                  const StandardDraws& standard);

/// The same with as many standard draws, those after the first from a distribution fitted to the
/// first; all weigh as draws of both together. `first`: of `sample_about`. `draws`: more than it
/// has and no more than there are standard ones.
[[nodiscard]] Sample sample_of(const Inference& inference, const Mode& mode,
                               const StandardDraws& standard, const Sample& first,
                               std::size_t draws);

/// Both in one, with all standard draws.
[[nodiscard]] Sample sample_of(const Inference& inference, const Mode& mode,
                               const StandardDraws& standard);

/// The value that weighted values stay below with each probability.
[[nodiscard]] std::vector<double> weighted_quantiles(std::span<const double> values,
                                                     std::span<const double> weights,
                                                     std::span<const double> probabilities);

/// How often readings that follow the model lie off by more than these do, all together: the
/// posterior predictive share of larger misfits.
[[nodiscard]] double agreement(const Inference& inference, const Sample& sample);

}  // namespace quoin::solver
