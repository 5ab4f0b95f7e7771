// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "cases/model/case.hpp"

namespace quoin::cases {

/// A variant as a case file of its own, its section as a sheet of painted areas. It reads back to
/// the same section and the same physics.
[[nodiscard]] std::string sheet_text(const Variant& variant);

/// A material as the map a case file would define it with, in braces.
[[nodiscard]] std::string material_text(const materials::Material& material);

}  // namespace quoin::cases
