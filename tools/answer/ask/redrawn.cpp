// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/ask/redrawn.hpp"

#include <algorithm>
#include <limits>
#include <string_view>
#include <variant>
#include <vector>

#include "cases/grammar/layers_alone.hpp"
#include "cases/meaning/drawn.hpp"
#include "cases/meaning/frame_corners.hpp"
#include "cases/meaning/open_layers.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {
namespace {

/// A visitor that gives every layer of a material another thickness.
class Thickness : public cases::LayersAlone<Thickness> {
 public:
  Thickness(const cases::Variant& variant, const std::string& material, double thickness)
      : variant_(variant), material_(material), thickness_(thickness) {}

  std::vector<std::string> met;  ///< the lists it is a layer of, once for each layer

  void layers(std::string_view key, std::vector<geometry::Layer>& list, std::string_view,
              std::string_view = {}) {
    for (geometry::Layer& layer : list) {
      if (variant_.regions[layer.region].name != material_ || layer.hollow) continue;
      layer.thickness = thickness_;
      met.emplace_back(key);
    }
  }

 private:
  const cases::Variant& variant_;
  const std::string& material_;
  double thickness_;
};

/// A visitor that replaces lengths up to cut planes, where they are shorter than is wanted.
class LongerLegs : public cases::LayersAlone<LongerLegs> {
 public:
  /// `instead`: the length given to them; absent: the one that the recipe gives by itself, to those
  /// that are stated.
  LongerLegs(double wanted, std::optional<double> instead) : wanted_(wanted), instead_(instead) {}

  bool met = false;

  void layers(std::string_view, std::vector<geometry::Layer>&, std::string_view,
              std::string_view = {}) {}
  template <class T>
  void quantity(std::string_view, T&, cases::Measure, cases::Range, std::string_view) {}
  void quantity(std::string_view key, std::optional<double>& value, cases::Measure, cases::Range,
                std::string_view) {
    const bool to_a_cut_plane = key == "leg" || key.ends_with(" length");
    const bool is_short = value ? *value <= wanted_ - geometry::snap : instead_.has_value();
    if (!to_a_cut_plane || !is_short) return;
    value = instead_;
    met = true;
  }

 private:
  double wanted_;
  std::optional<double> instead_;
};

struct Extent {
  double low = std::numeric_limits<double>::infinity();
  double high = -std::numeric_limits<double>::infinity();
};

Extent extent(const geometry::Sheet& sheet, double geometry::Point::*coordinate) {
  Extent result;
  for (const geometry::Patch& patch : sheet) {
    for (const geometry::Point corner : patch.outline) {
      result.low = std::min(result.low, corner.*coordinate);
      result.high = std::max(result.high, corner.*coordinate);
    }
  }
  return result;
}

/// Paints the bands of the old sheet over the new one; those that reached its ends reach the new
/// ends.
void add_bands(const geometry::Sheet& before, geometry::Sheet& after) {
  const geometry::Sheet drawn = after;
  for (geometry::Patch band : before) {
    if (!band.only_over) continue;
    for (double geometry::Point::*const coordinate : {&geometry::Point::x, &geometry::Point::y}) {
      const Extent was = extent(before, coordinate);
      const Extent is = extent(drawn, coordinate);
      for (geometry::Point& corner : band.outline) {
        if (corner.*coordinate == was.low) corner.*coordinate = is.low;
        if (corner.*coordinate == was.high) corner.*coordinate = is.high;
      }
    }
    after.push_back(std::move(band));
  }
}

/// The variant with its recipe, which was changed, drawn anew; nothing where it cannot be built.
std::optional<cases::Variant> redrawn(const cases::Variant& before, cases::Variant changed) {
  if (geometry::objection(*changed.recipe)) return std::nullopt;
  cases::show(geometry::drawing_of(*changed.recipe), changed);
  add_bands(before.sheet, changed.sheet);
  if (cases::open_layers(changed)) return std::nullopt;
  cases::paint_frame_corners(changed);
  return changed;
}

std::optional<cases::Variant> changed_by(LongerLegs change, const cases::Variant& variant) {
  if (!variant.recipe) return std::nullopt;
  cases::Variant result = variant;
  std::visit([&](auto& recipe) { describe(change, recipe); }, *result.recipe);
  if (!change.met) return std::nullopt;
  return redrawn(variant, std::move(result));
}

}  // namespace

std::optional<cases::Variant> with_thickness(const cases::Variant& variant,
                                             const std::string& material, double thickness) {
  if (!variant.recipe) return std::nullopt;
  cases::Variant result = variant;
  Thickness change(variant, material, thickness);
  std::visit([&](auto& recipe) { describe(change, recipe); }, *result.recipe);
  if (change.met.empty()) return std::nullopt;
  return redrawn(variant, std::move(result));
}

std::optional<cases::Variant> with_full_legs(const cases::Variant& variant) {
  return changed_by(LongerLegs(geometry::cut_distance(variant.thickness), std::nullopt), variant);
}

std::optional<cases::Variant> with_legs(const cases::Variant& variant, double length) {
  return changed_by(LongerLegs(length, length), variant);
}

std::vector<std::string> layers_of(const cases::Variant& variant, const std::string& material) {
  if (!variant.recipe) return {};
  geometry::Recipe recipe = *variant.recipe;
  Thickness change(variant, material, 0.0);
  std::visit([&](auto& one) { describe(change, one); }, recipe);
  return change.met;
}

std::optional<cases::Variant> with_moisture(const cases::Variant& variant,
                                            const std::string& material, double moisture) {
  cases::Variant result = variant;
  bool met = false;
  for (cases::Region& region : result.regions) {
    if (region.name != material) continue;
    region.moisture = moisture;
    met = true;
  }
  if (!met || cases::open_layers(result)) return std::nullopt;
  return result;
}

}  // namespace quoin::tools
