// SPDX-License-Identifier: Apache-2.0
#include "tools/door/handles.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "cases/grammar/layers_alone.hpp"
#include "cases/meaning/merge.hpp"
#include "geometry/recipe.hpp"
#include "geometry/section.hpp"
#include "tools/door/edges.hpp"

namespace quoin::door {
namespace {

using cases::Node;
using geometry::Fill;
using geometry::RegionId;
using geometry::Section;
using geometry::SpaceId;

constexpr double thinnest = 0.0001;  ///< as the grammar takes layers, m
constexpr double thickest = 5.0;

/// One layer of a recipe.
struct Tagged {
  std::string list;
  std::size_t position = 0;  ///< among the layers of its list
  std::string material;
  double thickness = 0.0;
  RegionId tag;    ///< that only this layer has
  RegionId outer;  ///< the tag of the layer behind it; not valid: none
  RegionId inner;  ///< of the layer before it
};

/// A visitor that gives every layer a region of its own.
class Tagger : public cases::LayersAlone<Tagger> {
 public:
  explicit Tagger(const cases::Variant& variant)
      : variant_(variant), next_(variant.regions.size()) {}

  std::vector<Tagged> layers_met;
  SpaceId inside;

  void layers(std::string_view key, std::vector<geometry::Layer>& list, std::string_view,
              std::string_view = {}) {
    const std::size_t first = layers_met.size();
    for (std::size_t k = 0; k < list.size(); ++k) {
      Tagged one{std::string(key),
                 k,
                 variant_.regions[list[k].region].name,
                 list[k].thickness,
                 RegionId{static_cast<decltype(RegionId::index)>(next_++)},
                 {},
                 {}};
      if (k > 0) {
        one.inner = layers_met.back().tag;
        layers_met[first + k - 1].outer = one.tag;
      }
      list[k].region = one.tag;
      layers_met.push_back(std::move(one));
    }
  }
  void space(std::string_view key, SpaceId space, std::string_view, std::string_view) {
    if (key == "inside") inside = space;
  }

 private:
  const cases::Variant& variant_;
  std::size_t next_;
};

/// The edges of a layer on its room's side: towards the layer before it, else away from the one
/// behind it, else towards the room.
std::vector<Piece> room_edges(const Section& section, const Tagged& layer, SpaceId inside) {
  const std::vector<Piece> all = edges_of(section, layer.tag);
  std::vector<Piece> chosen;
  const auto take = [&](const auto& is_wanted) {
    if (chosen.empty()) std::copy_if(all.begin(), all.end(), std::back_inserter(chosen), is_wanted);
  };
  if (layer.inner.valid()) {
    take([&](const Piece& piece) { return piece.beyond == Fill{layer.inner}; });
  } else {
    take([&](const Piece& piece) {
      if (!layer.outer.valid()) return piece.beyond == Fill{inside};
      return std::any_of(all.begin(), all.end(), [&](const Piece& other) {
        return other.beyond == Fill{layer.outer} && opposite(other, piece) &&
               std::holds_alternative<SpaceId>(piece.beyond);
      });
    });
  }
  return chosen;
}

/// The longest piece along each axis and way: what a finger takes hold of.
std::vector<Piece> longest(const std::vector<Piece>& pieces) {
  std::map<std::pair<char, bool>, Piece> best;
  for (const Piece& piece : pieces) {
    Piece& held = best.try_emplace({piece.axis(), piece.grows() > 0.0}, piece).first->second;
    if (piece.length() > held.length()) held = piece;
  }
  std::vector<Piece> all;
  for (const auto& [side, piece] : best) all.push_back(piece);
  return all;
}

const Node* inner(const Node* node, std::string_view key) {
  const cases::Entry* entry = node == nullptr ? nullptr : node->find(key);
  return entry == nullptr ? nullptr : &entry->value;
}

/// The items of a list of layers that are layers, with their positions in the list.
std::vector<std::pair<std::size_t, const Node*>> written_layers(const Node& list) {
  std::vector<std::pair<std::size_t, const Node*>> layers;
  for (std::size_t k = 0; k < list.items.size(); ++k) {
    if (list.items[k].find("membrane") == nullptr) layers.emplace_back(k, &list.items[k]);
  }
  return layers;
}

const Node* thickness_in(const Node& layer) {
  if (layer.kind == Node::Kind::sequence) return layer.items.size() > 1 ? &layer.items[1] : nullptr;
  return inner(&layer, "thickness");
}

/// A handle without its edge.
std::optional<Handle> handle_at(const Written& written, const Node* value) {
  const Place* place = value == nullptr ? nullptr : written.written(*value);
  if (place == nullptr || value->kind != Node::Kind::scalar) return std::nullopt;
  Handle handle;
  handle.path = place->path;
  handle.text = value->text;
  return handle;
}

void put_edge(Handle& handle, const Piece& piece) {
  handle.axis = piece.axis();
  handle.grows = piece.grows();
  handle.from = piece.from;
  handle.to = piece.to;
}

std::vector<Handle> handles_of_layers(const Written& written, const cases::Variant& variant,
                                      const Node& recipe_node) {
  geometry::Recipe recipe = *variant.recipe;
  Tagger tagger(variant);
  std::visit([&](auto& one) { describe(tagger, one); }, recipe);
  const Section section = geometry::section_of(geometry::drawing_of(recipe).sheet);
  std::vector<Handle> handles;
  for (const Tagged& layer : tagger.layers_met) {
    const Node* list = inner(&recipe_node, layer.list);
    if (list == nullptr) continue;
    const auto layers = written_layers(*list);
    if (layer.position >= layers.size()) continue;
    std::optional<Handle> handle = handle_at(written, thickness_in(*layers[layer.position].second));
    if (!handle) continue;
    handle->value = layer.thickness;
    handle->low = thinnest;
    handle->high = thickest;
    handle->list = layer.list;
    handle->layer = layers[layer.position].first;
    handle->material = layer.material;
    for (const Piece& piece : longest(room_edges(section, layer, tagger.inside))) {
      put_edge(*handle, piece);
      handles.push_back(*handle);
    }
  }
  return handles;
}

/// A length as the case file writes it, m; nothing where it is none.
std::optional<double> length_of(const Node& node) {
  constexpr double far = 1e6;
  const auto length = cases::quantity_of(node.text, cases::Measure::length, {-far, far, {}});
  const double* value = std::get_if<double>(&length);
  return value == nullptr ? std::nullopt : std::optional(*value);
}

/// The edges of one area that is written by x and y.
void add_area(const Written& written, const Node& item, std::size_t number,
              std::vector<Handle>& handles) {
  const Node* sides[2] = {inner(&item, "x"), inner(&item, "y")};
  double ends[2][2];
  for (std::size_t s = 0; s < 2; ++s) {
    if (sides[s] == nullptr || sides[s]->items.size() != 2) return;
    for (std::size_t e = 0; e < 2; ++e) {
      const std::optional<double> at = length_of(sides[s]->items[e]);
      if (!at) return;
      ends[s][e] = *at;
    }
  }
  const Node* fill = inner(&item, "fill");
  for (std::size_t s = 0; s < 2; ++s) {
    for (std::size_t e = 0; e < 2; ++e) {
      std::optional<Handle> handle = handle_at(written, &sides[s]->items[e]);
      if (!handle) continue;
      handle->value = ends[s][e];
      handle->low = e == 0 ? -thickest * 20.0 : ends[s][0] + thinnest;
      handle->high = e == 0 ? ends[s][1] - thinnest : thickest * 20.0;
      handle->list = "sheet";
      handle->layer = number;
      if (fill != nullptr) handle->material = fill->text;
      // Its number grows to the right or up.
      const double at = ends[s][e], low = ends[1 - s][0], high = ends[1 - s][1];
      put_edge(*handle,
               s == 0 ? Piece{{at, low}, {at, high}, {}} : Piece{{high, at}, {low, at}, {}});
      handles.push_back(*std::move(handle));
    }
  }
}

}  // namespace

cases::Node tree_of_variant(const Written& written, const cases::Variant& variant) {
  Node tree = written.root();
  const Node* by = inner(inner(&written.root(), "variants"), variant.name);
  if (by != nullptr && by->kind == Node::Kind::map) {
    cases::FaultList faults("", written.text());
    cases::merge(tree, *by, faults);
  }
  return tree;
}

std::vector<Handle> handles_of(const Written& written, const cases::Variant& variant) {
  const Node tree = tree_of_variant(written, variant);
  const Node* section = inner(&tree, "section");
  if (section == nullptr) return {};
  if (variant.recipe) {
    const std::string_view name = std::visit(
        [](const auto& recipe) { return std::string_view(recipe.name); }, *variant.recipe);
    const Node* recipe = inner(section, name);
    return recipe == nullptr ? std::vector<Handle>{} : handles_of_layers(written, variant, *recipe);
  }
  std::vector<Handle> handles;
  const Node* sheet = inner(section, "sheet");
  for (std::size_t k = 0; sheet != nullptr && k < sheet->items.size(); ++k)
    add_area(written, sheet->items[k], k, handles);
  return handles;
}

}  // namespace quoin::door
