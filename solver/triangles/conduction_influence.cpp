// SPDX-License-Identifier: Apache-2.0
#include <array>
#include <cstddef>

#include "solver/triangles/conduction.hpp"
#include "solver/triangles/integration.hpp"
#include "solver/triangles/sides.hpp"

namespace quoin::solver {
namespace {

using geometry::Border;
using geometry::Point;

constexpr std::uint32_t none = geometry::Triangle::none;

}  // namespace

Flux Conduction::influence_gap(std::uint32_t element) const {
  Flux gap = flux_above(warmth_from(element), Surroundings(nodes_.borders.size(), 0.0));
  const Flux out = flux_out_of(element);
  const Flux rest = flux_below(stream_from(stream_load(out)));
  for (std::size_t n = 0; n < gap.size(); ++n) gap[n] -= out[n] + rest[n];
  return gap;
}

/// The temperatures with a source of 1 W/m in an element: a third of it falls to the middle of each
/// side, nothing to the corners.
std::vector<double> Conduction::warmth_from(std::uint32_t element) const {
  std::vector<double> warmth(nodes_.nodes(), 0.0), rhs(warmth_.unknowns(), 0.0);
  for (std::size_t k = 3; k < 6; ++k) {
    const std::uint32_t unknown = warmth_unknown_[nodes_.elements[element].node[k]];
    if (unknown != none) rhs[unknown] += 1.0 / 3;
  }
  const std::vector<double> solution = warmth_.solve(rhs);
  for (std::size_t n = 0; n < nodes_.nodes(); ++n) {
    if (warmth_unknown_[n] != none) warmth[n] = solution[warmth_unknown_[n]];
  }
  return warmth;
}

/// Some flux that balances a source of 1 W/m spread over an element: there it spreads from one
/// corner and leaves by the side opposite, and goes on from element to element to a space.
Flux Conduction::flux_out_of(std::uint32_t element) const {
  const WayOut way = way_out_of(nodes_, element);
  std::vector<std::array<double, 6>> stream(nodes_.elements.size());
  for (const Chain::Link& link : way.links) stream[link.element] = link.stream;
  Flux flux = flux_below(stream);
  const auto& node = nodes_.elements[element].node;
  const Point apex = nodes_.places[node[at(way.side)]];
  for (std::size_t k = 0; k < 3; ++k) {
    const Point middle = nodes_.places[node[k + 3]];
    const double twice = 2 * shapes_[element].area;
    flux[6 * element + 2 * k] = (middle.x - apex.x) / twice;
    flux[6 * element + 2 * k + 1] = (middle.y - apex.y) / twice;
  }
  const std::size_t at_border = 6 * nodes_.elements.size() + 3 * std::size_t{way.border};
  for (std::size_t k = 0; k < 3; ++k) flux[at_border + k] = 1 / nodes_.borders[way.border].length;
  return flux;
}

/// What makes the stream function add to a flux whatever lowers its energy most.
std::vector<double> Conduction::stream_load(const Flux& flux) const {
  std::vector<std::array<double, 6>> pull(nodes_.elements.size());
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    for (std::size_t i = 0; i < 6; ++i) {
      std::array<double, 6> one{};
      one[i] = 1.0;
      for (int k = 0; k < 3; ++k) {
        const std::size_t n = 6 * e + 2 * at(k);
        if (flux[n] == 0.0 && flux[n + 1] == 0.0) continue;
        const Point slope = gradient_at(shapes_[e].gradient, one, k);
        pull[e][i] -= weight_[n] * (flux[n] * slope.y - flux[n + 1] * slope.x);
      }
    }
  }
  for (std::size_t b = 0; b < nodes_.borders.size(); ++b) {
    const Border& border = nodes_.borders[b];
    const auto local = on_side(border.side);
    for (std::size_t k = 0; k < 3; ++k) {
      const std::size_t n = 6 * nodes_.elements.size() + 3 * b + k;
      const std::array<double, 3> slopes = slopes_at(gauss_place[k]);
      for (std::size_t i = 0; i < 3; ++i) {
        pull[border.element][local[i]] -= weight_[n] * flux[n] * slopes[i] / border.length;
      }
    }
  }
  std::vector<double> rhs(stream_.unknowns(), 0.0);
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    for (std::size_t i = 0; i < 6; ++i) {
      const std::uint32_t unknown = stream_unknown_[nodes_.elements[e].node[i]];
      if (unknown != none) rhs[unknown] += pull[e][i];
      if (links_.empty()) continue;
      for (const auto& [own, link] : links_[e]) rhs[own] += pull[e][i] * link->stream[i];
    }
  }
  return rhs;
}

}  // namespace quoin::solver
