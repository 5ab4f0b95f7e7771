// SPDX-License-Identifier: Apache-2.0
#include "solver/conjugate_gradients.hpp"

#include <cmath>
#include <limits>

#include "solver/lanes.hpp"

namespace quoin::solver {

namespace {

/// Without a residual smaller than any before over so many iterations, no progress is made.
constexpr int patience = 12;

using Doubles = Lanes<double>;

/// Walks up half a panel: the flow out of each node at temperatures v.
struct Outflow {
  Outflow(const Conductances<double>& network, const Panels<double>& v, std::size_t q)
      : east(network.east.panel(q)),
        west(network.east.panel(q - 1)),
        north(network.north.panel(q)),
        ground(network.ground.panel(q)),
        here(v.panel(q)),
        at_east(v.panel(q + 1)),
        at_west(v.panel(q - 1)),
        last(network.layout.panel_size() - lane_count) {}

  [[gnu::always_inline]] void start(std::size_t part) {
    mine = Doubles::at(here + part);
    from_below = Doubles::all(0.0);
    north_below = Doubles::all(0.0);
  }
  /// Differences of neighbours come first: these are exact.
  [[gnu::always_inline]] Doubles next(std::size_t j) {
    Doubles flow = Doubles::at(ground + j) * mine +
                   Doubles::at(east + j) * (mine - Doubles::at(at_east + j)) +
                   Doubles::at(west + j) * (mine - Doubles::at(at_west + j)) + from_below;
    if (j >= last) return flow;
    const Doubles above = Doubles::at(here + j + lane_count);
    from_below = Doubles::at(north + j) * (above - mine);
    mine = above;
    return flow - from_below;
  }
  /// Sum of the conductances of a node. Rows come in order.
  [[gnu::always_inline]] Doubles diagonal(std::size_t j) {
    const Doubles north_here = Doubles::at(north + j);
    const Doubles sum = Doubles::at(ground + j) + Doubles::at(east + j) + Doubles::at(west + j) +
                        north_here + north_below;
    north_below = north_here;
    return sum;
  }

  const double* east;
  const double* west;
  const double* north;
  const double* ground;
  const double* here;
  const double* at_east;
  const double* at_west;
  std::size_t last;
  Doubles mine;
  Doubles from_below;
  Doubles north_below;
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
    Outflow outflow(*network_, x, q);
    double* here = x.panel(q);
    for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
      outflow.start(part);
      for (std::size_t j = part; j < network_->layout.panel_size(); j += lane_count) {
        Doubles::at(here + j).where_above(0.0, outflow.diagonal(j)).write_to(here + j);
      }
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
    Doubles given = Doubles::all(0.0);
    Doubles left = Doubles::all(0.0);
    Doubles rounding = Doubles::all(0.0);
    for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
      outflow.start(part);
      for (std::size_t j = part; j < network_->layout.panel_size(); j += lane_count) {
        const Doubles diagonal = outflow.diagonal(j);
        const Doubles rhs = Doubles::at(r + j).where_above(0.0, diagonal);
        const Doubles residual_here = rhs - outflow.next(j);
        residual_here.write_to(r + j);
        const Doubles weight = diagonal * Doubles::at(here + j);
        given += rhs * rhs;
        left += residual_here * residual_here;
        rounding += weight * weight;
      }
    }
    sums_[q] = given.sum();
    sums_[q + panels] = left.sum();
    sums_[q + 2 * panels] = rounding.sum();
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
  Descent descent;
  double least = std::numeric_limits<double>::infinity();
  int least_at = 0;
  double step = 0.0;  // 0: the residual as it is
  double last_product = 0.0;
  while (true) {
    const double squared_residual = take_step(preconditioner.rhs(), step, member);
    if (squared_residual < least) {
      least = squared_residual;
      least_at = descent.iterations;
    }
    descent.stagnated =
        !std::isfinite(squared_residual) || descent.iterations > least_at + patience;
    bool ends =
        squared_residual <= goal || descent.iterations == iteration_limit || descent.stagnated;
    double product = 0.0;
    if (!ends) {
      preconditioner.cycle(member);
      product = product_with_residual(preconditioner.x(), member);
      ends = descent.stagnated = !(product > 0.0);
    }
    if (ends) {
      move(step, member);
      return descent;
    }
    turn(preconditioner.x(), step, descent.iterations == 0 ? 0.0 : product / last_product, member);
    step = product / write_image(member);
    last_product = product;
    ++descent.iterations;
  }
}

/// residual -= step * image, also for the preconditioner; returns the squared norm.
template <typename T>
double ConjugateGradients::take_step(Panels<T>& given, double step, const Member& member) {
  const auto [begin, end] = member.share(network_->layout.panels);
  const Doubles factor = Doubles::all(step);
  for (std::size_t q = begin; q < end; ++q) {
    const double* image = image_.panel(q);
    double* r = residual.panel(q);
    T* g = given.panel(q);
    Doubles squares = Doubles::all(0.0);
    for (std::size_t k = 0; k < network_->layout.panel_size(); k += Doubles::count) {
      const Doubles left = Doubles::at(r + k) - factor * Doubles::at(image + k);
      left.write_to(r + k);
      left.convert_to(g + k);
      squares += left * left;
    }
    sums_[q] = squares.sum();
  }
  return total(member);
}

template <typename T>
double ConjugateGradients::product_with_residual(const Panels<T>& other, const Member& member) {
  const auto [begin, end] = member.share(network_->layout.panels);
  for (std::size_t q = begin; q < end; ++q) {
    const double* r = residual.panel(q);
    const T* z = other.panel(q);
    Doubles products = Doubles::all(0.0);
    for (std::size_t k = 0; k < network_->layout.panel_size(); k += Doubles::count) {
      products += Doubles::at(r + k) * Doubles::converted(z + k);
    }
    sums_[q] = products.sum();
  }
  return total(member);
}

/// x += step * direction.
void ConjugateGradients::move(double step, const Member& member) {
  const auto [begin, end] = member.share(network_->layout.panels);
  const Doubles factor = Doubles::all(step);
  for (std::size_t q = begin; q < end; ++q) {
    const double* p = direction_.panel(q);
    double* here = x.panel(q);
    for (std::size_t k = 0; k < network_->layout.panel_size(); k += Doubles::count) {
      (Doubles::at(here + k) + factor * Doubles::at(p + k)).write_to(here + k);
    }
  }
  member.meet();
}

/// The same, and direction = downhill + share * direction while it is at hand.
template <typename T>
void ConjugateGradients::turn(const Panels<T>& downhill, double step, double share,
                              const Member& member) {
  const auto [begin, end] = member.share(network_->layout.panels);
  const Doubles factor = Doubles::all(step);
  const Doubles kept = Doubles::all(share);
  for (std::size_t q = begin; q < end; ++q) {
    const T* z = downhill.panel(q);
    double* p = direction_.panel(q);
    double* here = x.panel(q);
    for (std::size_t k = 0; k < network_->layout.panel_size(); k += Doubles::count) {
      const Doubles old = Doubles::at(p + k);
      (Doubles::at(here + k) + factor * old).write_to(here + k);
      (Doubles::converted(z + k) + kept * old).write_to(p + k);
    }
  }
  member.meet();
}

/// image = A direction; returns their product.
double ConjugateGradients::write_image(const Member& member) {
  const auto [begin, end] = member.share(network_->layout.panels);
  if (member.leads()) {
    direction_.write_east_ghost();
    direction_.write_west_ghost();
  }
  member.meet();
  for (std::size_t q = begin; q < end; ++q) {
    Outflow outflow(*network_, direction_, q);
    double* image = image_.panel(q);
    const double* p = direction_.panel(q);
    Doubles products = Doubles::all(0.0);
    for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
      outflow.start(part);
      for (std::size_t j = part; j < network_->layout.panel_size(); j += lane_count) {
        const Doubles flow = outflow.next(j);
        flow.write_to(image + j);
        products += Doubles::at(p + j) * flow;
      }
    }
    sums_[q] = products.sum();
  }
  return total(member);
}

template Descent ConjugateGradients::improve(Multigrid<float>&, double, int, const Member&);
template Descent ConjugateGradients::improve(Multigrid<double>&, double, int, const Member&);

}  // namespace quoin::solver
