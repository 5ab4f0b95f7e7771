// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <vtkCellArray.h>
#include <vtkContourFilter.h>
#include <vtkDoubleArray.h>
#include <vtkIdList.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkPolyData.h>

#include <cmath>

#include "tests/support/within.hpp"
#include "tests/tools/small_case.hpp"
#include "tools/draw/field/isotherms.hpp"
#include "tools/run.hpp"

using namespace quoin;
using quoin::testing::WithinRel;

namespace {

/// The solid cells of a mesh as polygons with the temperature on their corners.
vtkNew<vtkPolyData> polygons(const geometry::Mesh& mesh, const std::vector<double>& temperature) {
  vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  vtkNew<vtkDoubleArray> values;
  values->SetName("temperature_C");
  for (std::size_t n = 0; n < temperature.size(); ++n) {
    points->InsertNextPoint(mesh.place(n).x, mesh.place(n).y, 0.0);
    values->InsertNextValue(temperature[n]);
  }
  vtkNew<vtkCellArray> cells;
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      if (!std::holds_alternative<geometry::RegionId>(mesh.cell(i, j).below)) continue;
      cells->InsertNextCell({static_cast<vtkIdType>(mesh.node(i, j)),
                             static_cast<vtkIdType>(mesh.node(i + 1, j)),
                             static_cast<vtkIdType>(mesh.node(i + 1, j + 1)),
                             static_cast<vtkIdType>(mesh.node(i, j + 1))});
    }
  }
  vtkNew<vtkPolyData> data;
  data->SetPoints(points);
  data->SetPolys(cells);
  data->GetPointData()->SetScalars(values);
  return data;
}

/// Length of what VTK's contour filter draws for a level.
double contour_length(vtkPolyData* data, double level) {
  vtkNew<vtkContourFilter> filter;
  filter->SetInputData(data);
  filter->SetValue(0, level);
  filter->Update();
  vtkPolyData* lines = filter->GetOutput();
  double sum = 0.0;
  vtkNew<vtkIdList> ids;
  for (vtkIdType c = 0; c < lines->GetNumberOfCells(); ++c) {
    lines->GetCellPoints(c, ids);
    double a[3], b[3];
    for (vtkIdType k = 1; k < ids->GetNumberOfIds(); ++k) {
      lines->GetPoint(ids->GetId(k - 1), a);
      lines->GetPoint(ids->GetId(k), b);
      sum += std::hypot(b[0] - a[0], b[1] - a[1]);
    }
  }
  return sum;
}

TEST_CASE("isotherms are as long as those of VTK's contour filter") {
  for (const cases::Variant& variant :
       {testing::corner_variant("damp", 0.1, false), testing::reveal_variant()}) {
    const tools::SolvedVariant solved = tools::solved(variant, {});
    const geometry::Mesh& mesh = solved.surface.field.mesh;
    const auto data = polygons(mesh, solved.surface.temperature);
    const std::vector<double> levels{1.9, 3.3, 5.0, 7.7, 9.1, 10.6};
    const auto ours = tools::IsothermFinder(mesh).isotherms(solved.surface.temperature, levels);
    for (std::size_t l = 0; l < levels.size(); ++l) {
      double length = 0.0;
      for (const geometry::Outline& line : ours[l].lines) {
        for (std::size_t k = 1; k < line.size(); ++k) {
          length += std::hypot(line[k].x - line[k - 1].x, line[k].y - line[k - 1].y);
        }
      }
      CAPTURE(levels[l]);
      CHECK(length > 0.1);
      CHECK(length == WithinRel{contour_length(data, levels[l]), 1e-6});  // VTK outputs floats
    }
  }
}

}  // namespace
