// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/ask/question.hpp"

#include "tools/answer/ask/physics.hpp"

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

}  // namespace

solver::Question question_of(const cases::Variant& variant, materials::Purpose purpose) {
  solver::Question question;
  question.section = geometry::section_of(variant.sheet);
  question.sheet = variant.sheet;
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

}  // namespace quoin::tools
