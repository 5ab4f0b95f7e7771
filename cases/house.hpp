// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/text/files.hpp"

namespace quoin::cases {

/// One section of a house.
struct HousePart {
  std::string name;  ///< as the house calls it
  std::string file;
  Case source;
};

/// Several sections of one house, read in one visit.
struct House {
  std::string title;
  std::string note;
  std::string sha256;
  std::vector<HousePart> parts;
  Survey survey;  ///< with the readings of all parts
  Household household;
};

/// Whether a text is that of a house file: it has a key `house`.
[[nodiscard]] bool is_house(std::string_view text);

/// The house that a text describes; its case files and histories are read through `files`.
/// Throws: InputError with all faults, those of the case files too.
[[nodiscard]] House house_of(std::string_view text, const std::string& file, const Files& files);

}  // namespace quoin::cases
