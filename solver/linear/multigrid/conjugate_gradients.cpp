// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/conjugate_gradients.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::solver {

namespace {

/// Without a residual smaller than any before over so many iterations, no progress is made.
constexpr int patience = 12;

}  // namespace

ConjugateGradients::ConjugateGradients(const Conductances<double>& network, const Machine& machine,
                                       Arena& arena)
    : x(network.layout, arena),
      residual(network.layout, arena),
      kernels_(machine.kernels),
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

Links<double> ConjugateGradients::links(std::size_t slot) const {
  return {network_->east[slot], network_->east[slot - 1], network_->north[slot],
          network_->ground[slot]};
}

void ConjugateGradients::clear_inactive(const Member& member) {
  const auto& clear = kernels_->gradient<double>().clear_inactive;
  for_own_panels(
      member, [&](std::size_t slot, Rows rows, std::size_t) { clear(rows, links(slot), x[slot]); });
  member.meet();
}

Misfit ConjugateGradients::subtract_image(const Member& member) {
  const std::size_t panels = network_->layout.panel_count();
  for_own_runs(member, [&](std::size_t group, std::size_t begin, std::size_t end) {
    if (begin == 0) x.write_west_ghost(group, network_->rows[group]);
    if (end == network_->layout.panels) x.write_east_ghost(group, network_->rows[group]);
  });
  member.meet();
  for_own_panels(member, [&](std::size_t slot, Rows rows, std::size_t number) {
    const MisfitSums sums = kernels_->gradient<double>().subtract_image(
        rows, links(slot), around(x, slot), residual[slot]);
    sums_[number] = sums.given;
    sums_[number + panels] = sums.residual;
    sums_[number + 2 * panels] = sums.rounding;
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
  for_own_panels(member, [&](std::size_t slot, Rows rows, std::size_t number) {
    sums_[number] =
        kernels_->gradient<T>().take_step(rows, step, image_[slot], residual[slot], given[slot]);
  });
  return total(0, member);
}

/// x += step * direction.
void ConjugateGradients::move(double step, const Member& member) {
  for_own_panels(member, [&](std::size_t slot, Rows rows, std::size_t) {
    kernels_->gradient<double>().move(rows, step, direction_[slot], x[slot]);
  });
  member.meet();
}

/// The same, then direction = downhill + share * direction and image = A direction, all while a
/// panel is in the cache. Returns direction . image.
template <typename T>
double ConjugateGradients::turn(const Panels<T>& downhill, double step, double share,
                                const Member& member) {
  const PanelLayout& layout = network_->layout;
  const GradientKernels<T>& kernels = kernels_->gradient<T>();
  const auto turn_panel = [&](std::size_t group, std::size_t q) {
    const std::size_t slot = layout.slot(group, q);
    kernels.turn(network_->rows[group], step, share, downhill[slot], direction_[slot], x[slot]);
  };
  const auto write_image = [&](std::size_t group, std::size_t q) {
    const std::size_t slot = layout.slot(group, q);
    sums_[group * layout.panels + q] = kernels.write_image(network_->rows[group], links(slot),
                                                           around(direction_, slot), image_[slot]);
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
