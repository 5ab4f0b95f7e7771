// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/drying.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/shape.hpp"
#include "materials/evaporation.hpp"
#include "materials/moisture.hpp"
#include "tools/answer/ask/vapour_conditions.hpp"

namespace quoin::tools {
namespace {

constexpr double water_density = 1000.0;  // kg/m3

/// What a material may keep: what it holds at 80 % humidity, or damp where that is not known.
struct Rest {
  double moisture = 0.0;  ///< m3/m3
  std::string words;
};

Rest rest_of(const materials::Material& material) {
  if (material.moisture_at_80) return {material.moisture_at_80->value, "what it holds at 80 %"};
  if (material.saturation) {
    return {
        materials::degree_of_saturation(materials::NamedState::damp) * material.saturation->value,
        "damp"};
  }
  return {0.0, "dry"};
}

/// Whether a region holds water that keeps its pores saturated: one that is wetter than damp, or
/// the one the author names unless it is no wetter than a sheltered wall.
bool is_wet(const cases::Variant& variant, const cases::Region& region) {
  const materials::Material& material = region.material;
  if (material.cavity) return false;
  if (variant.drying->wet.empty()) return materials::wetter_than_damp(material, region.moisture);
  const double sheltered = material.saturation
                               ? materials::degree_of_saturation(materials::NamedState::sheltered) *
                                     material.saturation->value
                               : 0.0;
  return region.name == variant.drying->wet &&
         region.moisture > std::max(sheltered, rest_of(material).moisture);
}

/// Marks the wet regions, and adds up what they hold too much.
void find_wet(const SolvedVariant& solved, DryingLedger& ledger, Per<RegionId, char>& wet) {
  const cases::Variant& variant = solved.variant;
  for (const RegionId id : geometry::ids(variant.regions)) {
    const cases::Region& region = variant.regions[id];
    wet.add(0);
    if (!is_wet(variant, region)) continue;
    const geometry::Shape shape = geometry::shape_of(solved.surface.field.mesh.section, id);
    if (shape.pieces == 0) continue;
    wet[id] = 1;
    const Rest rest = rest_of(region.material);
    ledger.excess += (region.moisture - rest.moisture) * shape.area * water_density;
    ledger.down_to = rest.words;
    if (std::find(ledger.wet.begin(), ledger.wet.end(), region.name) == ledger.wet.end())
      ledger.wet.push_back(region.name);
  }
}

/// Whether a straight line inwards from a face meets the wet part before it leaves the section.
/// From a sloping face it goes level or plumb, whichever is nearer to square.
bool lies_before(const geometry::Mesh& mesh, const geometry::Face& face,
                 const Per<RegionId, char>& wet) {
  const geometry::Point from = mesh.place(face.from), to = mesh.place(face.to);
  const double dx = to.x - from.x, dy = to.y - from.y;  // the material lies on the left
  const bool level = std::abs(dy) > std::abs(dx);
  const int step_i = level ? (dy > 0 ? -1 : 1) : 0;
  const int step_j = level ? 0 : (dx > 0 ? 1 : -1);
  const std::size_t one = mesh.on_grid(face.from), other = mesh.on_grid(face.to);
  auto i = static_cast<std::ptrdiff_t>(std::min(one % mesh.nx(), other % mesh.nx()));
  auto j = static_cast<std::ptrdiff_t>(std::min(one / mesh.nx(), other / mesh.nx()));
  if (dx == 0.0 && step_i < 0) --i;
  if (dy == 0.0 && step_j < 0) --j;
  const auto is_wet = [&](const geometry::Fill& fill) {
    const auto* region = std::get_if<RegionId>(&fill);
    return region != nullptr && wet[*region] != 0;
  };
  for (; i >= 0 && j >= 0 && i < std::ssize(mesh.x) - 1 && j < std::ssize(mesh.y) - 1;
       i += step_i, j += step_j) {
    const geometry::Cell& cell =
        mesh.cell(static_cast<std::size_t>(i), static_cast<std::size_t>(j));
    if (is_wet(cell.below) || is_wet(cell.above)) return true;
    if (!geometry::is_solid(cell)) return false;
  }
  return false;
}

/// Length of the surfaces of each air that the wet part lies behind, m. What leaves is told by it:
/// told by all surfaces it would seem the less, the more dry wall is drawn.
Per<SpaceId, double> surfaces_of(const SolvedVariant& solved, const Per<RegionId, char>& wet) {
  Per<SpaceId, double> lengths(solved.variant.spaces.size(), 0.0);
  const geometry::Mesh& mesh = solved.surface.field.mesh;
  for (const geometry::Face& face : geometry::faces(mesh)) {
    if (lies_before(mesh, face, wet)) lengths[solved.variant.spaces[face.space].air] += face.length;
  }
  return lengths;
}

/// The surface resistance of fabric at an air, m2K/W.
double resistance_at(const SolvedVariant& solved, SpaceId air) {
  for (const RegionId id : geometry::ids(solved.variant.regions)) {
    if (materials::is_fabric(solved.variant.regions[id].part))
      return solved.surface.physics.surface_resistance(air, id, geometry::Facing::sideways);
  }
  return 0.0;
}

/// Mean flows from the airs into the section through some coats, kg/(m s).
Per<SpaceId, double> mean_flows(const SolvedVariant& solved, const solver::VapourPhysics& physics,
                                const std::vector<VapourConditions>& conditions,
                                const solver::LinearOptions& options) {
  Per<SpaceId, double> flows(solved.variant.spaces.size(), 0.0);
  const solver::Field& heat = solved.surface.field;
  double weights = 0.0;
  for (const VapourConditions& one : conditions) {
    const solver::VapourField field = solver::vapour_field(
        heat.mesh, solver::temperatures(heat, one.temperatures), physics, one.pressures, options);
    const double weight = one.seconds > 0.0 ? one.seconds : 1.0;
    weights += weight;
    for (const SpaceId id : geometry::ids(field.flows))
      flows[solved.variant.spaces[id].air] += weight * field.flows[id];
  }
  for (double& flow : flows) flow /= weights;
  return flows;
}

}  // namespace

std::optional<DryingLedger> drying_ledger(const SolvedVariant& solved,
                                          const solver::LinearOptions& options) {
  const cases::Variant& variant = solved.variant;
  if (!variant.drying) return std::nullopt;
  DryingLedger ledger;
  ledger.by_month = variant.drying->conditions == cases::Conditions::by_month;
  Per<RegionId, char> wet;
  find_wet(solved, ledger, wet);
  if (ledger.wet.empty()) return ledger;
  const Per<SpaceId, double> surfaces = surfaces_of(solved, wet);
  for (const SpaceId id : geometry::ids(surfaces)) {
    if (surfaces[id] > 0.0) ledger.airs.push_back(id);
  }
  const std::vector<VapourConditions> conditions =
      conditions_of(solved, variant.drying->conditions);
  std::vector<std::optional<materials::Coat>> inside(variant.drying->inside_coats.begin(),
                                                     variant.drying->inside_coats.end());
  if (inside.empty()) inside.emplace_back();
  for (const std::optional<materials::Coat>& inner : inside) {
    for (const materials::Coat& outer : variant.drying->coats) {
      OtherCoats coats{{}, outer.sd, true};
      if (inner) coats.inside = inner->sd;
      solver::VapourPhysics physics = vapour_physics_of(variant, coats);
      physics.wet = wet;
      const Per<SpaceId, double> flows = mean_flows(solved, physics, conditions, options);
      DryingRow row{outer.name, inner ? inner->name : "", {}, 0.0, 0.0, 0.0};
      for (const double flow : flows) row.net -= flow;
      for (const SpaceId air : ledger.airs) {
        row.out.push_back(-flows[air] / surfaces[air]);
        row.cooling = std::max(row.cooling, row.out.back() * materials::heat_of_evaporation *
                                                resistance_at(solved, air));
      }
      row.seconds =
          row.net > 0.0 ? ledger.excess / row.net : std::numeric_limits<double>::infinity();
      ledger.rows.push_back(std::move(row));
    }
  }
  return ledger;
}

}  // namespace quoin::tools
