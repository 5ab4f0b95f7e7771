// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "materials/material.hpp"

namespace quoin::materials {

/// A paint or paper on a surface, or a sheet between materials, thin enough to resist vapour and
/// nothing else.
struct Coat {
  std::string name;  ///< as case files write it: "limewash", "0.5 m"
  double sd = 0.0;   ///< as much still air as resists vapour like it, m; infinite: tight
};

/// A coat the case file knows by name.
struct KnownCoat {
  std::string_view name;
  double sd = 0.0;   ///< of the whole build-up of coats, m
  double low = 0.0;  ///< the spread met in practice (common practice, no source)
  double high = 0.0;
  std::string_view source;
  Confidence confidence = Confidence::typical;
};

/// Every coat with a name. A new one is one line.
[[nodiscard]] std::span<const KnownCoat> known_coats();

}  // namespace quoin::materials
