// SPDX-License-Identifier: Apache-2.0
#include "solver/conjugate_gradients.hpp"

#include <cmath>
#include <limits>

namespace quoin::solver {

namespace {

constexpr std::size_t W = lane_count;

/// Without a residual smaller than any before over so many iterations, no progress is made.
constexpr int patience = 12;

double sum(const Lanes<double>& values) {
  double result = 0.0;
  for (std::size_t w = 0; w < W; ++w) result += values[w];
  return result;
}

template <typename To, typename From>
void convert(const Lanes<From>& from, Lanes<To>& to) {
  to = __builtin_convertvector(from, Lanes<To>);
}

/// Walks up a panel: the flow out of each node at temperatures v.
struct Outflow {
  Outflow(const Conductances<double>& network, const Panels<double>& v, std::size_t q)
      : east(network.east.panel(q)),
        west(network.east.panel(q - 1)),
        north(network.north.panel(q)),
        ground(network.ground.panel(q)),
        here(v.panel(q)),
        at_east(v.panel(q + 1)),
        at_west(v.panel(q - 1)),
        last(network.layout.panel_size() - W) {}

  /// Differences of neighbours come first: these are exact.
  [[gnu::always_inline]] void write(std::size_t j, Lanes<double>& flow) {
    const Lanes<double> mine = lanes(here + j);
    flow = lanes(ground + j) * mine + lanes(east + j) * (mine - lanes(at_east + j)) +
           lanes(west + j) * (mine - lanes(at_west + j)) + from_below;
    if (j == last) return;
    from_below = lanes(north + j) * (lanes(here + j + W) - mine);
    flow -= from_below;
  }

  const double* east;
  const double* west;
  const double* north;
  const double* ground;
  const double* here;
  const double* at_east;
  const double* at_west;
  std::size_t last;
  Lanes<double> from_below{};
};

}  // namespace

ConjugateGradients::ConjugateGradients(const Conductances<double>& network)
    : x(network.layout),
      residual(network.layout),
      network_(&network),
      direction_(network.layout),
      image_(network.layout),
      sums_(3 * network.layout.panels) {}

double ConjugateGradients::total(const Member& member) const {
  member.meet();
  double result = 0.0;
  for (std::size_t q = 0; q < network_->layout.panels; ++q) result += sums_[q];
  member.meet();
  return result;
}

void ConjugateGradients::clear_inactive(const Member& member) {
  const auto [begin, end] = member.share(network_->layout.panels);
  for (std::size_t q = begin; q < end; ++q) {
    const Outflow at(*network_, x, q);
    double* here = x.panel(q);
    Lanes<double> below{};
    for (std::size_t j = 0; j < network_->layout.panel_size(); j += W) {
      const Lanes<double> diagonal = lanes(at.ground + j) + lanes(at.east + j) +
                                     lanes(at.west + j) + lanes(at.north + j) + below;
      below = lanes(at.north + j);
      lanes(here + j) = diagonal > 0.0 ? lanes(here + j) : Lanes<double>{};
    }
  }
  member.meet();
}

Misfit ConjugateGradients::subtract_image(const Member& member) {
  const std::size_t panels = network_->layout.panels;
  const auto [begin, end] = member.share(panels);
  if (member.leads()) {
    x.write_east_ghost();
    x.write_west_ghost();
  }
  member.meet();
  for (std::size_t q = begin; q < end; ++q) {
    Outflow outflow(*network_, x, q);
    double* r = residual.panel(q);
    const double* here = x.panel(q);
    Lanes<double> given{};
    Lanes<double> left{};
    Lanes<double> rounding{};
    Lanes<double> north_below{};
    for (std::size_t j = 0; j < network_->layout.panel_size(); j += W) {
      const Lanes<double> north = lanes(outflow.north + j);
      const Lanes<double> diagonal = lanes(outflow.ground + j) + lanes(outflow.east + j) +
                                     lanes(outflow.west + j) + north + north_below;
      north_below = north;
      const Lanes<double> rhs = diagonal > 0.0 ? lanes(r + j) : Lanes<double>{};
      Lanes<double> flow;
      outflow.write(j, flow);
      lanes(r + j) = rhs - flow;
      const Lanes<double> weight = diagonal * lanes(here + j);
      given += rhs * rhs;
      left += lanes(r + j) * lanes(r + j);
      rounding += weight * weight;
    }
    sums_[q] = sum(given);
    sums_[q + panels] = sum(left);
    sums_[q + 2 * panels] = sum(rounding);
  }
  member.meet();
  Misfit misfit;
  for (std::size_t q = 0; q < panels; ++q) misfit.given += sums_[q];
  for (std::size_t q = panels; q < 2 * panels; ++q) misfit.residual += sums_[q];
  for (std::size_t q = 2 * panels; q < 3 * panels; ++q) misfit.rounding += sums_[q];
  // Each temperature is off by up to half an epsilon, so are those around it; twice for good
  // measure.
  misfit.rounding *= std::pow(2.0 * std::numeric_limits<double>::epsilon(), 2);
  member.meet();
  return misfit;
}

template <typename T>
Descent ConjugateGradients::improve(Multigrid<T>& preconditioner, double goal, int iteration_limit,
                                    const Member& member) {
  const auto [begin, end] = member.share(network_->layout.panels);
  const std::size_t size = network_->layout.panel_size();
  Descent descent;
  double squared_residual = 0.0;
  double least = std::numeric_limits<double>::infinity();
  int least_at = 0;
  double step = 0.0;  // 0: the residual as it is
  double last_product = 0.0;
  while (true) {
    for (std::size_t q = begin; q < end; ++q) {
      const double* image = image_.panel(q);
      double* r = residual.panel(q);
      T* given = preconditioner.rhs().panel(q);
      Lanes<double> squares{};
      for (std::size_t j = 0; j < size; j += W) {
        const Lanes<double> left = lanes(r + j) - step * lanes(image + j);
        lanes(r + j) = left;
        convert<T, double>(left, lanes(given + j));
        squares += left * left;
      }
      sums_[q] = sum(squares);
    }
    squared_residual = total(member);
    if (squared_residual < least) {
      least = squared_residual;
      least_at = descent.iterations;
    }
    descent.stagnated =
        !std::isfinite(squared_residual) || descent.iterations > least_at + patience;
    const bool ends =
        squared_residual <= goal || descent.iterations == iteration_limit || descent.stagnated;
    double product = 0.0;
    if (!ends) {
      preconditioner.cycle(member);
      for (std::size_t q = begin; q < end; ++q) {
        const double* r = residual.panel(q);
        const T* z = preconditioner.x().panel(q);
        Lanes<double> products{};
        for (std::size_t j = 0; j < size; j += W) {
          Lanes<double> wide;
          convert<double, T>(lanes(z + j), wide);
          products += lanes(r + j) * wide;
        }
        sums_[q] = sum(products);
      }
      product = total(member);
      descent.stagnated = !(product > 0.0);
    }
    // The last step in x waited until here, where the direction is at hand.
    const double turn = descent.iterations == 0 ? 0.0 : product / last_product;
    const bool goes_on = !ends && !descent.stagnated;
    for (std::size_t q = begin; q < end; ++q) {
      const T* z = preconditioner.x().panel(q);
      double* p = direction_.panel(q);
      double* here = x.panel(q);
      for (std::size_t j = 0; j < size; j += W) {
        const Lanes<double> old = lanes(p + j);
        lanes(here + j) += step * old;
        if (!goes_on) continue;
        Lanes<double> wide;
        convert<double, T>(lanes(z + j), wide);
        lanes(p + j) = wide + turn * old;
      }
    }
    member.meet();
    if (!goes_on) return descent;
    if (member.leads()) {
      direction_.write_east_ghost();
      direction_.write_west_ghost();
    }
    member.meet();
    for (std::size_t q = begin; q < end; ++q) {
      Outflow outflow(*network_, direction_, q);
      double* image = image_.panel(q);
      const double* p = direction_.panel(q);
      Lanes<double> products{};
      for (std::size_t j = 0; j < size; j += W) {
        Lanes<double> flow;
        outflow.write(j, flow);
        lanes(image + j) = flow;
        products += lanes(p + j) * flow;
      }
      sums_[q] = sum(products);
    }
    step = product / total(member);
    last_product = product;
    ++descent.iterations;
  }
}

template Descent ConjugateGradients::improve(Multigrid<float>&, double, int, const Member&);
template Descent ConjugateGradients::improve(Multigrid<double>&, double, int, const Member&);

}  // namespace quoin::solver
