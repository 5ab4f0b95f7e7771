// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/wetness_remarks.hpp"

#include <fmt/format.h>

#include <optional>

#include "geometry/shape.hpp"
#include "materials/moisture.hpp"
#include "tools/answer/judge/lined.hpp"
#include "tools/answer/words/figures.hpp"

namespace quoin::tools {
namespace {

/// The conductivity in a state, W/(m K); absent where it is not known what the material then holds.
std::optional<double> conductivity_in(const materials::Material& material,
                                      materials::NamedState state) {
  const auto moisture = materials::moisture_of(material, state);
  const auto* known = std::get_if<double>(&moisture);
  if (known == nullptr) return std::nullopt;
  return materials::conductivity_of(material, *known).value;
}

/// Whether a region is a wall rather than a coat on one, by its mean thickness.
bool is_thick(const geometry::Section& section, RegionId id) {
  constexpr double coat = 0.05;  // m; plasters are thinner, masonry is thicker
  const geometry::Shape shape = geometry::shape_of(section, id);
  return shape.pieces > 0 && shape.area > coat * (shape.width + shape.height);
}

/// `lined`: insulation inside covers it.
std::string remark(const cases::Region& region, bool lined) {
  constexpr double masonry = 0.2;  // W/(m K); what conducts less is insulation or timber
  constexpr double noticeable =
      1.1;  // less lies within what the chance counts for its conductivity
  const materials::Material& material = region.material;
  const double used = material.conductivity.value;
  if (used < masonry) return "";
  const auto damp = conductivity_in(material, materials::NamedState::damp);
  if (damp && (*damp > noticeable * used || (lined && *damp > used))) {
    return fmt::format(
        "no moisture is stated for '{}': it is taken dry, {} W/(m·K), and damp it would conduct {} "
        "W/(m·K){}; state `moisture` (dry, sheltered, exposed, damp, saturated)",
        region.name, fixed(used, 2), fixed(*damp, 2),
        lined ? ", and a lining on it is judged as on a dry wall" : "");
  }
  if (material.conductivity.confidence == materials::Confidence::stated) {
    return fmt::format(
        "for '{}' a conductivity is stated and no moisture: if it is wet, nothing here says so, "
        "and "
        "whether insulation would shut it in wet is not looked at; say `like` a material and its "
        "`moisture`",
        region.name);
  }
  return "";
}

}  // namespace

std::vector<std::string> wetness_remarks(const SolvedVariant& solved) {
  std::vector<std::string> remarks;
  const std::optional<Lined> lined = lined_inside(solved.variant);
  const geometry::Section& section = solved.surface.field.mesh.section;
  for (const RegionId id : geometry::ids(solved.variant.regions)) {
    const cases::Region& region = solved.variant.regions[id];
    if (region.part != materials::Part::fabric || !region.state.empty() || !is_thick(section, id))
      continue;
    if (std::string text = remark(region, lined && lined->masonry == id); !text.empty())
      remarks.push_back(std::move(text));
  }
  return remarks;
}

}  // namespace quoin::tools
