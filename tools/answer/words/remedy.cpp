// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/remedy.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <variant>

#include "cases/meaning/wall_remarks.hpp"
#include "materials/mineral.hpp"
#include "tools/answer/words/overlaid.hpp"

namespace quoin::tools {
namespace {

constexpr double rounding = 1e-9;

bool exceeds(double value, double other) { return value > other + rounding; }
bool differs(double value, double other) { return exceeds(value, other) || exceeds(other, value); }
bool differs(const std::optional<double>& value, const std::optional<double>& other) {
  return value.has_value() != other.has_value() || (value && differs(*value, *other));
}

/// Whether the weather is another at the same space outside.
bool is_other_weather(const cases::Space& was, const cases::Space& is) {
  return differs(is.temperature, was.temperature) || differs(is.humidity, was.humidity) ||
         differs(is.wind, was.wind) || is.sky.has_value() != was.sky.has_value();
}

/// Whether a room, or an unheated space whose temperature is stated, is worse to its surfaces.
bool is_worse_room(const cases::Space& was, const cases::Space& is) {
  const bool stated =
      is.losses.empty() && was.losses.empty() && is.b.has_value() == was.b.has_value();
  if (stated && exceeds(was.temperature, is.temperature)) return true;
  if (is.b && was.b && exceeds(*is.b, *was.b)) return true;
  if (was.humidity && (!is.humidity || exceeds(*is.humidity, *was.humidity))) return true;
  return is.is == cases::SpaceKind::inside &&
         exceeds(is.resistance.value_or(0.0), was.resistance.value_or(0.0));
}

bool is_worse_air(const cases::Variant& first, const cases::Variant& later) {
  for (const cases::Space& is : later.spaces) {
    for (const cases::Space& was : first.spaces) {
      if (is.name != was.name || is.is != was.is) continue;
      const bool outside = is.is == cases::SpaceKind::outside;
      if (outside ? is_other_weather(was, is) : is_worse_room(was, is)) return true;
      if (is.evaporation && exceeds(is.cooling, was.cooling)) return true;
    }
  }
  return false;
}

/// Whether some month outside is another, or some month inside colder or more humid.
bool is_worse_year(const cases::Variant& first, const cases::Variant& later) {
  if (!first.climate || !later.climate) return false;
  const cases::Climate& was = *first.climate;
  const cases::Climate& is = *later.climate;
  for (std::size_t month = 0; month < is.outside_temperature.size(); ++month) {
    const auto falls = [&](const std::optional<cases::ByMonth>& one,
                           const std::optional<cases::ByMonth>& other) {
      return one && other && exceeds((*one)[month], (*other)[month]);
    };
    if (differs(is.outside_temperature[month], was.outside_temperature[month]) ||
        differs(is.outside_humidity[month], was.outside_humidity[month]) ||
        falls(was.inside_temperature, is.inside_temperature) ||
        falls(is.inside_humidity, was.inside_humidity))
      return true;
  }
  return false;
}

/// The part of what a material can hold; nothing where that is not known.
std::optional<double> filled(const cases::Region& region) {
  if (!region.material.saturation || region.material.saturation->value <= 0.0) return std::nullopt;
  return region.moisture / region.material.saturation->value;
}

bool is_named(const cases::Variant& variant, const std::string& name) {
  return std::any_of(variant.regions.begin(), variant.regions.end(),
                     [&](const cases::Region& region) { return region.name == name; });
}

/// Whether masonry at one place became wetter, though it goes by another name: of the same
/// material, or of one that the first does not have. A thicker lining moves others beside each
/// other.
bool is_wetter(const cases::Variant& first, const cases::Region& was, const cases::Region& is) {
  if (was.part != materials::Part::fabric || is.part != materials::Part::fabric) return false;
  if (was.name == is.name) return exceeds(is.moisture, was.moisture);
  if (!materials::is_mineral(was.material) || !materials::is_mineral(is.material)) return false;
  const bool same = !differs(was.material.conductivity.value, is.material.conductivity.value);
  const auto before = filled(was), after = filled(is);
  return before && after && exceeds(*after, *before) && (same || !is_named(first, is.name));
}

bool is_wetter_somewhere(const SolvedVariant& first, const SolvedVariant& later) {
  const auto drier_or_alike = [&](const geometry::Fill& was, const geometry::Fill& is) {
    const auto* before = std::get_if<RegionId>(&was);
    const auto* after = std::get_if<RegionId>(&is);
    return before == nullptr || after == nullptr ||
           !is_wetter(first.variant, first.variant.regions[*before], later.variant.regions[*after]);
  };
  return !everywhere(first.surface.field.mesh.section, later.surface.field.mesh.section,
                     [&](const geometry::Cell& was, const geometry::Cell& is) {
                       return drier_or_alike(was.below, is.below) &&
                              drier_or_alike(was.above, is.above);
                     });
}

/// Whether a material is wetter than it is anywhere in the first, or conducts better when dry.
bool is_worse_material(const cases::Variant& first, const cases::Variant& later) {
  return std::any_of(later.regions.begin(), later.regions.end(), [&](const cases::Region& is) {
    bool known = false, worse = true;
    for (const cases::Region& was : first.regions) {
      if (was.name != is.name) continue;
      known = true;
      worse = worse && (exceeds(is.moisture, was.moisture) ||
                        exceeds(is.material.conductivity.value, was.material.conductivity.value));
    }
    return known && worse;
  });
}

/// Whether a test asks for as much as another.
bool as_strict(const materials::Test& is, const materials::Test& was) {
  if (is.index() != was.index()) return false;
  if (const auto* limit = std::get_if<materials::SurfaceHumidityLimit>(&is))
    return !exceeds(limit->limit, std::get<materials::SurfaceHumidityLimit>(was).limit);
  if (const auto* factor = std::get_if<materials::FactorThreshold>(&is))
    return !exceeds(std::get<materials::FactorThreshold>(was).threshold, factor->threshold);
  return true;
}

/// Whether a test of the first is not asked of the variant, or more mildly.
bool is_judged_milder(const cases::Variant& first, const cases::Variant& later) {
  return !std::all_of(
      first.criteria.begin(), first.criteria.end(), [&](const cases::Criterion& was) {
        return std::any_of(
            later.criteria.begin(), later.criteria.end(),
            [&](const cases::Criterion& is) { return as_strict(is.test, was.test); });
      });
}

}  // namespace

bool is_remedy(const SolvedVariant& first, const SolvedVariant& later) {
  const cases::Variant& was = first.variant;
  const cases::Variant& is = later.variant;
  return !cases::is_less_vented(was, is) && !cases::loses_masonry(was, is) &&
         !is_worse_air(was, is) && !is_worse_year(was, is) && !is_worse_material(was, is) &&
         !is_wetter_somewhere(first, later) && !is_judged_milder(was, is);
}

}  // namespace quoin::tools
