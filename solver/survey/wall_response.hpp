// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace quoin::solver {

/// One layer of a plane wall that stores heat, from the inside out.
struct StoringLayer {
  double thickness = 0.0;      ///< m
  double conductivity = 0.0;   ///< W/(m K)
  double heat_capacity = 0.0;  ///< by volume, J/(m3 K)
};

/// A plane wall between two airs that change in time.
struct StoringWall {
  std::vector<StoringLayer> layers;
  double inside_resistance = 0.0;   ///< m2K/W, above 0
  double outside_resistance = 0.0;  ///< m2K/W, above 0
};

enum class WallFace : std::uint8_t { inside, outside };

/// How the temperature of one face of a plane wall follows the air on one of its sides: a sum of
/// decays, from the eigenvectors of the wall cut into slices of at most 6 mm.
class WallResponse {
 public:
  WallResponse(const StoringWall& wall, WallFace face, WallFace air);

  /// The share of that air in the face when nothing changes, 0 to 1.
  [[nodiscard]] double steady() const { return steady_; }

  /// How long the face lags behind the air on average, s.
  [[nodiscard]] double mean_lag() const;

  /// What the temperature of the air each hour counts for the face now, the present hour first:
  /// exact for air that changes along straight lines from hour to hour. Sums to less than `steady`
  /// by what lies further back. Shape: hours + 1.
  [[nodiscard]] std::vector<double> hourly_weights(std::size_t hours) const;

 private:
  [[nodiscard]] double integrated_step(double seconds) const;

  double steady_ = 0.0;
  std::vector<double> share_;  ///< of each decay; they sum to `steady_`
  std::vector<double> rate_;   ///< 1/s
};

}  // namespace quoin::solver
