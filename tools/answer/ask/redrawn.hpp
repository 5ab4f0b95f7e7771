// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

#include "cases/model/case.hpp"

namespace quoin::tools {

/// A variant with every layer of a material given another thickness, m; nothing where its section
/// is no recipe or has no such layer, or cannot be built with it.
[[nodiscard]] std::optional<cases::Variant> with_thickness(const cases::Variant& variant,
                                                           const std::string& material,
                                                           double thickness);

/// Whether a material is a layer of the recipe, whose thickness can be changed.
[[nodiscard]] bool has_layer(const cases::Variant& variant, const std::string& material);

/// A variant with every region of a material given another moisture, m3/m3; nothing where the
/// section shows none.
[[nodiscard]] std::optional<cases::Variant> with_moisture(const cases::Variant& variant,
                                                          const std::string& material,
                                                          double moisture);

}  // namespace quoin::tools
