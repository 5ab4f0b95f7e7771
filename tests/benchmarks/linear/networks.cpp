// SPDX-License-Identifier: Apache-2.0
#include "tests/benchmarks/linear/networks.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace quoin::benchmarks {

namespace {

/// A rectangle of one conductivity, W/(m K); 0 is air. Lengths in m.
struct Block {
  double x0, y0, x1, y1;
  double conductivity;
};

/// A face of the section that meets the air of a space.
struct Face {
  double x0, y0, x1, y1;  // either x0 == x1 or y0 == y1
  double resistance;      // m2 K/W
  double temperature;
};

struct Section {
  std::vector<double> x;  // lines that must be there
  std::vector<double> y;
  std::vector<Block> blocks;  // later ones cover earlier ones
  std::vector<Face> faces;
};

/// Splits every stretch into cells, small ones at its ends, `aspect` times larger ones in its
/// middle.
std::vector<double> lines(const std::vector<double>& fixed, double cells, double aspect) {
  std::vector<double> result{fixed.front()};
  const double length = fixed.back() - fixed.front();
  // Every stretch gets a share by its length, but with grading also by the number of stretches.
  const double even = aspect > 1.0 ? 0.5 : 0.0;
  for (std::size_t k = 0; k + 1 < fixed.size(); ++k) {
    const double span = fixed[k + 1] - fixed[k];
    const double part = (1.0 - even) * span / length + even / static_cast<double>(fixed.size() - 1);
    const auto half = static_cast<std::size_t>(std::max(1.0, std::round(0.5 * cells * part)));
    std::vector<double> widths(2 * half);
    double total = 0.0;
    const double growth = half > 1 ? std::pow(aspect, 1.0 / static_cast<double>(half - 1)) : 1.0;
    for (std::size_t c = 0; c < half; ++c) {
      widths[c] = widths[2 * half - 1 - c] = std::pow(growth, static_cast<double>(c));
      total += 2.0 * widths[c];
    }
    double at = fixed[k];
    for (std::size_t c = 0; c + 1 < 2 * half; ++c) {
      at += widths[c] / total * span;
      result.push_back(at);
    }
    result.push_back(fixed[k + 1]);
  }
  return result;
}

Sample sample(std::string name, const Section& section, std::size_t nodes, const Grading& grading) {
  const double cells = std::sqrt(static_cast<double>(nodes)) - 1.0;
  const std::vector<double> x = lines(section.x, cells, grading.aspect);
  const std::vector<double> y = lines(section.y, cells, grading.aspect);
  Sample result;
  result.name = std::move(name);
  solver::FivePointOperator& network = result.network;
  network.nx = x.size();
  network.ny = y.size();
  network.east.assign(network.size(), 0.0);
  network.north.assign(network.size(), 0.0);
  network.ground.assign(network.size(), 0.0);
  result.rhs.assign(network.size(), 0.0);
  for (std::size_t j = 0; j + 1 < y.size(); ++j) {
    const double middle_y = 0.5 * (y[j] + y[j + 1]);
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
      const double middle_x = 0.5 * (x[i] + x[i + 1]);
      double conductivity = 0.0;
      for (const Block& block : section.blocks) {
        if (block.x0 < middle_x && middle_x < block.x1 && block.y0 < middle_y &&
            middle_y < block.y1) {
          conductivity = block.conductivity;
        }
      }
      const double dx = x[i + 1] - x[i];
      const double dy = y[j + 1] - y[j];
      const std::size_t node = j * network.nx + i;
      network.east[node] += conductivity * 0.5 * dy / dx;
      network.east[node + network.nx] += conductivity * 0.5 * dy / dx;
      network.north[node] += conductivity * 0.5 * dx / dy;
      network.north[node + 1] += conductivity * 0.5 * dx / dy;
    }
  }
  constexpr double hair = 1e-9;
  const auto lies = [](double a, double from, double to) {
    return from - hair < a && a < to + hair;
  };
  for (const Face& face : section.faces) {
    const auto meet = [&](std::size_t node, double length) {
      network.ground[node] += length / face.resistance;
      result.rhs[node] += length / face.resistance * face.temperature;
    };
    for (std::size_t j = 0; j < y.size(); ++j) {
      for (std::size_t i = 0; i < x.size(); ++i) {
        if (!lies(x[i], face.x0, face.x1) || !lies(y[j], face.y0, face.y1)) continue;
        const std::size_t node = j * network.nx + i;
        const bool upright = face.x0 == face.x1;
        const std::vector<double>& along = upright ? y : x;
        const std::size_t k = upright ? j : i;
        const double end = upright ? face.y1 : face.x1;
        const double start = upright ? face.y0 : face.x0;
        double length = 0.0;
        if (along[k] > start + hair) length += 0.5 * (along[k] - along[k - 1]);
        if (along[k] < end - hair) length += 0.5 * (along[k + 1] - along[k]);
        meet(node, length);
      }
    }
  }
  return result;
}

}  // namespace

Sample corner(std::size_t nodes, const Grading& grading) {
  Section section;
  section.x = {0.0, 0.3, 1.6};
  section.y = {0.0, 0.3, 1.6};
  section.blocks = {{0.0, 0.0, 1.6, 1.6, 0.7}, {0.3, 0.3, 1.6, 1.6, 0.0}};
  section.faces = {{0.0, 0.0, 1.6, 0.0, 0.04, 0.0},
                   {0.0, 0.0, 0.0, 1.6, 0.04, 0.0},
                   {0.3, 0.3, 1.6, 0.3, 0.25, 1.0},
                   {0.3, 0.3, 0.3, 1.6, 0.25, 1.0}};
  return sample("corner", section, nodes, grading);
}

Sample reveal(std::size_t nodes, const Grading& grading) {
  // The wall lies left, the frame with its pane right of the opening at x = 0.8; outside is below.
  Section section;
  section.x = {0.0, 0.78, 0.8, 0.87, 1.1};
  section.y = {0.0, 0.1, 0.103, 0.17, 0.3, 0.32};
  section.blocks = {{0.0, 0.0, 0.8, 0.3, 0.7},      {0.0, 0.3, 0.8, 0.32, 0.04},
                    {0.78, 0.17, 0.8, 0.3, 0.04},   {0.8, 0.1, 0.87, 0.17, 0.13},
                    {0.87, 0.103, 1.1, 0.17, 0.04}, {0.78, 0.1, 1.1, 0.103, 160.0}};
  section.faces = {{0.0, 0.0, 0.8, 0.0, 0.04, 0.0},   {0.8, 0.0, 0.8, 0.1, 0.04, 0.0},
                   {0.8, 0.1, 1.1, 0.1, 0.04, 0.0},   {0.0, 0.32, 0.8, 0.32, 0.25, 1.0},
                   {0.8, 0.17, 0.8, 0.32, 0.25, 1.0}, {0.8, 0.17, 1.1, 0.17, 0.13, 1.0}};
  return sample("reveal", section, nodes, grading);
}

Sample case_2(std::size_t nodes, const Grading& grading) {
  // Source: EN ISO 10211:2007 annex A, case 2. y runs from the inner face outwards.
  Section section;
  section.x = {0.0, 0.0015, 0.015, 0.5};
  section.y = {0.0, 0.0015, 0.035, 0.0365, 0.0415, 0.0475};
  section.blocks = {{0.0, 0.0, 0.5, 0.0475, 0.029},     {0.0, 0.0415, 0.5, 0.0475, 1.15},
                    {0.0, 0.0365, 0.015, 0.0415, 0.12}, {0.0, 0.035, 0.015, 0.0365, 230.0},
                    {0.0, 0.0, 0.0015, 0.0365, 230.0},  {0.0, 0.0, 0.5, 0.0015, 230.0}};
  section.faces = {{0.0, 0.0475, 0.5, 0.0475, 0.06, 0.0}, {0.0, 0.0, 0.5, 0.0, 0.11, 1.0}};
  return sample("case 2", section, nodes, grading);
}

}  // namespace quoin::benchmarks
