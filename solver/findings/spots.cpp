// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/spots.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::solver {
namespace {

using geometry::Surface;

/// A piece of a developed surface that is all fabric or all frame and glazing, node by node.
struct Stretch {
  bool is_fabric = true;
  bool begins_surface = true;  ///< false: before it lies the other kind
  bool ends_surface = true;
  std::vector<std::size_t> position;  ///< of each node along the surface
  std::vector<std::size_t> face;      ///< between the nodes; one fewer than nodes
  std::vector<double> along;          ///< m
  std::vector<double> value;          ///< degC
};

/// Where the walk along a surface starts: a closed one at its warmest node, so that its seam is no
/// minimum.
std::size_t start_of(const Surface& surface, const std::vector<double>& temperature) {
  if (!surface.closed) return 0;
  std::size_t warmest = 0;
  for (std::size_t k = 1; k < surface.faces.size(); ++k) {
    if (temperature[surface.node(k)] > temperature[surface.node(warmest)]) warmest = k;
  }
  return warmest;
}

std::vector<Stretch> stretches(const Surface& surface, const std::vector<double>& temperature,
                               const geometry::Per<geometry::RegionId, char>& is_fabric) {
  std::vector<Stretch> all;
  const std::size_t faces = surface.faces.size();
  const std::size_t start = start_of(surface, temperature);
  double along = surface.along[start];
  for (std::size_t k = 0; k < faces; ++k) {
    const std::size_t f = (start + k) % faces;
    const geometry::Face& face = surface.faces[f];
    const bool fabric = is_fabric[face.region] != 0;
    if (all.empty() || all.back().is_fabric != fabric) {
      if (!all.empty()) all.back().ends_surface = false;
      all.push_back({fabric, all.empty(), true, {f}, {}, {along}, {temperature[face.from]}});
    }
    Stretch& stretch = all.back();
    along += face.length;
    stretch.position.push_back(f + 1 < faces || !surface.closed ? f + 1 : 0);
    stretch.face.push_back(f);
    stretch.along.push_back(along);
    stretch.value.push_back(temperature[face.to]);
  }
  return all;
}

/// Temperature along a stretch, linear between its nodes.
class Profile {
 public:
  explicit Profile(const Stretch& stretch) : along_(stretch.along), value_(stretch.value) {
    integral_.push_back(0.0);
    for (std::size_t k = 1; k < along_.size(); ++k) {
      integral_.push_back(integral_.back() +
                          (along_[k] - along_[k - 1]) * (value_[k] + value_[k - 1]) / 2);
    }
  }

  /// Lowest mean over `width` of the surface that includes `at`.
  [[nodiscard]] double lowest_mean(double at, double width) const {
    const double first = along_.front();
    const double length = along_.back() - first;
    if (length <= width) return integral_.back() / length;
    double lowest = std::numeric_limits<double>::infinity();
    constexpr int tries = 64;
    for (int k = 0; k <= tries; ++k) {
      const double start = std::clamp(at - width * k / tries, first, first + length - width);
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

/// How far the lowest point of a parabola through a minimum and both neighbours lies below it; none
/// where the surface or what it is of changes there, as the minimum then lies where it does.
double dip_beside(const Surface& surface, const Stretch& stretch, std::size_t k) {
  if (k == 0 || k + 1 == stretch.value.size()) return 0.0;
  const geometry::Face& before = surface.faces[stretch.face[k - 1]];
  const geometry::Face& after = surface.faces[stretch.face[k]];
  if (before.region != after.region || before.space != after.space || before.facing != after.facing)
    return 0.0;
  const double a = stretch.along[k] - stretch.along[k - 1],
               b = stretch.along[k + 1] - stretch.along[k];
  const double down = (stretch.value[k - 1] - stretch.value[k]) / a,
               up = (stretch.value[k + 1] - stretch.value[k]) / b;
  const double bend = (down + up) / (a + b), slope = (up * a - down * b) / (a + b);
  return bend > 0.0 ? slope * slope / (4 * bend) : 0.0;
}

double lowest(const Stretch& stretch) {
  return *std::min_element(stretch.value.begin(), stretch.value.end());
}

/// Whether a minimum at an end of a stretch counts: where a frame begins, the edge is the wall's.
bool counts(const Stretch& stretch, std::size_t k) {
  if (stretch.is_fabric) return true;
  return (k > 0 || stretch.begins_surface) &&
         (k + 1 < stretch.value.size() || stretch.ends_surface);
}

}  // namespace

std::vector<LocalMinimum> local_minima(const std::vector<Surface>& surfaces,
                                       const std::vector<double>& temperature,
                                       const geometry::Per<geometry::RegionId, char>& is_fabric,
                                       double prominence) {
  std::vector<LocalMinimum> minima;
  for (std::size_t s = 0; s < surfaces.size(); ++s) {
    const std::size_t others = minima.size();
    const std::vector<Stretch> all = stretches(surfaces[s], temperature, is_fabric);
    const auto add = [&](const Stretch& stretch, std::size_t k) {
      minima.push_back({s, stretch.position[k], stretch.face[k > 0 ? k - 1 : 0],
                        dip_beside(surfaces[s], stretch, k),
                        Profile(stretch).lowest_mean(stretch.along[k], thermometer_width)});
    };
    for (const Stretch& stretch : all) {
      const auto& value = stretch.value;
      for (std::size_t k = 0; k < value.size(); ++k) {
        if (!is_minimum(value, k) || !counts(stretch, k)) continue;
        if (std::min(climb(value, k, -1), climb(value, k, +1)) < prominence) continue;
        add(stretch, k);
      }
    }
    if (minima.size() > others) continue;
    // It falls too gently to have a minimum between neighbours: the lowest point then.
    const Stretch* coldest = &all.front();
    for (const Stretch& stretch : all) {
      if (lowest(stretch) < lowest(*coldest)) coldest = &stretch;
    }
    const auto at = std::min_element(coldest->value.begin(), coldest->value.end());
    add(*coldest, static_cast<std::size_t>(at - coldest->value.begin()));
  }
  return minima;
}

}  // namespace quoin::solver
