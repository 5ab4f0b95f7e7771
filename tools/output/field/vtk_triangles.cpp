// SPDX-License-Identifier: Apache-2.0
#include "tools/output/field/vtk_triangles.hpp"

#include <vtkCellData.h>
#include <vtkDoubleArray.h>
#include <vtkIntArray.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkPoints.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLUnstructuredGridWriter.h>

#include <array>
#include <vector>

#include "tools/draw/canvas/xml.hpp"
#include "tools/output/field/vtk_arrays.hpp"

namespace quoin::tools {
namespace {

using geometry::Element;
using geometry::Point;

/// Where the nodes of an element stand in a quadratic triangle of VTK, whose middles follow the
/// side from the first corner to the second.
constexpr std::array<std::size_t, 6> order = {0, 1, 2, 5, 3, 4};

void add_node_values(vtkUnstructuredGrid& grid, const std::string& name,
                     const std::vector<double>& values) {
  auto made = array<vtkDoubleArray>(name.c_str(), values.size());
  for (std::size_t n = 0; n < values.size(); ++n)
    made->SetValue(static_cast<vtkIdType>(n), values[n]);
  grid.GetPointData()->AddArray(made);
}

/// Gradient in the middle of an element: there the shape of a corner and of the middle opposite it
/// have the gradients of that corner's share of the area, times 1/3 and -4/3.
Point gradient(const solver::OnTriangles& field, const Element& element) {
  const auto corner = [&](std::size_t k) { return field.places[element.node[k % 3]]; };
  const Point a = corner(0), b = corner(1), c = corner(2);
  const double twice_area = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
  Point sum{0.0, 0.0};
  for (std::size_t k = 0; k < 3; ++k) {
    const double weight =
        (field.temperature[element.node[k]] - 4.0 * field.temperature[element.node[k + 3]]) / 3.0;
    sum.x += weight * (corner(k + 1).y - corner(k + 2).y) / twice_area;
    sum.y += weight * (corner(k + 2).x - corner(k + 1).x) / twice_area;
  }
  return sum;
}

}  // namespace

std::string vtu_of(const SolvedVariant& solved) {
  const solver::OnTriangles& field = *solved.surface.triangles;
  vtkNew<vtkUnstructuredGrid> grid;
  vtkNew<vtkPoints> points;
  points->SetDataTypeToDouble();
  for (const Point place : field.places) points->InsertNextPoint(place.x, place.y, 0.0);
  grid->SetPoints(points);
  add_node_values(*grid, "temperature_C", field.temperature);
  for (std::size_t a = 0; a < field.basis.size(); ++a) {
    const SpaceId air = solved.surface.field.airs[a];
    add_node_values(*grid, "share_of_" + escaped(solved.variant.spaces[air].name), field.basis[a]);
  }

  auto flux = array<vtkDoubleArray>("heat_flux_W_m2", field.elements.size(), 3);
  auto conductivity = array<vtkDoubleArray>("conductivity_W_mK", field.elements.size());
  auto material = array<vtkIntArray>("material", field.elements.size());
  grid->AllocateExact(static_cast<vtkIdType>(field.elements.size()),
                      static_cast<vtkIdType>(6 * field.elements.size()));
  for (std::size_t e = 0; e < field.elements.size(); ++e) {
    const Element& element = field.elements[e];
    std::array<vtkIdType, 6> nodes{};
    for (std::size_t k = 0; k < 6; ++k) nodes[k] = element.node[order[k]];
    grid->InsertNextCell(VTK_QUADRATIC_TRIANGLE, 6, nodes.data());
    const double value = solved.conductivity[element.region].value;
    const Point slope = gradient(field, element);
    const auto at = static_cast<vtkIdType>(e);
    flux->SetTuple3(at, -value * slope.x, -value * slope.y, 0.0);
    conductivity->SetValue(at, value);
    material->SetValue(at, static_cast<int>(element.region.index));
  }
  grid->GetCellData()->AddArray(flux);
  grid->GetCellData()->AddArray(conductivity);
  grid->GetCellData()->AddArray(material);
  add_names(*grid, solved.variant);
  return xml_of<vtkXMLUnstructuredGridWriter>(*grid);
}

}  // namespace quoin::tools
