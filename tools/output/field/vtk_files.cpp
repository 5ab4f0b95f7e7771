// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <iterator>

#include "tools/draw/canvas/xml.hpp"
#include "tools/output/field/vtk_field.hpp"
#include "tools/parts/parts.hpp"

namespace quoin::tools {

std::string field_file(const SolvedVariant& solved) {
  return made_by<decltype(quoin_vtk_field)>("vtk", "quoin_vtk_field", "a field cannot be written",
                                            solved);
}

std::string_view field_ending(const SolvedVariant& solved) {
  return solved.surface.triangles ? in_triangles : on_a_grid;
}

std::string fields_vtm(const std::vector<std::string>& names,
                       const std::vector<std::string>& file_names) {
  std::string text =
      "<?xml version=\"1.0\"?>\n"
      "<VTKFile type=\"vtkMultiBlockDataSet\" version=\"1.0\" byte_order=\"LittleEndian\">\n"
      "  <vtkMultiBlockDataSet>\n";
  for (std::size_t k = 0; k < names.size(); ++k) {
    fmt::format_to(std::back_inserter(text),
                   "    <DataSet index=\"{}\" name=\"{}\" file=\"{}\"/>\n", k, escaped(names[k]),
                   escaped(file_names[k]));
  }
  return text + "  </vtkMultiBlockDataSet>\n</VTKFile>\n";
}

}  // namespace quoin::tools
