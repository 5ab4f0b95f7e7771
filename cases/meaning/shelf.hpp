// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "cases/meaning/catalogue.hpp"

namespace quoin::cases {

/// The catalogue of this program, each material read when it is first asked for: reading them all
/// takes longer than reading a case.
class Shelf {
 public:
  Shelf();

  [[nodiscard]] const std::vector<std::string>& names() const { return names_; }
  [[nodiscard]] bool has(std::string_view name) const;

  /// The material of a name; null where there is none.
  [[nodiscard]] const materials::Material* find(std::string_view name);

 private:
  std::string head_;                  ///< what precedes the materials
  std::vector<std::string> names_;    ///< in the order of the catalogue
  std::vector<std::string> entries_;  ///< the text of each
  std::map<std::string, materials::Material, std::less<>> read_;
};

}  // namespace quoin::cases
