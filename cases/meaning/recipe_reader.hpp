// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/grammar/reader.hpp"
#include "cases/meaning/palette.hpp"
#include "geometry/recipe.hpp"

namespace quoin::cases {

/// A reader that looks up the names of materials and spaces while it reads: for recipes.
class RecipeReader : public Reader {
 public:
  RecipeReader(const Node& map, std::string what, FaultList& faults, Palette& palette,
               const Per<SpaceId, Space>& spaces);

  void layers(std::string_view key, std::vector<geometry::Layer>& list, std::string_view about,
              std::string_view example = {});
  void optional_layers(std::string_view key, std::vector<geometry::Layer>& list,
                       std::string_view about, std::string_view example = {});
  void frame(std::string_view key, RegionId& region, std::string_view about);
  void material(std::string_view key, RegionId& region, std::string_view example,
                std::string_view about);
  void ground(std::string_view key, RegionId& region, std::string_view example,
              std::string_view about);
  void optional_material(std::string_view key, RegionId& region, std::string_view example,
                         std::string_view about);
  void optional_membrane(std::string_view key, MembraneId& membrane, std::string_view example,
                         std::string_view about);
  /// `kind`: the space meant when none is named is the only one of this kind.
  void space(std::string_view key, SpaceId& space, std::string_view kind, std::string_view about);
  /// Not valid where none is named.
  void optional_space(std::string_view key, SpaceId& space, std::string_view example,
                      std::string_view about);

 private:
  void membrane(const Node& node, std::vector<geometry::Layer>& list);
  void layer(const Node& node, std::vector<geometry::Layer>& list);
  void part(std::string_view key, RegionId& region, materials::Part part, std::string_view about);
  void refuse_cavity(PlacedName name);
  void refuse_same_air(SpaceId space);
  [[nodiscard]] SpaceId only_space(std::string_view key, std::string_view kind);

  Palette& palette_;
  const Per<SpaceId, Space>& spaces_;
  std::vector<SpaceId> airs_;  ///< of the spaces read so far
};

}  // namespace quoin::cases
