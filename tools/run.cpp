// SPDX-License-Identifier: Apache-2.0
#include "tools/run.hpp"

#include "solver/cut_planes.hpp"
#include "solver/plain.hpp"
#include "tools/compare.hpp"
#include "tools/judge.hpp"
#include "tools/physics.hpp"
#include "tools/summary.hpp"

namespace quoin::tools {
namespace {

/// The airs whose surfaces are searched for cold spots.
std::vector<SpaceId> rooms_of(const cases::Variant& variant) {
  std::vector<SpaceId> rooms;
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const cases::Space& space = variant.spaces[id];
    if (space.is == cases::SpaceKind::inside && space.air == id) rooms.push_back(id);
  }
  return rooms;
}

solver::Question question_of(const cases::Variant& variant, materials::Purpose purpose) {
  solver::Question question;
  question.section = geometry::section_of(variant.sheet);
  question.physics = physics_of(variant, purpose);
  question.temperatures = temperatures_of(variant);
  question.rooms = rooms_of(variant);
  question.outside = outside_of(variant);
  for (const cases::Probe& probe : variant.probes) question.probes.push_back(probe.place);
  if (purpose == materials::Purpose::surface_temperature) {
    question.factor_band = variant.accuracy.factor;
  } else {
    question.coupling_band = variant.accuracy.coupling;
  }
  return question;
}

}  // namespace

SolvedVariant solved(const cases::Variant& variant, const solver::Effort& effort) {
  SolvedVariant result;
  result.variant = variant;
  result.conductivity = conductivities(variant);
  result.surface =
      solver::solution_of(question_of(variant, materials::Purpose::surface_temperature), effort);
  result.heat = solver::solution_of(question_of(variant, materials::Purpose::heat_flow), effort);
  for (const geometry::Flank& flank : variant.flanks) {
    result.plain.push_back(solver::plain_part(flank, result.surface.physics, result.heat.physics,
                                              temperatures_of(variant)));
  }
  result.psi = solver::linear_transmittances(variant.flanks, result.heat);
  if (!result.surface.airs.empty()) {
    result.cut_planes = solver::cut_planes(result.surface.field, result.surface.physics,
                                           result.surface.airs.front().coldest.place);
  }
  result.humidity = humidities(result);
  result.verdicts = verdicts(result);
  result.warnings = warnings(result);
  result.summary = summary(result);
  return result;
}

Results results_of(const cases::Case& source, const std::string& file, const solver::Effort& effort,
                   const Progress& progress) {
  Results results{source.title, source.note, file, source.sha256, {}, {}};
  for (std::size_t v = 0; v < source.variants.size(); ++v) {
    if (progress) progress(source.variants[v].name, v, source.variants.size());
    results.variants.push_back(solved(source.variants[v], effort));
  }
  results.changes = changes(results.variants);
  return results;
}

}  // namespace quoin::tools
