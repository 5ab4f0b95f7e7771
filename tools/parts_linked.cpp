// SPDX-License-Identifier: Apache-2.0
// Instead of parts.cpp in a program that holds its parts itself.
#include <array>
#include <string_view>

#include "tools/draw/canvas/cairo_paint.hpp"
#include "tools/parts.hpp"
#include "tools/vtk_field.hpp"

namespace quoin::tools {

PartFunction function_of(const std::string& part, const char* name, std::string& reason) {
  struct Known {
    std::string_view name;
    PartFunction function;
  };
  static const std::array<Known, 3> known{{
      {"quoin_paint_pdf", reinterpret_cast<PartFunction>(&quoin_paint_pdf)},
      {"quoin_paint_png", reinterpret_cast<PartFunction>(&quoin_paint_png)},
      {"quoin_vtk_field", reinterpret_cast<PartFunction>(&quoin_vtk_field)},
  }};
  for (const Known& one : known) {
    if (one.name == name) return one.function;
  }
  reason = "this program has no part \"" + part + "\" with " + name;
  return nullptr;
}

}  // namespace quoin::tools
