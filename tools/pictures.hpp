// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/picture.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The pictures of a case, drawn once for files, page and PDF. Shape: lists have one a variant.
struct Pictures {
  std::vector<Picture> sections;
  std::vector<Picture> fields;
  std::vector<Picture> flows;
  std::string surface;  ///< finished, with the author's note; may be empty
  std::string compare;  ///< finished, with the author's note; may be empty
};

[[nodiscard]] Pictures pictures_of(const Results& results);

}  // namespace quoin::tools
