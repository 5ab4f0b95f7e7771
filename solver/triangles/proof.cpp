// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/proof.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <utility>

#include "solver/errors.hpp"
#include "solver/triangles/grading.hpp"

namespace quoin::solver {
namespace {

using geometry::Border;
using geometry::NodedTriangles;
using geometry::Point;

/// The difference between the two fluxes of one state.
Flux difference(const TwoFields& fields) {
  Flux d = fields.above;
  for (std::size_t n = 0; n < d.size(); ++n) d[n] -= fields.below[n];
  return d;
}

void add(std::vector<double>& sum, const std::vector<double>& part, double factor) {
  for (std::size_t n = 0; n < sum.size(); ++n) sum[n] += factor * part[n];
}

/// Energies of all pairs of airs by one scheme. Shape: airs by airs, symmetric
using Energies = std::vector<std::vector<double>>;

double of_both(const Energies& energy, std::size_t a, std::size_t b) {
  return energy[a][a] + 2 * energy[a][b] + energy[b][b];
}

/// One mesh with all that is solved on it.
class Level {
 public:
  Level(const Claim& claim, const geometry::Triangles& triangles)
      : claim_(claim), nodes_(geometry::noded(triangles)), conduction_(nodes_, claim.physics) {
    find_airs();
    for (const SpaceId air : airs_) {
      Surroundings surroundings(nodes_.borders.size(), 0.0);
      for (std::size_t b = 0; b < surroundings.size(); ++b) {
        if (is_at(b, air)) surroundings[b] = 1.0;
      }
      fields_.push_back(conduction_.solve(surroundings));
      gaps_.push_back(difference(fields_.back()));
    }
    blame_.assign(nodes_.elements.size(), 0.0);
    check_identity();
  }

  void prove_couplings() {
    const std::size_t n = airs_.size();
    Energies above(n, std::vector<double>(n)), below = above;
    for (std::size_t a = 0; a < n; ++a) {
      for (std::size_t b = a; b < n; ++b) {
        above[a][b] = above[b][a] = conduction_.product(fields_[a].above, fields_[b].above);
        below[a][b] = below[b][a] = conduction_.product(fields_[a].below, fields_[b].below);
      }
    }
    double largest = 0.0;
    for (std::size_t a = 0; a < n; ++a) {
      for (std::size_t b = a + 1; b < n; ++b) {
        Coupling coupling{airs_[a], airs_[b], 0.0, 0.0, 0.0};
        coupling.low = (below[a][a] + below[b][b] - of_both(above, a, b)) / 2;
        coupling.high = (above[a][a] + above[b][b] - of_both(below, a, b)) / 2;
        if (n == 2) {
          coupling.low = below[a][a];
          coupling.high = above[a][a];
        }
        coupling.low = std::max(coupling.low, 0.0);
        coupling.value = (coupling.low + coupling.high) / 2;
        const auto& touching = conduction_.touching();
        if (std::find(touching.begin(), touching.end(), std::pair{airs_[a], airs_[b]}) !=
            touching.end()) {
          coupling.high = std::numeric_limits<double>::infinity();
          coupling.value = coupling.low;
        } else {
          largest = std::max(largest, coupling.value);
        }
        couplings_.push_back(coupling);
      }
    }
    if (!claim_.coupling_band || largest == 0.0) return;
    const double wanted = *claim_.coupling_band * largest;
    for (const Coupling& coupling : couplings_) {
      if (std::isfinite(coupling.high) && (coupling.high - coupling.low) / 2 > wanted) {
        reached_ = false;
      }
    }
    for (std::size_t a = 0; a < n; ++a) {
      if (n == 2 && a == 1) break;  // the flux of the other air is the same
      if (touches_any(airs_[a])) continue;
      // Half the gap between two airs; of more no pair is wider than 3/4 of the sum of theirs.
      add(blame_, conduction_.product_by_element(gaps_[a], gaps_[a]), (n == 2 ? 0.5 : 0.75) / wanted);
    }
  }

  /// Proves the mean over the windows of the level before where borders end at their ends; finds
  /// the coldest ones for the next.
  void prove_thermometers(const std::vector<Thermometer>& known) {
    const std::vector<double> warmth = combined(&TwoFields::warmth);
    const Flux gap = combined_gap();
    const double eta = std::sqrt(conduction_.product(gap, gap));
    for (std::size_t r = 0; r < claim_.thermometer_band.size(); ++r) {
      const SpaceId air = claim_.rooms[r];
      const double band = claim_.thermometer_band[r];
      const std::vector<Run> runs = runs_along(nodes_, claim_.physics, air, warmth);
      const std::optional<Window> coldest = coldest_window(nodes_, runs, warmth);
      if (!coldest) continue;
      Thermometer result{air, *coldest, coldest->mean, -infinite, infinite};
      const auto before = std::find_if(known.begin(), known.end(),
                                       [&](const Thermometer& one) { return one.air == air; });
      std::vector<std::uint32_t> borders;
      if (before != known.end()) borders = borders_of(nodes_, runs, before->window);
      if (borders.empty()) {
        reached_ = false;
        thermometers_.push_back(result);
        continue;
      }
      prove(borders, warmth, gap, eta, band, result);
      if (coldest->mean < result.window.mean - 0.25 * band) {
        result.window = *coldest;  // another one is colder: that is the one to prove
        reached_ = false;
      } else {
        const double mean = result.window.mean;
        result.window = before->window;
        result.window.mean = mean;
      }
      thermometers_.push_back(result);
    }
  }

  [[nodiscard]] bool reached() const { return reached_; }
  [[nodiscard]] const std::vector<double>& blame() const { return blame_; }
  [[nodiscard]] const NodedTriangles& nodes() const { return nodes_; }
  [[nodiscard]] const std::vector<Thermometer>& thermometers() const { return thermometers_; }

  /// What was found here as the answer. Ends the level.
  Proof proof() && {
    Proof proof;
    proof.unknowns = conduction_.unknowns();
    proof.touching = conduction_.touching();
    proof.airs = std::move(airs_);
    proof.fields = std::move(fields_);
    proof.couplings = std::move(couplings_);
    proof.thermometers = std::move(thermometers_);
    proof.identity = identity_;
    proof.reached = reached_;
    proof.nodes = std::move(nodes_);
    return proof;
  }

 private:
  static constexpr double infinite = std::numeric_limits<double>::infinity();

  [[nodiscard]] bool is_at(std::size_t border, SpaceId air) const {
    return nodes_.borders[border].space && claim_.physics.air[*nodes_.borders[border].space] == air;
  }

  [[nodiscard]] bool touches_any(SpaceId air) const {
    const auto& touching = conduction_.touching();
    return std::any_of(touching.begin(), touching.end(),
                       [&](const auto& pair) { return pair.first == air || pair.second == air; });
  }

  void find_airs() {
    for (const Border& border : nodes_.borders) {
      if (border.space) airs_.push_back(claim_.physics.air[*border.space]);
    }
    std::sort(airs_.begin(), airs_.end());
    airs_.erase(std::unique(airs_.begin(), airs_.end()), airs_.end());
  }

  /// The energy of the difference of both fluxes is the difference of their energies.
  void check_identity() {
    for (std::size_t a = 0; a < airs_.size(); ++a) {
      if (touches_any(airs_[a])) continue;
      const double above = conduction_.product(fields_[a].above, fields_[a].above);
      const double below = conduction_.product(fields_[a].below, fields_[a].below);
      const double gap = conduction_.product(gaps_[a], gaps_[a]);
      identity_ = std::max(identity_, std::abs(gap - (above - below)) / std::max(above, 1e-300));
    }
    // Rounding alone: random sections with contrasts of 1e4 stay below 1e-7.
    if (!(identity_ < 1e-6)) {
      throw SolveError(fmt::format(
          "the two fields on triangles contradict each other: their gap is off by {:.2e}",
          identity_));
    }
  }

  template <class T>
  [[nodiscard]] std::vector<T> combined(std::vector<T> TwoFields::*part) const {
    std::vector<T> sum((fields_.front().*part).size(), T{});
    for (std::size_t a = 0; a < airs_.size(); ++a) {
      add(sum, fields_[a].*part, claim_.temperatures[airs_[a]]);
    }
    return sum;
  }

  [[nodiscard]] Flux combined_gap() const {
    Flux sum(gaps_.front().size(), 0.0);
    for (std::size_t a = 0; a < airs_.size(); ++a) {
      add(sum, gaps_[a], claim_.temperatures[airs_[a]]);
    }
    return sum;
  }

  /// J(u) + half the product of both gaps, and half the product of their sizes to either side.
  void prove(const std::vector<std::uint32_t>& borders, const std::vector<double>& warmth,
             const Flux& gap, double eta, double band, Thermometer& result) {
    double length = 0.0, integral = 0.0;
    for (const std::uint32_t b : borders) {
      const Border& border = nodes_.borders[b];
      length += border.length;
      integral += border.length *
                  (warmth[border.node[0]] + 4 * warmth[border.node[1]] + warmth[border.node[2]]) /
                  6;
    }
    result.window.mean = integral / length;
    Surroundings source(nodes_.borders.size(), 0.0);
    for (const std::uint32_t b : borders) source[b] = conduction_.resistance(b) / length;
    const Flux influence = difference(conduction_.solve(source));
    const double eta_w = std::sqrt(conduction_.product(influence, influence));
    const double lacks = conduction_.product(gap, influence) / 2, half = eta * eta_w / 2;
    result.temperature = integral / length + lacks;
    result.low = result.temperature - half;
    result.high = result.temperature + half;
    if (half > band) reached_ = false;
    if (eta == 0.0 || eta_w == 0.0) return;
    add(blame_, conduction_.product_by_element(gap, gap), eta_w / eta / 4 / band);
    add(blame_, conduction_.product_by_element(influence, influence), eta / eta_w / 4 / band);
  }

  const Claim& claim_;
  NodedTriangles nodes_;
  Conduction conduction_;
  std::vector<SpaceId> airs_;
  std::vector<TwoFields> fields_;
  std::vector<Flux> gaps_;
  std::vector<double> blame_;  ///< in units of the half widths wanted, by element
  std::vector<Coupling> couplings_;
  std::vector<Thermometer> thermometers_;
  double identity_ = 0.0;
  bool reached_ = true;
};

constexpr double first_triangles = 20;  // of the same area

}  // namespace

Proof proof_of(const Claim& claim) {
  geometry::Triangles triangles = geometry::triangles_of(claim.sheet, claim.places);
  geometry::refine(
      triangles, geometry::even_areas(triangles, geometry::solid_area(triangles) / first_triangles),
      claim.node_limit);
  std::vector<Thermometer> known;
  for (int meshes = 1;; ++meshes) {
    Level level(claim, triangles);
    level.prove_couplings();
    if (!claim.thermometer_band.empty()) level.prove_thermometers(known);
    bool can_go_on = triangles.net.points().size() < claim.node_limit;
    if (!level.reached() && can_go_on) {
      const std::size_t before = triangles.net.points().size();
      const geometry::AreaMap map = graded_areas(triangles, level.nodes(), level.blame());
      for (const Thermometer& thermometer : level.thermometers()) {
        geometry::corner_at(triangles, thermometer.window.from);
        geometry::corner_at(triangles, thermometer.window.to);
      }
      geometry::refine(triangles, map, claim.node_limit);
      can_go_on = triangles.net.points().size() > before;
    }
    if (level.reached() || !can_go_on) {
      Proof proof = std::move(level).proof();
      proof.meshes = meshes;
      return proof;
    }
    known = level.thermometers();
  }
}

}  // namespace quoin::solver
