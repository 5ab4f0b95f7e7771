// SPDX-License-Identifier: Apache-2.0
#include "tools/output/field/vtk_field.hpp"

#include <fmt/format.h>
#include <vtkCellData.h>
#include <vtkDataSetAttributes.h>
#include <vtkDoubleArray.h>
#include <vtkIntArray.h>
#include <vtkPointData.h>
#include <vtkRectilinearGrid.h>
#include <vtkUnsignedCharArray.h>
#include <vtkXMLRectilinearGridWriter.h>

#include <cmath>
#include <exception>
#include <limits>
#include <new>
#include <system_error>

#include "tools/draw/canvas/xml.hpp"
#include "tools/output/field/vtk_arrays.hpp"
#include "tools/output/field/vtk_triangles.hpp"

namespace quoin::tools {
namespace {

using geometry::Cell;
using geometry::Fill;
using geometry::Mesh;
using geometry::Split;

const RegionId* region_of(const Fill& fill) { return std::get_if<RegionId>(&fill); }

vtkNew<vtkDoubleArray> axis(const char* name, const std::vector<double>& lines) {
  auto made = array<vtkDoubleArray>(name, lines.size());
  for (std::size_t k = 0; k < lines.size(); ++k)
    made->SetValue(static_cast<vtkIdType>(k), lines[k]);
  return made;
}

void add_node_values(vtkRectilinearGrid& grid, const std::string& name,
                     const std::vector<double>& values, const std::vector<char>& solid) {
  // Without further nodes at the same places as nodes of the grid.
  const auto points = static_cast<std::size_t>(grid.GetNumberOfPoints());
  auto made = array<vtkDoubleArray>(name.c_str(), points);
  for (std::size_t n = 0; n < points; ++n) {
    made->SetValue(static_cast<vtkIdType>(n),
                   solid[n] != 0 ? values[n] : std::numeric_limits<double>::quiet_NaN());
  }
  grid.GetPointData()->AddArray(made);
}

/// One cell's part made of one fill: its conductivity and the temperature gradient in it.
struct Gradient {
  double x = 0.0;
  double y = 0.0;
};

/// Heat flux in a cell, W/m2: in the middle of a rectangle; the mean of the triangles of a divided
/// cell, of which those without material carry none.
Gradient flux_in(const SolvedVariant& solved, std::size_t i, std::size_t j) {
  const Mesh& mesh = solved.surface.field.mesh;
  const std::vector<double>& t = solved.surface.temperature;
  const Cell& cell = mesh.cell(i, j);
  const double dx = mesh.x[i + 1] - mesh.x[i], dy = mesh.y[j + 1] - mesh.y[j];
  const double sw = t[mesh.corner(i, j, false, false)], se = t[mesh.corner(i, j, true, false)];
  const double nw = t[mesh.corner(i, j, false, true)], ne = t[mesh.corner(i, j, true, true)];
  const auto half = [&](const Fill& fill, double along_x, double along_y) -> Gradient {
    const RegionId* region = region_of(fill);
    if (region == nullptr) return {};
    const double conductivity = solved.conductivity[*region].value;
    return {-conductivity * along_x / dx / 2, -conductivity * along_y / dy / 2};
  };
  const bool rising = cell.split == Split::rising;
  const Gradient below = half(cell.below, se - sw, rising ? ne - se : nw - sw);
  const Gradient above = half(cell.above, ne - nw, rising ? nw - sw : ne - se);
  return {below.x + above.x, below.y + above.y};
}

void add_cell_values(vtkRectilinearGrid& grid, const SolvedVariant& solved) {
  const Mesh& mesh = solved.surface.field.mesh;
  const std::size_t cells = mesh.columns() * mesh.rows();
  auto flux = array<vtkDoubleArray>("heat_flux_W_m2", cells, 3);
  auto conductivity = array<vtkDoubleArray>("conductivity_W_mK", cells);
  auto material = array<vtkIntArray>("material", cells);
  auto solid = array<vtkUnsignedCharArray>("solid", cells);
  auto ghost = array<vtkUnsignedCharArray>(vtkDataSetAttributes::GhostArrayName(), cells);
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const auto index = static_cast<vtkIdType>(j * mesh.columns() + i);
      const Cell& cell = mesh.cell(i, j);
      const RegionId* below = region_of(cell.below);
      const RegionId* region = below != nullptr ? below : region_of(cell.above);
      const bool is_solid = region != nullptr;
      const Gradient vector = flux_in(solved, i, j);
      flux->SetTuple3(index, vector.x, vector.y, 0.0);
      conductivity->SetValue(index, is_solid ? solved.conductivity[*region].value : 0.0);
      material->SetValue(index, is_solid ? static_cast<int>(region->index) : -1);
      solid->SetValue(index, is_solid ? 1 : 0);
      ghost->SetValue(index, is_solid ? 0 : vtkDataSetAttributes::HIDDENCELL);
    }
  }
  vtkCellData& data = *grid.GetCellData();
  data.AddArray(flux);
  data.AddArray(conductivity);
  data.AddArray(material);
  data.AddArray(solid);
  data.AddArray(ghost);
}

/// What vapour does at the nodes of the mesh; on a membrane the more humid of its two sides.
void add_vapour(vtkRectilinearGrid& grid, const solver::VapourField& vapour,
                const solver::Field& field) {
  const geometry::TwoSided nodes(field.mesh);
  std::vector<double> pressure(field.solid.size(), std::numeric_limits<double>::quiet_NaN());
  std::vector<double> humidity = pressure;
  std::vector<double> condensing(field.solid.size(), 0.0);
  for (std::size_t n = 0; n < nodes.size(); ++n) {
    const std::size_t at = nodes.of_mesh(n);
    condensing[at] += vapour.condensing[n];
    if (std::isnan(vapour.pressure[n]) || vapour.pressure[n] <= pressure[at]) continue;
    pressure[at] = vapour.pressure[n];
    humidity[at] = 100.0 * vapour.pressure[n] / vapour.saturation[n];
  }
  add_node_values(grid, "vapour_pressure_Pa", pressure, field.solid);
  add_node_values(grid, "humidity_percent", humidity, field.solid);
  add_node_values(grid, "condensing_kg_ms", condensing, field.solid);
}

std::string vtr_of(const SolvedVariant& solved) {
  const solver::Field& field = solved.surface.field;
  const Mesh& mesh = field.mesh;
  vtkNew<vtkRectilinearGrid> grid;
  grid->SetDimensions(static_cast<int>(mesh.nx()), static_cast<int>(mesh.ny()), 1);
  grid->SetXCoordinates(axis("x_m", mesh.x));
  grid->SetYCoordinates(axis("y_m", mesh.y));
  grid->SetZCoordinates(axis("z_m", {0.0}));
  add_node_values(*grid, "temperature_C", solved.surface.temperature, field.solid);
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    add_node_values(*grid, "share_of_" + escaped(solved.variant.spaces[field.airs[a]].name),
                    field.basis[a], field.solid);
  }
  if (solved.vapour && solved.vapour->stated) {
    add_vapour(*grid, solved.vapour->stated->field, field);
  }
  add_cell_values(*grid, solved);
  add_names(*grid, solved.variant);

  return xml_of<vtkXMLRectilinearGridWriter>(*grid);
}

}  // namespace
}  // namespace quoin::tools

bool quoin_vtk_field(const quoin::tools::SolvedVariant& solved, std::string& text) noexcept {
  try {
    text = solved.surface.triangles ? quoin::tools::vtu_of(solved) : quoin::tools::vtr_of(solved);
    return true;
  } catch (const std::system_error&) {  // of a thread that VTK cannot start
    text = "the memory or the threads that this machine gives the program are not enough";
  } catch (const std::bad_alloc&) {
    text = "the memory that this machine gives the program is not enough";
  } catch (const std::exception& error) {
    text = error.what();
  }
  return false;
}
