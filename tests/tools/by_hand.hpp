// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "tests/tools/grids.hpp"
#include "tests/tools/small_case.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/results.hpp"

namespace quoin::testing {

/// A verdict on the hall.
inline tools::Verdict verdict(std::string criterion, bool holds, double margin, double band,
                              std::string unit) {
  tools::Verdict made;
  made.criterion = std::move(criterion);
  made.space = geometry::SpaceId(0u);
  made.holds = holds;
  made.limit = unit == "1" ? 0.75 : 0.8;
  made.margin = margin;
  made.band = band;
  made.unit = std::move(unit);
  return made;
}

/// A variant with findings written by hand rather than solved, so that pictures and files of it
/// change only when outputs do. Temperatures are a polynomial of the place, in degC; nothing about
/// them is physical.
inline tools::SolvedVariant by_hand(cases::Variant variant) {
  tools::SolvedVariant solved;
  solver::Field& field = solved.surface.field;
  field.mesh = evenly_cut(geometry::section_of(variant.sheet), 6);
  field.airs = {geometry::SpaceId(0u), geometry::SpaceId(1u)};
  const double reach = std::max(field.mesh.x.back(), field.mesh.y.back());
  const auto warmth = [reach](double x, double y) {
    return 0.05 + 2.5 * (x / reach) * (y / reach) + 0.2 * (x + y) / (2 * reach);
  };
  const std::vector<double> inside = values(field.mesh, warmth);
  field.basis = {inside, {}};
  for (const double share : inside) {
    field.basis[1].push_back(1.0 - share);
    solved.surface.temperature.push_back(1.0 + 17.0 * share);
  }
  field.solid.assign(inside.size(), 0);
  for (std::size_t j = 0; j < field.mesh.rows(); ++j) {
    for (std::size_t i = 0; i < field.mesh.columns(); ++i) {
      if (!std::holds_alternative<geometry::RegionId>(field.mesh.cell(i, j).below)) continue;
      for (const std::size_t node : {field.mesh.node(i, j), field.mesh.node(i + 1, j),
                                     field.mesh.node(i, j + 1), field.mesh.node(i + 1, j + 1)}) {
        field.solid[node] = 1;
      }
    }
  }
  solver::AirSurface hall;
  hall.air = geometry::SpaceId(0u);
  hall.coldest.place = {0.345, 0.345};
  hall.coldest.space = hall.air;
  hall.coldest.region = geometry::RegionId(1u);
  hall.coldest.along = 1.0;
  hall.coldest.temperature = {9.125, 0.0625};
  hall.coldest.factor = {0.478, 0.0037};
  hall.coldest.thermometer = 9.25;
  hall.cold_spots = {hall.coldest};
  solved.surface.airs = {hall};
  solved.surface.flows = geometry::Per<geometry::SpaceId, double>(2, 66.5);
  solved.surface.flows[geometry::SpaceId(1u)] = -66.5;
  solved.surface.physics.air = geometry::Per<geometry::SpaceId, geometry::SpaceId>(2);
  for (const auto id : field.airs) solved.surface.physics.air[id] = id;
  solved.surface.physics.is_fabric =
      geometry::Per<geometry::RegionId, char>(variant.regions.size(), 1);
  for (std::size_t space = 0; space < 2; ++space) {
    solved.surface.physics.resistance.add(
        geometry::Per<geometry::RegionId, std::array<double, 3>>(variant.regions.size(), {0.25}));
  }
  solved.surface.probes = {{{0.345, 0.6}, {11.25, 0.125, true}}};
  solved.surface.checks = {{"heat balance", 3e-11, 1e-4, true}};
  solved.heat = solved.surface;
  solved.heat.couplings = {{geometry::SpaceId(0u), geometry::SpaceId(1u), 3.88, 3.875, 3.885}};
  solved.conductivity.add({0.92, "between dry and saturated", {}});
  solved.conductivity.add({0.7, "constant", {}});
  solved.conductivity.add({0.04, "constant", {}});
  solved.plain = {{"wall", 1.8125, 0.628, 11.7}};
  solved.psi = {{geometry::Dimensions::internal, {0.25, 0.0035}},
                {geometry::Dimensions::external, {-0.995, 0.0035}}};
  solved.cut_planes = {{{1.345, 0.0}, {1.345, 0.345}, 0.0011, 1.0}};
  solved.humidity = {
      {hall.air, 0.62, 10.6, 14.0, 1.1, -4.875, -1.475, "mould", 0.8, 14.0, 0.76, 0.445}};
  solved.verdicts = {verdict("mould", false, -30.0, 0.4, "%RH"),
                     verdict("fRsi", false, -0.272, 0.0037, "1")};
  solved.warnings = {"plaster: its conductivity is a guess"};
  solved.summary = "hall at 18.0 °C and 62 % humidity: the coldest spot has 9.1 °C.";
  solved.variant = std::move(variant);
  solved.outcomes = outcomes(solved);
  return solved;
}

/// Two variants written by hand.
inline tools::Results results_by_hand() {
  const cases::Case source = small_case();
  tools::Results results{source.title, source.note, "corner.yaml", source.sha256, {}, {}};
  results.variants = {by_hand(source.variants[0]), by_hand(source.variants[1])};
  results.changes = {{"dried out",
                      geometry::SpaceId(0u),
                      9.125,
                      10.5,
                      0.0,
                      {},
                      "dried out: raises the coldest spot from 9.1 to 10.5 °C"}};
  return results;
}

/// The same results with a name in every place where the author of a case puts one.
inline tools::Results results_named(const std::string& name) {
  tools::Results results = results_by_hand();
  results.title = results.note = name;
  for (tools::SolvedVariant& solved : results.variants) {
    solved.variant.name = name;
    for (cases::Space& space : solved.variant.spaces) space.name = name;
    for (cases::Region& region : solved.variant.regions) region.name = region.state = name;
    for (cases::Probe& probe : solved.variant.probes) probe.name = name;
    for (solver::PlainPart& part : solved.plain) part.name = name;
    solved.summary = name;
    solved.warnings = {name};
    for (tools::Outcome& outcome : solved.outcomes) outcome.words = outcome.decided_by = name;
  }
  for (tools::Change& change : results.changes) change.variant = change.words = name;
  return results;
}

}  // namespace quoin::testing
