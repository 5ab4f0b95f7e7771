// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <vector>

#include "solver/linear/linear.hpp"

namespace quoin::testing {

/// Numbers that are the same everywhere (the standard fixes the engine, not its distributions).
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}
  /// Uniform in [0, 1).
  double share() { return static_cast<double>(engine_() >> 11U) * 0x1p-53; }
  /// Uniform in its logarithm, from 1 to `largest`.
  double factor(double largest) { return std::pow(largest, share()); }
  /// 0 ... n - 1.
  std::size_t pick(std::size_t n) { return static_cast<std::size_t>(engine_() % n); }

 private:
  std::mt19937_64 engine_;
};

struct RandomNetwork {
  std::size_t nx = 40;
  std::size_t ny = 30;
  double contrast = 1.0;  ///< largest over smallest conductivity
  double aspect = 1.0;    ///< largest over smallest width of a cell
  int voids = 0;          ///< rectangles of air, whose edges lead to ground
};

/// Painted rectangles of random conductivity on a grid of random widths, ground along the edges.
inline solver::FivePointOperator random_network(const RandomNetwork& wanted, std::uint64_t seed) {
  Chance chance(seed);
  const std::size_t nx = wanted.nx;
  const std::size_t ny = wanted.ny;
  solver::FivePointOperator network;
  network.nx = nx;
  network.ny = ny;
  network.east.assign(nx * ny, 0.0);
  network.north.assign(nx * ny, 0.0);
  network.ground.assign(nx * ny, 0.0);
  std::vector<double> dx(nx + 1, 0.0);  // width of the cell before each line; 0 outside
  std::vector<double> dy(ny + 1, 0.0);
  for (std::size_t i = 1; i < nx; ++i) dx[i] = chance.factor(wanted.aspect);
  for (std::size_t j = 1; j < ny; ++j) dy[j] = chance.factor(wanted.aspect);
  std::vector<double> cells((nx + 1) * (ny + 1), 1.0);
  for (int k = 0; k < 12 + wanted.voids; ++k) {
    const double value = k < 12 ? chance.factor(wanted.contrast) : 0.0;
    const std::size_t i0 = chance.pick(nx);
    const std::size_t j0 = chance.pick(ny);
    const std::size_t i1 = std::min(nx, i0 + 1 + chance.pick(nx / 3 + 1));
    const std::size_t j1 = std::min(ny, j0 + 1 + chance.pick(ny / 3 + 1));
    for (std::size_t j = j0; j < j1; ++j) {
      for (std::size_t i = i0; i < i1; ++i) cells[j * (nx + 1) + i] = value;
    }
  }
  // Cell (i, j) lies before line i and line j. A quarter of it belongs to each of its nodes.
  const auto conductivity = [&](std::size_t i, std::size_t j) {
    return dx[i] > 0.0 && dy[j] > 0.0 ? cells[j * (nx + 1) + i] : 0.0;
  };
  for (std::size_t j = 0; j < ny; ++j) {
    for (std::size_t i = 0; i < nx; ++i) {
      const std::size_t node = j * nx + i;
      if (i + 1 < nx) {
        network.east[node] =
            0.5 * (conductivity(i + 1, j) * dy[j] + conductivity(i + 1, j + 1) * dy[j + 1]) /
            dx[i + 1];
      }
      if (j + 1 < ny) {
        network.north[node] =
            0.5 * (conductivity(i, j + 1) * dx[i] + conductivity(i + 1, j + 1) * dx[i + 1]) /
            dy[j + 1];
      }
      int solid = 0;
      for (const std::size_t a : {i, i + 1}) {
        for (const std::size_t b : {j, j + 1}) solid += conductivity(a, b) > 0.0 ? 1 : 0;
      }
      if (0 < solid && solid < 4) {
        network.ground[node] = 0.1 * (dx[i] + dx[i + 1] + dy[j] + dy[j + 1]);
      }
    }
  }
  return network;
}

/// Heat put in at a tenth of the nodes.
inline std::vector<double> random_sources(const solver::FivePointOperator& network,
                                          std::uint64_t seed) {
  Chance chance(seed);
  std::vector<double> rhs(network.size(), 0.0);
  for (double& value : rhs) {
    if (chance.pick(10) == 0) value = chance.share();
  }
  return rhs;
}

/// A homogeneous square of unit conductances, leading to ground along its west edge.
inline solver::FivePointOperator plain_network(std::size_t nx, std::size_t ny) {
  solver::FivePointOperator network;
  network.nx = nx;
  network.ny = ny;
  network.east.assign(nx * ny, 1.0);
  network.north.assign(nx * ny, 1.0);
  network.ground.assign(nx * ny, 0.0);
  for (std::size_t j = 0; j < ny; ++j) {
    network.east[j * nx + nx - 1] = 0.0;
    network.ground[j * nx] = 1.0;
  }
  for (std::size_t i = 0; i < nx; ++i) network.north[(ny - 1) * nx + i] = 0.0;
  return network;
}

}  // namespace quoin::testing
