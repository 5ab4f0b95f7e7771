// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "materials/material.hpp"

namespace quoin::cases {

/// The catalogue of this program one material at a time, as reading them all takes longer than
/// reading a case: each is read when it is first asked for in the process. Any thread may ask.

/// In the order of the catalogue.
[[nodiscard]] const std::vector<std::string>& shelf_names();

[[nodiscard]] bool is_on_shelf(std::string_view name);

/// The material of a name, which stays where it is; null where there is none.
[[nodiscard]] const materials::Material* from_shelf(std::string_view name);

}  // namespace quoin::cases
