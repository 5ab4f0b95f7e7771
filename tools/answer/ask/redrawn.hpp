// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cases/model/case.hpp"

namespace quoin::tools {

/// A variant with every layer of a material given another thickness, m; nothing where its section
/// is no recipe or has no such layer, or cannot be built with it.
[[nodiscard]] std::optional<cases::Variant> with_thickness(const cases::Variant& variant,
                                                           const std::string& material,
                                                           double thickness);

/// The lists of the recipe that have a material as a layer, whose thickness can be changed: one
/// name for each such layer.
[[nodiscard]] std::vector<std::string> layers_of(const cases::Variant& variant,
                                                 const std::string& material);

/// A variant whose legs, as far as its file states them shorter than ISO 10211 wants cut planes to
/// be away, have the length that the recipe gives them by itself; nothing where none is shorter.
[[nodiscard]] std::optional<cases::Variant> with_full_legs(const cases::Variant& variant);

/// A variant whose legs, stated or not, are at least so long, m; nothing where its section is no
/// recipe, or has no shorter one.
[[nodiscard]] std::optional<cases::Variant> with_legs(const cases::Variant& variant, double length);

/// A variant with every region of a material given another moisture, m3/m3; nothing where the
/// section shows none.
[[nodiscard]] std::optional<cases::Variant> with_moisture(const cases::Variant& variant,
                                                          const std::string& material,
                                                          double moisture);

}  // namespace quoin::tools
