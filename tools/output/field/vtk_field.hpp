// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The field of one variant, for the surface-temperature purpose, as a VTK XML rectilinear grid
/// (.vtr). Units are in the names of the arrays; lengths are m.
///
/// On the nodes: temperature_C and the share of each space's temperature, share_of_<space>; NaN
/// where there is no material. On the cells: heat_flux_W_m2, conductivity_W_mK, material (the
/// position in the field data material_names) and solid (1 in material, 0 in spaces and gaps).
/// vtkGhostType hides what is not solid from viewers that heed it. A variant that was solved in
/// triangles is an unstructured grid of these instead (.vtu, vtk_triangles.hpp).
/// Throws: PartError.
[[nodiscard]] std::string field_file(const SolvedVariant& solved);

/// How the name of that file ends: one of these.
inline constexpr std::string_view on_a_grid = ".vtr", in_triangles = ".vtu";
[[nodiscard]] std::string_view field_ending(const SolvedVariant& solved);

/// An index (.vtm) of the fields of all variants as named blocks.
/// Shape: `file_names` one for each name.
[[nodiscard]] std::string fields_vtm(const std::vector<std::string>& names,
                                     const std::vector<std::string>& file_names);

}  // namespace quoin::tools

extern "C" {
/// What the part of the program behind field_file offers, with VTK behind it: true and the text of
/// the file, or false and the reason why there is none.
[[gnu::visibility("default")]] bool quoin_vtk_field(const quoin::tools::SolvedVariant& solved,
                                                    std::string& text) noexcept;
}
