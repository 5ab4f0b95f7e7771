// SPDX-License-Identifier: Apache-2.0
#include "tools/output/field/vtk_arrays.hpp"

#include <vtkFieldData.h>
#include <vtkStringArray.h>

namespace quoin::tools {

void add_names(vtkDataObject& grid, const cases::Variant& variant) {
  vtkNew<vtkStringArray> names;
  names->SetName("material_names");
  for (const cases::Region& region : variant.regions) names->InsertNextValue(region.name);
  grid.GetFieldData()->AddArray(names);
  vtkNew<vtkStringArray> name;
  name->SetName("variant");
  name->InsertNextValue(variant.name);
  grid.GetFieldData()->AddArray(name);
}

}  // namespace quoin::tools
