// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <span>
#include <string>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/model/survey.hpp"
#include "solver/survey/reduced_field.hpp"
#include "tools/answer/survey/surveyed_section.hpp"

namespace quoin::tools {

/// A material whose conductivity is not known exactly.
struct UncertainMaterial {
  std::string name;
  double sd = 0.0;  ///< of the logarithm
};

/// Those of a variant: masonry by its spread, insulation by 5 %; or as the author states.
[[nodiscard]] std::vector<UncertainMaterial> uncertain_materials(const SurveyedSection& section);

/// What is not known of the fabric, all factors by their logarithm.
struct FabricState {
  std::vector<double> materials;  ///< in the order of the field's
  std::vector<double> zones;
  std::vector<ZoneExtent> extents;  ///< of each zone
};

/// The inside surfaces of a variant with the resistances for surface temperature (ISO 13788), for
/// any conductivities.
class SurfaceField {
 public:
  /// Throws: SolveError.
  SurfaceField(const std::string& name, const cases::Variant& variant, const cases::Survey& survey,
               const solver::LinearOptions& options);

  [[nodiscard]] const SurveyedSection& section() const { return section_; }
  [[nodiscard]] const std::vector<UncertainMaterial>& materials() const { return materials_; }
  [[nodiscard]] const std::vector<cases::Zone>& zones() const { return zones_; }
  [[nodiscard]] const std::vector<cases::SpaceId>& rooms() const { return rooms_; }
  [[nodiscard]] std::size_t solves() const { return field_->solves(); }

  /// What each air counts for at every place looked at. Shape: places by airs.
  [[nodiscard]] std::vector<double> shares(const FabricState& fabric) const;

  /// The lowest temperature of fabric before a room, degC. `air`: of each air of the section.
  [[nodiscard]] double coldest(std::span<const double> shares, std::size_t room,
                               std::span<const double> air) const;

 private:
  [[nodiscard]] solver::Setting setting(const FabricState& fabric) const;
  void reduce(const solver::LinearOptions& options);

  SurveyedSection section_;
  std::vector<UncertainMaterial> materials_;
  std::vector<cases::Zone> zones_;
  std::vector<cases::SpaceId> rooms_;
  std::vector<solver::Watched> places_;
  std::vector<std::pair<std::size_t, std::size_t>> of_room_;  ///< first place and beyond the last
  solver::Setting base_;
  std::unique_ptr<solver::ReducedField> field_;
};

}  // namespace quoin::tools
