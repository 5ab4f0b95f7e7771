// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <vtkCellData.h>
#include <vtkDataSetAttributes.h>
#include <vtkDoubleArray.h>
#include <vtkFieldData.h>
#include <vtkInformation.h>
#include <vtkMultiBlockDataSet.h>
#include <vtkNew.h>
#include <vtkPointData.h>
#include <vtkRectilinearGrid.h>
#include <vtkStringArray.h>
#include <vtkUnsignedCharArray.h>
#include <vtkUnstructuredGrid.h>
#include <vtkXMLMultiBlockDataReader.h>
#include <vtkXMLRectilinearGridReader.h>
#include <vtkXMLUnstructuredGridReader.h>

#include <cmath>
#include <filesystem>
#include <string>

#include "tests/support/within.hpp"
#include "tests/tools/by_hand.hpp"
#include "tools/answer/run.hpp"
#include "tools/disk/output_folder.hpp"
#include "tools/output/field/vtk_field.hpp"
#include "tools/output/outputs.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

/// Reads a .vtr from text, as a viewer reads it from disk.
class ReadBack {
 public:
  explicit ReadBack(const std::string& text) {
    reader_->ReadFromInputStringOn();
    reader_->SetInputString(text);
    reader_->Update();
  }
  [[nodiscard]] vtkRectilinearGrid& grid() { return *reader_->GetOutput(); }
  [[nodiscard]] double node(const char* name, std::size_t n) {
    vtkDataArray* array = grid().GetPointData()->GetArray(name);
    REQUIRE(array != nullptr);
    return array->GetTuple1(static_cast<vtkIdType>(n));
  }
  [[nodiscard]] vtkDataArray& cells(const char* name) {
    vtkDataArray* array = grid().GetCellData()->GetArray(name);
    REQUIRE(array != nullptr);
    return *array;
  }

 private:
  vtkNew<vtkXMLRectilinearGridReader> reader_;
};

TEST_CASE("a field read back has every node, temperature and share to the bit") {
  const SolvedVariant solved = tools::solved(testing::corner_variant("as found", 0.1, false), {});
  const solver::Field& field = solved.surface.field;
  ReadBack back(field_file(solved));
  int size[3];
  back.grid().GetDimensions(size);
  REQUIRE(size[0] == static_cast<int>(field.mesh.nx()));
  REQUIRE(size[1] == static_cast<int>(field.mesh.ny()));
  CHECK(size[2] == 1);
  for (std::size_t n = 0; n < field.solid.size(); ++n) {
    double place[3];
    back.grid().GetPoint(static_cast<vtkIdType>(n), place);
    CHECK(place[0] == field.mesh.place(n).x);
    CHECK(place[1] == field.mesh.place(n).y);
    if (field.solid[n] == 0) {
      CHECK(std::isnan(back.node("temperature_C", n)));
    } else {
      CHECK(back.node("temperature_C", n) == solved.surface.temperature[n]);
      CHECK(back.node("share_of_hall", n) == field.basis[0][n]);
      CHECK(back.node("share_of_hall", n) + back.node("share_of_yard", n) ==
            WithinAbs{1.0, 1e-9});  // basis fields sum to one, to the residual of the solver
    }
  }
}

TEST_CASE("cells read back say what they are made of, and what is air is hidden") {
  const SolvedVariant solved = testing::results_by_hand().variants.front();
  const geometry::Mesh& mesh = solved.surface.field.mesh;
  ReadBack back(field_file(solved));
  vtkDataArray& material = back.cells("material");
  vtkDataArray& solid = back.cells("solid");
  vtkDataArray& conductivity = back.cells("conductivity_W_mK");
  vtkDataArray& ghost = back.cells(vtkDataSetAttributes::GhostArrayName());
  std::size_t hidden = 0;
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const auto c = static_cast<vtkIdType>(j * mesh.columns() + i);
      const auto* region = std::get_if<RegionId>(&mesh.cell(i, j).below);
      if (region == nullptr) {
        ++hidden;
        CHECK(solid.GetTuple1(c) == 0.0);
        CHECK(material.GetTuple1(c) == -1.0);
        CHECK(ghost.GetTuple1(c) == vtkDataSetAttributes::HIDDENCELL);
      } else {
        CHECK(solid.GetTuple1(c) == 1.0);
        CHECK(material.GetTuple1(c) == region->index);
        CHECK(conductivity.GetTuple1(c) == solved.conductivity[*region].value);
        CHECK(ghost.GetTuple1(c) == 0.0);
      }
    }
  }
  CHECK(hidden > 0);
  auto* names =
      vtkStringArray::SafeDownCast(back.grid().GetFieldData()->GetAbstractArray("material_names"));
  REQUIRE(names != nullptr);
  CHECK(names->GetValue(0) == "wall brick");
}

TEST_CASE("the heat flux of a linear field is conductivity times slope, down the slope") {
  SolvedVariant solved = testing::results_by_hand().variants.front();
  const geometry::Mesh& mesh = solved.surface.field.mesh;
  solved.surface.temperature =
      testing::values(mesh, [](double x, double y) { return 2.0 * x - 3.0 * y; });
  ReadBack back(field_file(solved));
  vtkDataArray& flux = back.cells("heat_flux_W_m2");
  vtkDataArray& conductivity = back.cells("conductivity_W_mK");
  for (vtkIdType c = 0; c < flux.GetNumberOfTuples(); ++c) {
    double q[3];
    flux.GetTuple(c, q);
    CHECK(q[0] == WithinAbs{-2.0 * conductivity.GetTuple1(c), 1e-9});  // rounding
    CHECK(q[1] == WithinAbs{3.0 * conductivity.GetTuple1(c), 1e-9});
    CHECK(q[2] == 0.0);
  }
}

TEST_CASE("in a divided cell only the half with material carries heat") {
  SolvedVariant solved = testing::results_by_hand().variants.front();
  solver::Field& field = solved.surface.field;
  for (const geometry::Split split : {geometry::Split::rising, geometry::Split::falling}) {
    field.mesh = testing::square(1);
    field.mesh.section.cells[0] = {RegionId(0u), SpaceId(0u), split};
    field.solid = {1, 1, 1, 1};
    field.basis = {{0, 0, 0, 0}, {1, 1, 1, 1}};
    solved.surface.temperature = testing::values(field.mesh, [](double x, double) { return x; });
    ReadBack back(field_file(solved));
    CHECK(back.cells("heat_flux_W_m2").GetComponent(0, 0) ==
          WithinRel{-solved.conductivity[RegionId(0u)].value / 2, 1e-12});  // half of the cell
    CHECK(back.cells("solid").GetTuple1(0) == 1.0);
  }
}

TEST_CASE("a sloped field read back has its triangles and what flows in their middles") {
  SolvedVariant solved = testing::results_by_hand().variants.front();
  solver::OnTriangles field;  // the half of a square above its rising diagonal, 2 m wide
  field.places = {{0, 0}, {2, 2}, {0, 2}, {1, 2}, {0, 1}, {1, 1}};
  field.elements = {{{0, 1, 2, 3, 4, 5}, RegionId(0u), 0, 0}};
  for (const geometry::Point p : field.places)
    field.temperature.push_back(2.0 * p.x - 3.0 * p.y + p.x * p.y);
  field.basis = std::vector<std::vector<double>>(solved.surface.field.airs.size(),
                                                 std::vector<double>(6, 0.5));
  solved.surface.triangles = field;
  REQUIRE(field_ending(solved) == in_triangles);
  vtkNew<vtkXMLUnstructuredGridReader> reader;
  reader->ReadFromInputStringOn();
  reader->SetInputString(field_file(solved));
  reader->Update();
  vtkUnstructuredGrid& grid = *reader->GetOutput();
  REQUIRE(grid.GetNumberOfCells() == 1);
  REQUIRE(grid.GetCellType(0) == VTK_QUADRATIC_TRIANGLE);
  const double conductivity = solved.conductivity[RegionId(0u)].value;
  CHECK(grid.GetCellData()->GetArray("conductivity_W_mK")->GetTuple1(0) == conductivity);
  vtkDataArray* temperature = grid.GetPointData()->GetArray("temperature_C");
  REQUIRE(temperature != nullptr);
  // In the middle of the triangle, (2/3, 4/3), by VTK's own shapes: so the order of nodes is its.
  double middle[3] = {1.0 / 3.0, 1.0 / 3.0, 0.0}, weights[6], place[3];
  int sub = 0;
  grid.GetCell(0)->EvaluateLocation(sub, middle, place, weights);
  CHECK(place[0] == WithinAbs{2.0 / 3.0, 1e-12});
  double there = 0.0;
  for (vtkIdType k = 0; k < 6; ++k)
    there += weights[k] * temperature->GetTuple1(grid.GetCell(0)->GetPointId(static_cast<int>(k)));
  CHECK(there == WithinAbs{2.0 * 2.0 / 3.0 - 4.0 + 8.0 / 9.0, 1e-12});
  double q[3];
  grid.GetCellData()->GetArray("heat_flux_W_m2")->GetTuple(0, q);
  CHECK(q[0] == WithinAbs{-conductivity * (2.0 + 4.0 / 3.0), 1e-12});
  CHECK(q[1] == WithinAbs{-conductivity * (-3.0 + 2.0 / 3.0), 1e-12});
}

TEST_CASE("every array of a field has a name of its own") {
  ReadBack back(field_file(testing::results_by_hand().variants.front()));
  for (vtkFieldData* data :
       {static_cast<vtkFieldData*>(back.grid().GetPointData()),
        static_cast<vtkFieldData*>(back.grid().GetCellData()), back.grid().GetFieldData()}) {
    for (int a = 0; a < data->GetNumberOfArrays(); ++a) {
      const std::string name = data->GetArrayName(a);
      CAPTURE(name);
      CHECK_FALSE(name.empty());
      CHECK(name.find("0x") == std::string::npos);
    }
  }
}

TEST_CASE("the same variant gives the same bytes") {
  const SolvedVariant solved = testing::results_by_hand().variants.front();
  CHECK(field_file(solved) == field_file(solved));
}

TEST_CASE("the index opens with all variants as blocks of their names, whatever the names") {
  const std::string name = "<b> & \"as\" 'found' \xF0\x9F\x94\xA5";
  const Results results = testing::results_named(name);
  const auto folder = std::filesystem::temp_directory_path() / "quoin-test-vtk-index";
  std::filesystem::remove_all(folder);
  write_folder(folder, files_of(results));
  vtkNew<vtkXMLMultiBlockDataReader> reader;
  reader->SetFileName((folder / "fields.vtm").c_str());
  reader->Update();
  auto* blocks = vtkMultiBlockDataSet::SafeDownCast(reader->GetOutput());
  REQUIRE(blocks != nullptr);
  REQUIRE(blocks->GetNumberOfBlocks() == 2);
  for (unsigned block = 0; block < 2; ++block) {
    auto* grid = vtkRectilinearGrid::SafeDownCast(blocks->GetBlock(block));
    REQUIRE(grid != nullptr);
    CHECK(grid->GetNumberOfPoints() ==
          static_cast<vtkIdType>(results.variants[block].surface.field.solid.size()));
    CHECK(grid->GetPointData()->GetArray("temperature_C") != nullptr);
    CHECK(grid->GetPointData()->GetArray(("share_of_" + name).c_str()) != nullptr);
    const std::string block_name = blocks->GetMetaData(block)->Get(vtkCompositeDataSet::NAME());
    CHECK(block_name == name);
  }
  std::filesystem::remove_all(folder);
}

}  // namespace
