// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipe.hpp"

#include <concepts>

namespace quoin::geometry {
namespace {

/// Recipes that some values make impossible say so; the others need not.
template <class Kind>
concept CanBeImpossible = requires(const Kind& recipe) {
  { objection_to(recipe) } -> std::same_as<std::optional<std::string>>;
};

}  // namespace

Drawing drawing_of(const Recipe& recipe) {
  return std::visit([](const auto& kind) { return drawing_of(kind); }, recipe);
}

bool is_vertical(const Recipe& recipe) {
  return std::visit(
      []<class Kind>(const Kind&) {
        if constexpr (requires { Kind::vertical; }) return Kind::vertical;
        return false;
      },
      recipe);
}

std::optional<std::string> objection(const Recipe& recipe) {
  return std::visit(
      []<class Kind>(const Kind& kind) -> std::optional<std::string> {
        if constexpr (CanBeImpossible<Kind>) return objection_to(kind);
        return std::nullopt;
      },
      recipe);
}

}  // namespace quoin::geometry
