// SPDX-License-Identifier: Apache-2.0
#include "solver/conjugate_gradients.hpp"

#include <algorithm>
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
  Outflow(const Conductances<double>& network, const Panels<double>& v, std::size_t slot,
          const Rows& rows)
      : east(network.east[slot]),
        west(network.east[slot - 1]),
        north(network.north[slot]),
        ground(network.ground[slot]),
        here(v[slot]),
        at_east(v[slot + 1]),
        at_west(v[slot - 1]),
        last(rows.end - lane_count) {}

  [[gnu::always_inline]] void start(std::size_t first) {
    mine = Doubles::at(here + first);
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

ConjugateGradients::ConjugateGradients(const Conductances<double>& network, Arena& arena)
    : x(network.layout, arena),
      residual(network.layout, arena),
      network_(&network),
      direction_(network.layout, arena),
      image_(network.layout, arena),
      sums_(3 * network.layout.panel_count(), 0.0) {}

template <typename Act>
void ConjugateGradients::for_own_runs(const Member& member, const Act& act) const {
  const PanelLayout& layout = network_->layout;
  const auto [begin, end] = member.share(layout.panel_count());
  for (std::size_t at = begin; at < end;) {
    const std::size_t group = at / layout.panels;
    const std::size_t stop = std::min(end, (group + 1) * layout.panels);
    const std::size_t first = group * layout.panels;
    if (!network_->rows[group].empty()) act(group, at - first, stop - first);
    at = stop;
  }
}

template <typename Act>
void ConjugateGradients::for_own_panels(const Member& member, const Act& act) const {
  const PanelLayout& layout = network_->layout;
  for_own_runs(member, [&](std::size_t group, std::size_t begin, std::size_t end) {
    for (std::size_t q = begin; q < end; ++q) {
      act(layout.slot(group, q), network_->rows[group], group * layout.panels + q);
    }
  });
}

double ConjugateGradients::total(std::size_t first, const Member& member) const {
  const std::size_t panels = network_->layout.panel_count();
  member.meet();
  double result = 0.0;
  for (std::size_t k = 0; k < panels; ++k) result += sums_[first * panels + k];
  member.meet();
  return result;
}

void ConjugateGradients::clear_inactive(const Member& member) {
  for_own_panels(member, [&](std::size_t slot, const Rows& rows, std::size_t) {
    Outflow outflow(*network_, x, slot, rows);
    double* here = x[slot];
    for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
      outflow.start(rows.begin + part);
      for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
        Doubles::at(here + j).where_above(0.0, outflow.diagonal(j)).write_to(here + j);
      }
    }
  });
  member.meet();
}

Misfit ConjugateGradients::subtract_image(const Member& member) {
  const std::size_t panels = network_->layout.panel_count();
  for_own_runs(member, [&](std::size_t group, std::size_t begin, std::size_t end) {
    if (begin == 0) x.write_west_ghost(group, network_->rows[group]);
    if (end == network_->layout.panels) x.write_east_ghost(group, network_->rows[group]);
  });
  member.meet();
  for_own_panels(member, [&](std::size_t slot, const Rows& rows, std::size_t number) {
    Outflow outflow(*network_, x, slot, rows);
    double* r = residual[slot];
    const double* here = x[slot];
    Doubles given = Doubles::all(0.0);
    Doubles left = Doubles::all(0.0);
    Doubles rounding = Doubles::all(0.0);
    for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
      outflow.start(rows.begin + part);
      for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
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
    sums_[number] = given.sum();
    sums_[number + panels] = left.sum();
    sums_[number + 2 * panels] = rounding.sum();
  });
  Misfit misfit;
  misfit.given = total(0, member);
  misfit.residual = total(1, member);
  // Each temperature is off by up to half an epsilon, so are those around it; twice for good
  // measure.
  misfit.rounding = std::pow(2.0 * std::numeric_limits<double>::epsilon(), 2) * total(2, member);
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
      preconditioner.cycle(member, sums_.data());
      product = total(0, member);
      ends = descent.stagnated = !(product > 0.0);
    }
    if (ends) {
      move(step, member);
      return descent;
    }
    const double share = descent.iterations == 0 ? 0.0 : product / last_product;
    step = product / turn(preconditioner.x(), step, share, member);
    last_product = product;
    ++descent.iterations;
  }
}

/// residual -= step * image, also for the preconditioner; returns the squared norm.
template <typename T>
double ConjugateGradients::take_step(Panels<T>& given, double step, const Member& member) {
  const Doubles factor = Doubles::all(step);
  for_own_panels(member, [&](std::size_t slot, const Rows& rows, std::size_t number) {
    const double* image = image_[slot];
    double* r = residual[slot];
    T* g = given[slot];
    Doubles squares = Doubles::all(0.0);
    for (std::size_t k = rows.begin; k < rows.end; k += Doubles::count) {
      const Doubles left = Doubles::at(r + k) - factor * Doubles::at(image + k);
      left.write_to(r + k);
      left.convert_to(g + k);
      squares += left * left;
    }
    sums_[number] = squares.sum();
  });
  return total(0, member);
}

/// x += step * direction.
void ConjugateGradients::move(double step, const Member& member) {
  const Doubles factor = Doubles::all(step);
  for_own_panels(member, [&](std::size_t slot, const Rows& rows, std::size_t) {
    const double* p = direction_[slot];
    double* here = x[slot];
    for (std::size_t k = rows.begin; k < rows.end; k += Doubles::count) {
      (Doubles::at(here + k) + factor * Doubles::at(p + k)).write_to(here + k);
    }
  });
  member.meet();
}

/// The same, then direction = downhill + share * direction and image = A direction, all while a
/// panel is in the cache. Returns direction . image.
template <typename T>
double ConjugateGradients::turn(const Panels<T>& downhill, double step, double share,
                                const Member& member) {
  const PanelLayout& layout = network_->layout;
  const Doubles factor = Doubles::all(step);
  const Doubles kept = Doubles::all(share);
  const auto turn_panel = [&](std::size_t group, std::size_t q) {
    const std::size_t slot = layout.slot(group, q);
    const Rows& rows = network_->rows[group];
    const T* z = downhill[slot];
    double* p = direction_[slot];
    double* here = x[slot];
    for (std::size_t k = rows.begin; k < rows.end; k += Doubles::count) {
      const Doubles old = Doubles::at(p + k);
      (Doubles::at(here + k) + factor * old).write_to(here + k);
      (Doubles::converted(z + k) + kept * old).write_to(p + k);
    }
  };
  const auto write_image = [&](std::size_t group, std::size_t q) {
    const std::size_t slot = layout.slot(group, q);
    const Rows& rows = network_->rows[group];
    Outflow outflow(*network_, direction_, slot, rows);
    double* image = image_[slot];
    const double* p = direction_[slot];
    Doubles products = Doubles::all(0.0);
    for (std::size_t part = 0; part < lane_count; part += Doubles::count) {
      outflow.start(rows.begin + part);
      for (std::size_t j = rows.begin + part; j < rows.end; j += lane_count) {
        const Doubles flow = outflow.next(j);
        flow.write_to(image + j);
        products += Doubles::at(p + j) * flow;
      }
    }
    sums_[group * layout.panels + q] = products.sum();
  };
  // The image of a panel needs the panels on both sides. Those at the ends of a run come last.
  for_own_runs(member, [&](std::size_t group, std::size_t begin, std::size_t end) {
    for (std::size_t q = begin; q < end; ++q) {
      turn_panel(group, q);
      if (q > begin + 1) write_image(group, q - 1);
    }
  });
  member.meet();
  for_own_runs(member, [&](std::size_t group, std::size_t begin, std::size_t end) {
    if (begin == 0) direction_.write_west_ghost(group, network_->rows[group]);
    if (end == layout.panels) direction_.write_east_ghost(group, network_->rows[group]);
    write_image(group, begin);
    if (end - 1 > begin) write_image(group, end - 1);
  });
  return total(0, member);
}

template Descent ConjugateGradients::improve(Multigrid<float>&, double, int, const Member&);
template Descent ConjugateGradients::improve(Multigrid<double>&, double, int, const Member&);

}  // namespace quoin::solver
