// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/surface_field.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "solver/survey/quasi_random.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/survey/survey_unknowns.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::tools {
namespace {

constexpr double cells_per_metre = 8.0;
constexpr double reach = 2.5;  // sd
constexpr std::size_t first_training = 6;
constexpr std::size_t most_training = 96;
constexpr std::size_t checks = 2;
constexpr double wanted_error = 0.001;      // share of the difference of the airs
constexpr double insulation_spread = 0.05;  ///< common practice, no source
constexpr double insulation = 0.1;          ///< dry conductivity up to which fabric insulates

}  // namespace

std::vector<UncertainMaterial> uncertain_materials(const SurveyedSection& section) {
  std::vector<UncertainMaterial> all;
  for (const cases::RegionId id : geometry::ids(section.variant->regions)) {
    const cases::Region& region = section.variant->regions[id];
    const bool known = std::any_of(all.begin(), all.end(), [&](const UncertainMaterial& one) {
      return one.name == region.name;
    });
    if (known || region.part != materials::Part::fabric) continue;
    if (is_masonry(section, id)) {
      all.push_back({region.name, conductivity_spread(region)});
    } else if (region.material.conductivity.value <= insulation && !region.material.cavity &&
               !region.material.air_layer) {
      all.push_back({region.name, insulation_spread});
    }
  }
  return all;
}

SurfaceField::SurfaceField(const std::string& name, const cases::Variant& variant,
                           const cases::Survey& survey, const solver::LinearOptions& options)
    : section_(surveyed_section(name, variant, survey, cells_per_metre)), zones_(survey.zones) {
  materials_ = uncertain_materials(section_);
  for (const ZonedRegion& region : section_.zoned.regions)
    base_.conductivity.push_back(conductivities(variant)[region.region].value);
  for (const SurfaceKind& kind : section_.kinds)
    base_.conductance.push_back(1.0 / std::max(1e-6, kind.design));
  for (const cases::SpaceId air : section_.airs) {
    if (variant.spaces[air].is != cases::SpaceKind::inside) continue;
    std::set<std::size_t> nodes;
    for (const geometry::Face& face : section_.parametrised.faces) {
      const cases::RegionId region = section_.zoned.regions[face.region.index].region;
      if (variant.spaces[face.space].air != air ||
          !materials::is_fabric(variant.regions[region].part))
        continue;
      nodes.insert({face.from, face.to});
    }
    if (nodes.empty()) continue;
    rooms_.push_back(air);
    of_room_.emplace_back(places_.size(), places_.size() + nodes.size());
    for (const std::size_t node : nodes) places_.push_back({{node, 1.0}});
  }
  reduce(options);
}

solver::Setting SurfaceField::setting(const FabricState& fabric) const {
  solver::Setting setting = base_;
  for (std::size_t r = 0; r < section_.zoned.regions.size(); ++r) {
    const ZonedRegion& region = section_.zoned.regions[r];
    const std::string& name = section_.variant->regions[region.region].name;
    double exponent = 0.0;
    for (std::size_t m = 0; m < materials_.size(); ++m) {
      if (materials_[m].name == name) exponent += fabric.materials[m];
    }
    for (std::size_t z = 0; z < zones_.size(); ++z) {
      if (region.within(z, fabric.extents[z])) exponent += fabric.zones[z];
    }
    setting.conductivity[r] *= std::exp(exponent);
  }
  return setting;
}

void SurfaceField::reduce(const solver::LinearOptions& options) {
  const double least_ratio = before::conducts_less.median - reach * before::conducts_less.sd;
  const double most_ratio = before::conducts_better.median + reach * before::conducts_better.sd;
  const std::size_t dimensions = materials_.size() + zones_.size();
  const auto settings = [&](std::size_t count) {
    const std::vector<double> points = solver::even_points(count, dimensions);
    std::vector<solver::Setting> all;
    for (std::size_t p = 0; p < count; ++p) {
      const double* point = points.data() + p * dimensions;
      FabricState fabric;
      for (std::size_t m = 0; m < materials_.size(); ++m)
        fabric.materials.push_back((2 * point[m] - 1) * reach * materials_[m].sd);
      std::size_t turn = p;
      for (std::size_t z = 0; z < zones_.size(); ++z, turn /= 3) {
        const double share = point[materials_.size() + z];
        fabric.zones.push_back(least_ratio + share * (most_ratio - least_ratio));
        fabric.extents.push_back(static_cast<ZoneExtent>(turn % 3));
      }
      all.push_back(setting(fabric));
    }
    return all;
  };
  if (dimensions == 0) {
    field_ = std::make_unique<solver::ReducedField>(
        section_.parametrised, std::vector<solver::Setting>{base_}, places_, options);
    return;
  }
  const std::size_t first = zones_.empty() ? first_training : 4 * first_training;
  for (std::size_t training = first;; training *= 2) {
    std::vector<solver::Setting> all = settings(training + checks);
    const std::vector<solver::Setting> tried(all.end() - checks, all.end());
    all.resize(training);
    field_ = std::make_unique<solver::ReducedField>(section_.parametrised, all, places_, options);
    if (2 * training > most_training ||
        solver::reduction_error(section_.parametrised, *field_, tried, places_, options) <=
            wanted_error)
      return;
  }
}

std::vector<double> SurfaceField::shares(const FabricState& fabric) const {
  std::vector<double> shares(places_.size() * section_.airs.size());
  field_->evaluate(setting(fabric), shares);
  return shares;
}

double SurfaceField::coldest(std::span<const double> shares, std::size_t room,
                             std::span<const double> air) const {
  double coldest = 1e9;
  for (std::size_t p = of_room_[room].first; p < of_room_[room].second; ++p) {
    double temperature = 0.0;
    for (std::size_t a = 0; a < air.size(); ++a) temperature += shares[p * air.size() + a] * air[a];
    coldest = std::min(coldest, temperature);
  }
  return coldest;
}

}  // namespace quoin::tools
