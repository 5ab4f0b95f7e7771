// SPDX-License-Identifier: Apache-2.0
#include <array>
#include <cmath>

#include "solver/triangles/conduction.hpp"
#include "solver/triangles/integration.hpp"
#include "solver/triangles/sides.hpp"

namespace quoin::solver {

using geometry::Border;
using geometry::Point;

/// The middles of the sides integrate what is quadratic in an element.
void Conduction::weigh() {
  weight_.reserve(6 * nodes_.elements.size() + 3 * nodes_.borders.size());
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    weight_.insert(weight_.end(), 6, shapes_[e].area / (3 * conductivity_[e]));
  }
  for (std::size_t b = 0; b < nodes_.borders.size(); ++b) {
    const double whole = nodes_.borders[b].space ? resistance_[b] * nodes_.borders[b].length : 0.0;
    for (const double share : gauss_weight) weight_.push_back(whole * share);
  }
}

Flux Conduction::flux_above(const std::vector<double>& warmth,
                            const Surroundings& surroundings) const {
  Flux flux;
  flux.reserve(weight_.size());
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    std::array<double, 6> values{};
    for (std::size_t i = 0; i < 6; ++i) values[i] = warmth[nodes_.elements[e].node[i]];
    for (int k = 0; k < 3; ++k) {
      const Point gradient = gradient_at(shapes_[e].gradient, values, k);
      flux.push_back(-conductivity_[e] * gradient.x);
      flux.push_back(-conductivity_[e] * gradient.y);
    }
  }
  for (std::size_t b = 0; b < nodes_.borders.size(); ++b) {
    const Border& border = nodes_.borders[b];
    for (const double s : gauss_place) {
      const double here = (1 - s) * (1 - 2 * s) * warmth[border.node[0]] +
                          4 * s * (1 - s) * warmth[border.node[1]] +
                          s * (2 * s - 1) * warmth[border.node[2]];
      const bool resists = border.space && resistance_[b] > 0;
      flux.push_back(resists ? (here - surroundings[b]) / resistance_[b] : 0.0);
    }
  }
  return flux;
}

Flux Conduction::flux_below(const std::vector<std::array<double, 6>>& stream) const {
  Flux flux;
  flux.reserve(weight_.size());
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    for (int k = 0; k < 3; ++k) {
      const Point gradient = gradient_at(shapes_[e].gradient, stream[e], k);
      flux.push_back(gradient.y);
      flux.push_back(-gradient.x);
    }
  }
  for (const Border& border : nodes_.borders) {
    const auto local = on_side(border.side);
    const auto& values = stream[border.element];
    for (const double s : gauss_place) {
      const std::array<double, 3> slopes = slopes_at(s);
      flux.push_back((slopes[0] * values[local[0]] + slopes[1] * values[local[1]] +
                      slopes[2] * values[local[2]]) /
                     border.length);
    }
  }
  return flux;
}

double Conduction::product(const Flux& p, const Flux& q) const {
  double sum = 0.0;
  for (std::size_t n = 0; n < weight_.size(); ++n) sum += weight_[n] * p[n] * q[n];
  return sum;
}

std::vector<double> Conduction::product_by_element(const Flux& p, const Flux& q) const {
  std::vector<double> parts(nodes_.elements.size(), 0.0);
  const std::size_t bordering = 6 * nodes_.elements.size();
  for (std::size_t n = 0; n < weight_.size(); ++n) {
    const std::size_t element = n < bordering ? n / 6 : nodes_.borders[(n - bordering) / 3].element;
    parts[element] += weight_[n] * p[n] * q[n];
  }
  return parts;
}

}  // namespace quoin::solver
