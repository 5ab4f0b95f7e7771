// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "solver/findings/findings.hpp"
#include "solver/triangles/level.hpp"
#include "solver/triangles/window.hpp"

namespace quoin::solver {

/// The couplings of all pairs of airs between proved bounds: the temperature from above, the stream
/// function from below; of more than two airs by 2 L_ab = L_a + L_b - L_(a and b). Airs that touch
/// without resistance have an infinite coupling: low alone is meaningful. `band`: wanted half width
/// by the largest coupling.
[[nodiscard]] std::vector<Coupling> proved_couplings(const TriangleLevel& level,
                                                     std::optional<double> band, Lack& lack);

/// What a thermometer would read on the coldest part of the surfaces of an air, proved.
struct Thermometer {
  SpaceId air;
  Window window;             ///< found, not proved to be the coldest
  Window next;               ///< what the next level is to prove: a colder one where there is
  double temperature = 0.0;  ///< middle of low and high, degC
  double low = 0.0;  ///< the mean over the window lies between low and high; infinite: no proof yet
  double high = 0.0;
};

/// Proves the mean over the window known from the level before; where there is none, or another is
/// colder, that is what the next level is to prove. `band`: wanted half width, K. None where the
/// air has no surface, or where heat flows without end. J(u) + half the product of both gaps, and
/// half the product of their sizes to either side; Source: Prager and Synge's identity between the
/// temperature and the influence of a source spread over the window.
[[nodiscard]] std::optional<Thermometer> proved_thermometer(const TriangleLevel& level,
                                                            const Physics& physics,
                                                            const SpaceTemperatures& temperatures,
                                                            SpaceId air, const Thermometer* known,
                                                            double band, Lack& lack);

/// The next, finer triangles: where the blame is, and with corners at the ends of the windows,
/// which are put there exactly. Whether there is anything new to solve.
[[nodiscard]] bool refine_for(geometry::Triangles& triangles, const TriangleLevel& level,
                              const Lack& lack, std::vector<Thermometer>& windows,
                              std::size_t node_limit);

/// The triangles that a section is first solved on, small where windows are guessed to be and with
/// corners at their ends, which are put there exactly.
[[nodiscard]] geometry::Triangles first_triangles(const geometry::Sheet& sheet,
                                                  std::vector<Thermometer>& windows);

}  // namespace quoin::solver
