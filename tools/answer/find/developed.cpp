// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/developed.hpp"

#include <algorithm>
#include <utility>

#include "solver/findings/courses.hpp"
#include "tools/answer/find/places.hpp"

namespace quoin::tools {
namespace {

constexpr double on_it = 0.0001;  ///< a node this near to a named place lies on it, m

/// Where a named point lies along a surface.
std::optional<double> position_of(const std::string& name, const cases::Variant& variant,
                                  const DevelopedSurface& surface) {
  for (const NamedStretch& stretch : named_stretches(variant, surface)) {
    if (stretch.name == name && stretch.from == stretch.to) return stretch.from;
  }
  return std::nullopt;
}

/// Lets all curves count from the first point that each of them has.
void align(ComparedSurface& compared, const std::vector<SolvedVariant>& variants) {
  const ComparedSurface::Curve& first = compared.curves.front();
  for (const NamedStretch& candidate :
       named_stretches(variants[first.variant].variant, first.surface)) {
    std::vector<double> origins;
    for (const ComparedSurface::Curve& curve : compared.curves) {
      const auto at = position_of(candidate.name, variants[curve.variant].variant, curve.surface);
      if (at) origins.push_back(*at);
    }
    if (origins.size() != compared.curves.size()) continue;
    compared.origin = candidate.name;
    for (std::size_t k = 0; k < origins.size(); ++k) compared.curves[k].origin = origins[k];
    return;
  }
}

}  // namespace

std::vector<DevelopedSurface> developed_surfaces(const SolvedVariant& solved) {
  const solver::Solution& solution = solved.surface;
  std::vector<DevelopedSurface> all;
  for (solver::Course& course : solver::courses_of(solution)) {
    const geometry::Surface& surface = course.surface;
    if (solved.variant.spaces[surface.air].is != cases::SpaceKind::inside) continue;
    DevelopedSurface developed{
        surface.air, std::move(course.place), surface.along, std::move(course.temperature), {}};
    for (const geometry::Face& face : surface.faces) {
      developed.is_fabric.push_back(solution.physics.is_fabric[face.region]);
    }
    all.push_back(std::move(developed));
  }
  return all;
}

std::vector<NamedStretch> named_stretches(const cases::Variant& variant,
                                          const DevelopedSurface& surface) {
  std::vector<NamedStretch> all;
  for (const geometry::NamedPlace& named : variant.places) {
    std::optional<NamedStretch> stretch;
    for (std::size_t k = 0; k < surface.place.size(); ++k) {
      if (distance_to(named, surface.place[k]) > on_it) continue;
      if (!stretch) stretch = NamedStretch{named.name, surface.along[k], surface.along[k]};
      stretch->to = surface.along[k];
    }
    const bool is_point = named.from == named.to;
    if (!stretch || (!is_point && stretch->from == stretch->to)) continue;
    if (is_point) stretch->to = stretch->from;  // the seam of a closed surface is met twice
    all.push_back(std::move(*stretch));
  }
  return all;
}

std::vector<ComparedSurface> compared_surfaces(const Results& results) {
  std::vector<ComparedSurface> all;
  for (std::size_t v = 0; v < results.variants.size(); ++v) {
    const SolvedVariant& solved = results.variants[v];
    std::vector<std::size_t> taken(all.size());  // whether this variant has its curve there
    for (DevelopedSurface& surface : developed_surfaces(solved)) {
      const std::string& air = solved.variant.spaces[surface.air].name;
      std::size_t s = 0;
      while (s < all.size() && (all[s].air != air || taken[s] != 0)) ++s;
      if (s == all.size()) {
        all.push_back({air, {}, {}});
        taken.push_back(0);
      }
      taken[s] = 1;
      all[s].curves.push_back({v, std::move(surface), 0.0});
    }
  }
  for (ComparedSurface& compared : all) align(compared, results.variants);
  return all;
}

}  // namespace quoin::tools
