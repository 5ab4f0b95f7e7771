// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/survey/reading_model.hpp"

/// What is known before anything is read. Factors by their logarithm: median and sd.
namespace quoin::tools::before {

inline constexpr solver::Unknown ratio_as_drawn{0.0, 0.10};  ///< scatter in a house; memory
/// A factor of 1.6: saturated over dry brickwork 1.8 to 2.35, damp less. Source: Materials 15
/// (2022) 4001.
inline constexpr solver::Unknown conducts_better{0.47000362924573563, 0.25};
/// A factor of 0.67: voids, linings, other stone; memory.
inline constexpr solver::Unknown conducts_less{-0.40047756659712525, 0.20};
inline constexpr double masonry_spread = 0.25;  ///< where the catalogue gives none; no source
/// Lowest to highest in the catalogue as 90 of 100; common practice, no source.
inline constexpr double ninety_of_100 = 3.29;
inline constexpr double inside_resistance = 0.15;     ///< m2K/W; ISO 6946 coefficients (memory)
inline constexpr solver::Unknown surface{0.0, 0.25};  ///< 0.10 to 0.23; common practice, no source
/// A factor of 1.25; no field data; memory.
inline constexpr solver::Unknown angle{0.22314355131420976, 0.20};
inline constexpr solver::Unknown covered{0.7884573603642703, 0.35};  ///< a factor of 2.2; memory
inline constexpr double behind_spread = 0.4;        ///< where it is said what covers; memory
inline constexpr double outside_resistance = 0.06;  ///< m2K/W in unknown wind; ISO 6946 (memory)
inline constexpr solver::Unknown outside_surface{0.0, 0.35};
inline constexpr solver::Unknown thermometer_off{0.0, 1.5};  ///< K; common practice, no source
inline constexpr solver::Unknown emissivity{0.0, 0.02};      ///< common practice, no source
inline constexpr solver::Unknown colder_outside{-3.0, 1.5};  ///< K
inline constexpr double pad_difference = 0.08;               ///< of a matched pair across a pad, K
inline constexpr double joints = 0.2;                        ///< K; memory
inline constexpr double placing = 0.010;  ///< width within which a sensor is placed, m
inline constexpr double unsteady = 0.5;   ///< of inside air under changing heating, K

}  // namespace quoin::tools::before
