// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>
#include <vector>

#include "cases/grammar/vocabulary.hpp"
#include "geometry/recipe.hpp"

namespace quoin::cases {

/// A visitor of recipes that is after their lists of layers, by its own layers(key, list, about),
/// and passes over all else. It may have other words of its own in place of these.
template <class Visitor>
class LayersAlone : public Vocabulary<Visitor> {
 public:
  void optional_layers(std::string_view key, std::vector<geometry::Layer>& list,
                       std::string_view about, std::string_view = {}) {
    static_cast<Visitor&>(*this).layers(key, list, about);
  }

  template <class T>
  void quantity(std::string_view, T&, Measure, Range, std::string_view) {}
  template <class T>
  void choice(std::string_view, T&, const Words<Plain<T>>&, std::string_view) {}
  void frame(std::string_view, geometry::RegionId, std::string_view) {}
  void material(std::string_view, geometry::RegionId, std::string_view, std::string_view) {}
  void ground(std::string_view, geometry::RegionId, std::string_view, std::string_view) {}
  void optional_material(std::string_view, geometry::RegionId, std::string_view, std::string_view) {
  }
  void optional_membrane(std::string_view, geometry::MembraneId, std::string_view,
                         std::string_view) {}
  void space(std::string_view, geometry::SpaceId, std::string_view, std::string_view) {}
  void optional_space(std::string_view, geometry::SpaceId, std::string_view, std::string_view) {}
};

}  // namespace quoin::cases
