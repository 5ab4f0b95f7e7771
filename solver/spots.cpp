// SPDX-License-Identifier: Apache-2.0
#include "solver/spots.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::solver {
namespace {

using geometry::Surface;

/// Temperature along one developed surface, linear between its nodes.
class Profile {
 public:
  Profile(const Surface& surface, const std::vector<double>& temperature) : along_(surface.along) {
    for (std::size_t k = 0; k < along_.size(); ++k) value_.push_back(temperature[surface.node(k)]);
    integral_.push_back(0.0);
    for (std::size_t k = 1; k < along_.size(); ++k) {
      integral_.push_back(integral_.back() +
                          (along_[k] - along_[k - 1]) * (value_[k] + value_[k - 1]) / 2);
    }
  }

  [[nodiscard]] const std::vector<double>& values() const { return value_; }

  /// Lowest mean over `width` of the surface that includes `at`.
  [[nodiscard]] double lowest_mean(double at, double width) const {
    const double length = along_.back();
    if (length <= width) return integral_.back() / length;
    double lowest = std::numeric_limits<double>::infinity();
    constexpr int tries = 64;
    for (int k = 0; k <= tries; ++k) {
      const double start = std::clamp(at - width * k / tries, 0.0, length - width);
      lowest = std::min(lowest, (integral_at(start + width) - integral_at(start)) / width);
    }
    return lowest;
  }

 private:
  [[nodiscard]] double integral_at(double s) const {
    const auto above = std::upper_bound(along_.begin() + 1, along_.end() - 1, s);
    const auto k = static_cast<std::size_t>(above - along_.begin()) - 1;
    const double t = (s - along_[k]) / (along_[k + 1] - along_[k]);
    const double end = value_[k] + t * (value_[k + 1] - value_[k]);
    return integral_[k] + (s - along_[k]) * (value_[k] + end) / 2;
  }

  std::vector<double> along_;
  std::vector<double> value_;
  std::vector<double> integral_;
};

/// Differences below this are rounding, K: on a plane wall the first node stands for all.
constexpr double level = 1e-9;

/// How far the temperature climbs from a minimum before it falls below it again, walking one way;
/// from an end or where it never falls below: infinite.
double climb(const std::vector<double>& value, std::size_t from, int step) {
  double top = value[from];
  for (auto k = static_cast<std::ptrdiff_t>(from) + step;
       k >= 0 && k < static_cast<std::ptrdiff_t>(value.size()); k += step) {
    const double here = value[static_cast<std::size_t>(k)];
    if (here < value[from] - level) return top - value[from];
    top = std::max(top, here);
  }
  return std::numeric_limits<double>::infinity();
}

bool is_minimum(const std::vector<double>& value, std::size_t k) {
  const bool falls_before = k > 0 && value[k - 1] < value[k] - level;
  const bool falls_after = k + 1 < value.size() && value[k + 1] < value[k] - level;
  const bool level_before = k > 0 && std::abs(value[k - 1] - value[k]) <= level;
  return !falls_before && !falls_after && !level_before;
}

std::size_t face_at(const Surface& surface, std::size_t node,
                    const geometry::Per<geometry::RegionId, char>& is_fabric) {
  const std::size_t before = node > 0 ? node - 1 : 0;
  const std::size_t after = std::min(node, surface.faces.size() - 1);
  return is_fabric[surface.faces[before].region] != 0 ? before : after;
}

}  // namespace

std::vector<LocalMinimum> local_minima(const std::vector<Surface>& surfaces,
                                       const std::vector<double>& temperature,
                                       const geometry::Per<geometry::RegionId, char>& is_fabric,
                                       double prominence) {
  std::vector<LocalMinimum> minima;
  for (std::size_t s = 0; s < surfaces.size(); ++s) {
    const Profile profile(surfaces[s], temperature);
    const auto& value = profile.values();
    for (std::size_t k = 0; k < value.size(); ++k) {
      if (!is_minimum(value, k)) continue;
      if (std::min(climb(value, k, -1), climb(value, k, +1)) < prominence) continue;
      minima.push_back({s, k, face_at(surfaces[s], k, is_fabric),
                        profile.lowest_mean(surfaces[s].along[k], thermometer_width)});
    }
  }
  return minima;
}

}  // namespace quoin::solver
