// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/recipe_words.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace quoin::cases {
namespace {

/// Words of the trade beside the recipes that draw them.
constexpr std::array<std::pair<std::string_view, std::string_view>, 9> words{{
    {"bay", "bay corner"},
    {"chimney", "chimney breast"},
    {"foot", "wall base"},
    {"jamb", "reveal"},
    {"joist", "floor"},
    {"lintel", "head"},
    {"plinth", "wall base"},
    {"porch", "porch wall"},
    {"window", "reveal, head or sill"},
}};

}  // namespace

std::string_view recipes_for(std::string_view word) {
  const auto* found = std::find_if(words.begin(), words.end(),
                                   [&](const auto& known) { return known.first == word; });
  return found == words.end() ? std::string_view() : found->second;
}

}  // namespace quoin::cases
