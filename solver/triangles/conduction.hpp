// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <utility>
#include <vector>

#include "geometry/triangles/nodes.hpp"
#include "solver/scheme/physics.hpp"
#include "solver/triangles/loops.hpp"
#include "solver/triangles/symmetric.hpp"

namespace quoin::solver {

/// Temperature of the surroundings at each border, those that end on nothing aside, K.
using Surroundings = std::vector<double>;

/// Flux at the points where it is integrated: x and y at the middle of each side of each element,
/// then, outwards, at three points of each border. Shape: 6 elements + 3 borders. W/m2
using Flux = std::vector<double>;

/// The steady state at given surroundings, seen from both sides.
struct TwoFields {
  std::vector<double> warmth;  ///< temperature at the nodes: quadratic, not below in heat flow
  std::vector<std::array<double, 6>> stream;  ///< quadratic stream function, at the nodes of each
                                              ///< element, W/m: balances, not above in heat flow
  Flux above;                                 ///< of the temperature
  Flux below;                                 ///< of the stream function
};

/// The conduction of a section in triangles of the second degree, by both principles on one mesh.
/// Temperature: six nodes a triangle. Stream function: the same nodes; its curl is a flux without
/// sources whose part across sides is continuous, so no hybrid elements are needed. Surface
/// resistances act on the square of the flux through the border, integrated exactly; nothing flows
/// through borders to nothing, so there the stream function is constant. Source: Dirichlet's and
/// Thomson's principles; Prager and Synge (Quarterly of Applied Mathematics 5, 1947).
class Conduction {
 public:
  /// Throws: SolveError.
  Conduction(const geometry::NodedTriangles& nodes, const Physics& physics);

  [[nodiscard]] TwoFields solve(const Surroundings& surroundings) const;

  /// Flux above less flux below of the influence of an element: a source of 1 W/m spread evenly
  /// over it, all surroundings at 0. From below the source leaves by any way out, and the stream
  /// function makes the best of it.
  [[nodiscard]] Flux influence_gap(std::uint32_t element) const;

  /// The scalar product of two fluxes: the integral of p q / lambda, and of R p q on surfaces. Of
  /// the flux of an air at 1 with itself it is the coupling of that air with all others.
  [[nodiscard]] double product(const Flux& p, const Flux& q) const;

  /// The same, element by element; that of a border belongs to its element.
  [[nodiscard]] std::vector<double> product_by_element(const Flux& p, const Flux& q) const;

  [[nodiscard]] double conductivity(std::size_t element) const { return conductivity_[element]; }
  [[nodiscard]] double resistance(std::size_t border) const { return resistance_[border]; }
  [[nodiscard]] const std::vector<Chain>& chains() const { return chains_; }
  [[nodiscard]] std::size_t unknowns() const { return warmth_.unknowns(); }

  /// Pairs of airs that meet in a node without any resistance between: infinite heat flows there.
  [[nodiscard]] const std::vector<std::pair<SpaceId, SpaceId>>& touching() const {
    return touching_;
  }

 private:
  using Local = std::array<std::array<double, 6>, 6>;
  struct FixedLink {
    std::uint32_t unknown = 0;
    std::uint32_t node = 0;
    double value = 0.0;
  };
  struct Shape {
    std::array<geometry::Point, 3> gradient;  ///< of the share of each corner, 1/m
    double area = 0.0;
  };

  void note_borders(const Physics& physics);
  void number_warmth();
  void number_stream();
  void assemble_warmth();
  void assemble_stream();
  void weigh();
  [[nodiscard]] Local stiffness(std::size_t element) const;
  [[nodiscard]] std::vector<double> warmth_of(const Surroundings& surroundings) const;
  [[nodiscard]] std::vector<std::array<double, 6>> stream_of(
      const Surroundings& surroundings) const;
  [[nodiscard]] std::vector<std::array<double, 6>> stream_from(
      const std::vector<double>& rhs) const;
  [[nodiscard]] Flux flux_out_of(std::uint32_t element) const;
  [[nodiscard]] std::vector<double> stream_load(const Flux& flux) const;
  [[nodiscard]] std::vector<double> warmth_from(std::uint32_t element) const;
  [[nodiscard]] Flux flux_above(const std::vector<double>& warmth,
                                const Surroundings& surroundings) const;
  [[nodiscard]] Flux flux_below(const std::vector<std::array<double, 6>>& stream) const;

  const geometry::NodedTriangles& nodes_;
  std::vector<double> conductivity_;  ///< of each element
  std::vector<double> resistance_;    ///< of each border; meaningless where there is no space
  std::vector<Shape> shapes_;
  std::vector<double> weight_;                             ///< of each value of a flux in a product
  std::vector<std::vector<std::uint32_t>> fixed_borders_;  ///< without resistance, at each node
  std::vector<std::pair<SpaceId, SpaceId>> touching_;

  std::vector<std::uint32_t> warmth_unknown_;  ///< of each node; none: fixed
  std::vector<FixedLink> fixed_links_;
  SymmetricSystem warmth_;

  std::vector<std::uint32_t> stream_unknown_;  ///< of each node; none: zero
  std::vector<Chain> chains_;                  ///< the last unknowns, one each
  std::vector<std::vector<std::pair<std::uint32_t, const Chain::Link*>>> links_;  ///< by element
  SymmetricSystem stream_;
};

}  // namespace quoin::solver
