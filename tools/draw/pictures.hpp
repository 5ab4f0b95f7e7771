// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/answer/results/results.hpp"
#include "tools/draw/canvas/picture.hpp"

namespace quoin::tools {

/// The pictures of a case, drawn once for files, page and PDF. Shape: lists have one a variant.
struct Pictures {
  std::vector<Picture> sections;
  std::vector<Picture> fields;
  std::vector<Picture> flows;
  Picture surface;   ///< may be empty
  Picture compare;   ///< may be empty
  Picture readings;  ///< may be empty
  Picture odds;      ///< may be empty
  Picture chances;   ///< may be empty
};

[[nodiscard]] Pictures pictures_of(const Results& results);

}  // namespace quoin::tools
