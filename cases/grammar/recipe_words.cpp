// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/recipe_words.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "cases/text/spoken.hpp"

namespace quoin::cases {
namespace {

/// Words of the trade beside the recipes that draw them.
constexpr std::array<std::pair<std::string_view, std::string_view>, 31> words{{
    {"basement", "wall base"},
    {"bay", "bay corner"},
    {"bay window", "bay corner"},
    {"beam end", "floor"},
    {"cavity wall", "wall"},
    {"ceiling", "floor"},
    {"cellar", "wall base"},
    {"chimney", "chimney breast"},
    {"door", "reveal or head"},
    {"fireplace", "chimney breast"},
    {"floor joist", "floor"},
    {"foot", "wall base"},
    {"footing", "wall base"},
    {"foundation", "wall base"},
    {"ground floor", "wall base"},
    {"internal wall", "partition"},
    {"jamb", "reveal"},
    {"joist", "floor"},
    {"joist end", "floor"},
    {"lintel", "head"},
    {"partition wall", "partition"},
    {"party wall", "partition"},
    {"plinth", "wall base"},
    {"porch", "porch wall"},
    {"roof", "sheet"},
    {"slab", "wall base or floor"},
    {"soffit", "head"},
    {"suspended floor", "wall base"},
    {"window", "reveal, head or sill"},
    {"window head", "head"},
    {"window sill", "sill"},
}};

}  // namespace

std::string_view recipes_for(std::string_view word) {
  const std::string wanted = spoken(word);
  const auto* found = std::find_if(words.begin(), words.end(),
                                   [&](const auto& known) { return known.first == wanted; });
  return found == words.end() ? std::string_view() : found->second;
}

}  // namespace quoin::cases
