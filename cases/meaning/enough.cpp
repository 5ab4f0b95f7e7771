// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/enough.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "cases/model/painted.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

std::string thickness_of(const Variant& variant) {
  return variant.enough.thickness ? variant.enough.thickness->of : std::string();
}

std::string moisture_of(const Variant& variant) { return variant.enough.moisture_of; }

/// A material asked about in one way must be shown where it is asked about, at least once.
template <class Of>
void check_shown(const std::vector<Variant>& variants, std::size_t v, Of of, Mark mark,
                 FaultList& faults) {
  const std::string material = of(variants[v]);
  if (material.empty()) return;
  const bool any = std::any_of(variants.begin(), variants.end(), [&](const Variant& variant) {
    return of(variant) == material && shown(variant, material) != nullptr;
  });
  if (any) return;
  faults.add(mark, {fmt::format("no section that `enough` is asked of shows '{}'", material),
                    material, "a material of a layer",
                    fmt::format("draw a variant with it: layers: [..., [{}, 40], ...]", material)});
}

void check_holds_water(const Variant& variant, Mark mark, FaultList& faults) {
  const std::string& material = variant.enough.moisture_of;
  if (material.empty()) return;
  const Region* region = shown(variant, material);
  if (region == nullptr || region->material.saturation) return;
  faults.add(mark, {fmt::format("how much water '{}' can hold is not known", material), material,
                    "a material with a saturation", "give it one: saturation: 0.25 m3/m3"});
}

}  // namespace

Enough enough_of(const WrittenEnough& written, const Node& node, const Palette& palette,
                 FaultList& faults) {
  Enough enough;
  const auto check = [&](const std::string& material, const Entry& group) {
    const Entry* named = group.value.find("of");
    if (material.empty() || palette.knows(material)) return;
    faults.add(
        named == nullptr ? group.value.mark : named->value.mark,
        {fmt::format("unknown material '{}'", material), material,
         "a name from `materials` or the catalogue", did_you_mean(material, palette.names())});
  };
  if (const auto& thickness = written.thickness) {
    enough.thickness = {thickness->of, thickness->from, thickness->to};
    const Entry& group = *node.find("thickness");
    check(thickness->of, group);
    if (thickness->from >= thickness->to) {
      faults.add(group.value.mark, {"the thicknesses are the wrong way round", "",
                                    "from: the least, up to: the greatest", ""});
    }
  }
  if (const auto& moisture = written.moisture) {
    enough.moisture_of = moisture->of;
    const Entry& group = *node.find("moisture");
    check(moisture->of, group);
    if (palette.is_cavity(moisture->of)) {
      faults.add(group.value.mark, {fmt::format("the air cavity '{}' holds no water", moisture->of),
                                    "", "a material that does", ""});
    }
  }
  return enough;
}

AskedEnough asked_enough(const Node& tree) {
  AskedEnough asked;
  const Entry* enough = tree.find("enough");
  if (enough == nullptr) return asked;
  if (const Entry* group = enough->value.find("thickness")) asked.thickness = group->value.mark;
  if (const Entry* group = enough->value.find("moisture")) asked.moisture = group->value.mark;
  return asked;
}

void check_enough(const std::vector<Variant>& variants, const std::vector<AskedEnough>& asked,
                  FaultList& faults) {
  for (std::size_t v = 0; v < variants.size(); ++v) {
    faults.enter_variant(v == 0 ? "" : variants[v].name);
    check_shown(variants, v, thickness_of, asked[v].thickness, faults);
    check_shown(variants, v, moisture_of, asked[v].moisture, faults);
    check_holds_water(variants[v], asked[v].moisture, faults);
  }
}

}  // namespace quoin::cases
