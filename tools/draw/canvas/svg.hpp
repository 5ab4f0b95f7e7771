// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/draw/canvas/picture.hpp"

namespace quoin::tools {

/// A picture as the text of an SVG file; empty where there is none. Nothing in it depends on
/// locale, clock or the order of a hash.
[[nodiscard]] std::string svg_of(const Picture& picture);

/// A number as pictures print it: at most two decimals, no trailing zeros, no "-0".
[[nodiscard]] std::string number(double value);

}  // namespace quoin::tools
