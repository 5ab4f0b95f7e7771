// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/text/fault_list.hpp"
#include "materials/material.hpp"

namespace quoin::cases {

/// The materials a case may name, in the order of the text.
struct Catalogue {
  std::vector<materials::Material> materials;

  [[nodiscard]] const materials::Material* find(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> names() const;
};

/// The catalogue a text holds. `file` names it in faults.
/// Throws: InputError with all faults of the text.
[[nodiscard]] Catalogue catalogue_of(std::string_view text, const std::string& file);

/// The catalogue of this program.
[[nodiscard]] Catalogue catalogue();

/// Replaces those values of a material that are written.
void apply(const WrittenMaterial& written, materials::Material& material);

}  // namespace quoin::cases
