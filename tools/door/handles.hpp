// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "cases/model/case.hpp"
#include "tools/door/written.hpp"

namespace quoin::door {

/// The edge of a drawn layer, or of an area of a sheet, and the value that moves it.
struct Handle {
  std::string path;      ///< of the value, where it is written
  std::string text;      ///< the value as written
  double value = 0.0;    ///< m
  double low = 0.0;      ///< m
  double high = 0.0;     ///< m
  char axis = 'x';       ///< along which it moves
  double grows = 1.0;    ///< of the value for each metre that the edge moves up that axis: 1 or
                         ///< -1, of a slope less
  geometry::Point from;  ///< in the section, m
  geometry::Point to;
  std::string list;       ///< the key of its list: "layers", "sheet"
  std::size_t layer = 0;  ///< its position there, membranes counted
  std::string material;
};

/// The handles of a variant of a case.
[[nodiscard]] std::vector<Handle> handles_of(const Written& written, const cases::Variant& variant);

/// The tree of a variant, as it is read: the case with what the variant replaces.
[[nodiscard]] cases::Node tree_of_variant(const Written& written, const cases::Variant& variant);

}  // namespace quoin::door
