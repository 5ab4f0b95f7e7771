// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/wet_surfaces.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cases/model/fixed_resistance.hpp"
#include "materials/moist_air.hpp"
#include "solver/findings/other_temperatures.hpp"
#include "solver/linear/errors.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {
namespace {

constexpr double settled = 1e-6;  // K
constexpr int most_iterations = 50;
constexpr double claims_may_exceed = 1.05;  // what is possible, as that is rounded, too

double area_of(const geometry::Mesh& mesh, SpaceId space) {
  double area = 0.0;
  for (const geometry::Face& face : geometry::faces(mesh)) {
    if (face.space == space) area += face.length;
  }
  return area;
}

/// One wet space: its surface cools, so that less leaves it.
class Wet {
 public:
  Wet(const SolvedVariant& solved, SpaceId id)
      : solved_(solved),
        space_(solved.variant.spaces[id]),
        id_(id),
        area_(area_of(solved.surface.field.mesh, id)),
        resistance_(cases::fixed_resistance(space_)) {}

  [[nodiscard]] bool touches() const { return area_ > 0.0; }

  /// The mean temperature of the surface, degC.
  [[nodiscard]] double temperature(const solver::SpaceTemperatures& spaces) const {
    return spaces[id_] - resistance_ * solver::flows(solved_.surface.field, spaces)[id_] / area_;
  }

  /// Of a surface as wet as stated, wet through and bare where only a rate is; kg/(m2 s).
  [[nodiscard]] double rate(const solver::SpaceTemperatures& spaces) const {
    const double convection =
        space_.is == cases::SpaceKind::outside
            ? materials::outside_convection(space_.wind.value_or(4.0))  // that of Rse 0.04
            : materials::inside_convection;
    const auto* stated = std::get_if<materials::WetSurface>(&*space_.evaporation);
    return materials::evaporation_rate(
        stated == nullptr ? materials::WetSurface{} : *stated, temperature(spaces),
        *space_.humidity * materials::saturation_pressure(space_.temperature), convection);
  }

  /// By how much the cooling that the rate asks for differs from that assumed, K.
  [[nodiscard]] double gap(const solver::SpaceTemperatures& spaces) const {
    const double asked = resistance_ * materials::heat_of_evaporation * rate(spaces);
    return asked - (space_.temperature - spaces[id_]);
  }

  /// One step of Newton's method. Returns how far it went, K.
  double step(solver::SpaceTemperatures& spaces) const {
    constexpr double nudge = 1e-3;  // K
    solver::SpaceTemperatures cooler = spaces;
    cooler[id_] -= nudge;
    const double here = gap(spaces);
    const double change = here * nudge / (here - gap(cooler));
    spaces[id_] -= change;
    return std::abs(change);
  }

 private:
  const SolvedVariant& solved_;
  const cases::Space& space_;
  SpaceId id_;
  double area_;
  double resistance_;
};

/// What is wrong with rates that authors claim: a surface that is wet through, as cold as the claim
/// makes it, would lose less.
std::vector<std::string> impossible_claims(const SolvedVariant& solved) {
  std::vector<std::string> doubts;
  const solver::SpaceTemperatures spaces = temperatures_of(solved.variant);
  for (const SpaceId id : geometry::ids(solved.variant.spaces)) {
    const cases::Space& space = solved.variant.spaces[id];
    if (!space.evaporation || !space.humidity) continue;
    const auto* claim = std::get_if<materials::EvaporationRate>(&*space.evaporation);
    const Wet wet(solved, id);
    if (claim == nullptr || !wet.touches()) continue;
    const double most = std::max(0.0, wet.rate(spaces));
    if (claim->rate <= claims_may_exceed * most) continue;
    doubts.push_back(fmt::format(
        "{:.3g} g/(m²·h) cannot leave the surfaces of '{}': at the {:.1f} °C that would bring them "
        "to, a surface that is wet through loses {:.2g} g/(m²·h) to this air; `wet surface` finds "
        "the rate that can",
        claim->rate * 3.6e6, space.name, wet.temperature(spaces), most * 3.6e6));
  }
  return doubts;
}

}  // namespace

std::vector<std::string> evaporate(SolvedVariant& solved) {
  std::vector<std::string> remarks = impossible_claims(solved);
  std::vector<SpaceId> ids;
  std::vector<Wet> wets;
  for (const SpaceId id : geometry::ids(solved.variant.spaces)) {
    const auto& evaporation = solved.variant.spaces[id].evaporation;
    if (!evaporation || !std::holds_alternative<materials::WetSurface>(*evaporation)) continue;
    const Wet wet(solved, id);
    if (!wet.touches()) continue;
    ids.push_back(id);
    wets.push_back(wet);
  }
  if (wets.empty()) return remarks;
  const solver::SpaceTemperatures dry = temperatures_of(solved.variant);
  solver::SpaceTemperatures spaces = dry;
  int iterations = 0;
  for (double change = 1.0; change > settled; ++iterations) {
    if (iterations == most_iterations)
      throw solver::SolveError("the temperature of a wet surface does not settle");
    change = 0.0;
    for (const Wet& wet : wets) change = std::max(change, wet.step(spaces));
  }
  for (std::size_t w = 0; w < wets.size(); ++w) {
    remarks.push_back(fmt::format(
        "{:.3g} g/(m²·h) leave the wet surfaces of '{}' at {:.1f} °C, like air of {:.1f} K less "
        "({} iterations): as long as they are as wet as the author says",
        wets[w].rate(spaces) * 3.6e6, solved.variant.spaces[ids[w]].name,
        wets[w].temperature(spaces), dry[ids[w]] - spaces[ids[w]], iterations));
  }
  for (const SpaceId id : ids) solved.variant.spaces[id].cooling += dry[id] - spaces[id];
  solver::change_temperatures(solved.surface, dry, spaces);
  solver::change_temperatures(solved.heat, dry, spaces);
  return remarks;
}

}  // namespace quoin::tools
