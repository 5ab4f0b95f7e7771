// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/made_alike.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "cases/grammar/layers_alone.hpp"
#include "geometry/recipe.hpp"

namespace quoin::tools {
namespace {

/// One input of a recipe as far as two are compared by it.
struct Input {
  std::string key;
  bool there = true;
  double value = 0.0;
  double apart = 0.0;  ///< what may lie between two alike, in its unit, besides their third
};

/// A visitor that collects the make-up of a recipe.
class MakeUp : public cases::LayersAlone<MakeUp> {
 public:
  explicit MakeUp(const cases::Variant& variant) : variant_(variant) {}

  std::vector<Input> inputs;

  void layers(std::string_view key, const std::vector<geometry::Layer>& list, std::string_view,
              std::string_view = {}) {
    const bool of_wall =
        key == "layers" ||
        (key == "lining" && std::holds_alternative<geometry::Partition>(*variant_.recipe));
    if (of_wall) return;
    constexpr double a_coat = 0.03;  // m2K/W, of plaster
    double resistance = 0.0;
    for (const geometry::Layer& layer : list)
      resistance += layer.thickness / variant_.regions[layer.region].material.conductivity.value;
    add({std::string(key), !list.empty(), resistance, a_coat});
  }
  void quantity(std::string_view key, double value, cases::Measure, cases::Range,
                std::string_view) {
    constexpr double a_little = 0.02;  // m
    add({std::string(key), true, value, a_little});
  }
  void quantity(std::string_view key, const std::optional<double>& value, cases::Measure,
                cases::Range, std::string_view) {
    constexpr double a_little = 0.02;  // m
    const bool to_a_cut_plane = key == "leg" || key.ends_with(" length");
    if (!to_a_cut_plane) add({std::string(key), value.has_value(), value.value_or(0.0), a_little});
  }
  template <class T>
  void choice(std::string_view key, const T& value, const cases::Words<cases::Plain<T>>& words,
              std::string_view) {
    double number = 0.0;
    for (const auto& [word, meaning] : words) {
      if (value == meaning) break;
      number += 1.0;
    }
    add({fmt::format("{}: {:.0f}", key, number), true, 0.0, 0.0});
  }
  void frame(std::string_view key, geometry::RegionId id, std::string_view) { of(key, id); }
  void material(std::string_view key, geometry::RegionId id, std::string_view, std::string_view) {
    of(key, id);
  }
  void ground(std::string_view key, geometry::RegionId id, std::string_view, std::string_view) {
    of(key, id);
  }
  void optional_material(std::string_view key, geometry::RegionId id, std::string_view,
                         std::string_view) {
    of(key, id);
  }
  void optional_space(std::string_view key, geometry::SpaceId id, std::string_view,
                      std::string_view) {
    add({std::string(key), id.valid(), 0.0, 0.0});
  }

 private:
  void add(Input input) { inputs.push_back(std::move(input)); }
  void of(std::string_view key, geometry::RegionId id) {
    const double conductivity = id.valid() ? variant_.regions[id].material.conductivity.value : 0.0;
    add({std::string(key), id.valid(), conductivity, 0.0});
  }

  const cases::Variant& variant_;
};

std::vector<Input> make_up(const cases::Variant& variant) {
  MakeUp collected(variant);
  geometry::Recipe recipe = *variant.recipe;
  std::visit([&](auto& kind) { describe(collected, kind); }, recipe);
  return collected.inputs;
}

bool alike(const Input& one, const Input& other) {
  const double apart = std::max({std::abs(one.value) / 3, std::abs(other.value) / 3, one.apart});
  return one.key == other.key && one.there == other.there &&
         std::abs(one.value - other.value) <= apart;
}

/// Whether there is one room and one outside, and nothing about their surfaces is the author's own.
bool has_plain_surfaces(const cases::Variant& variant) {
  std::size_t rooms = 0;
  for (const cases::Space& space : variant.spaces) {
    if (space.is == cases::SpaceKind::unheated || space.resistance || space.wind || space.sky ||
        space.evaporation || space.frame_corners || space.heat || space.in_layer.valid())
      return false;
    rooms += space.is == cases::SpaceKind::inside ? 1u : 0u;
  }
  return variant.spaces.size() == 2 && rooms == 1;
}

}  // namespace

bool made_alike(const cases::Variant& one, const cases::Variant& other) {
  if (!one.recipe || !other.recipe || one.recipe->index() != other.recipe->index()) return false;
  if (!has_plain_surfaces(one) || !has_plain_surfaces(other)) return false;
  const std::vector<Input> here = make_up(one), there = make_up(other);
  return std::equal(here.begin(), here.end(), there.begin(), there.end(), alike);
}

}  // namespace quoin::tools
