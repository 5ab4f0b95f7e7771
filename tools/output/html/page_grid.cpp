// SPDX-License-Identifier: Apache-2.0
#include "tools/output/html/page_grid.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>

#include "tools/disk/base64.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

Json all_mm(const std::vector<double>& lines) {
  Json all = Json::array();
  for (const double line : lines) all.push_back(page_mm(line));
  return all;
}

/// Numbers up to 65535 as base64 of their two bytes each, the low one first.
std::string packed(const std::vector<std::uint16_t>& numbers) {
  std::vector<std::uint8_t> bytes;
  bytes.reserve(2 * numbers.size());
  for (const std::uint16_t number : numbers) {
    bytes.push_back(static_cast<std::uint8_t>(number & 0xFFU));
    bytes.push_back(static_cast<std::uint8_t>(number >> 8U));
  }
  return base64(bytes);
}

std::string packed_basis(const std::vector<double>& basis) {
  std::vector<std::uint16_t> shares;
  shares.reserve(basis.size());
  for (const double g : basis)
    shares.push_back(static_cast<std::uint16_t>(std::lround(std::clamp(g, 0.0, 1.0) * 65535.0)));
  return packed(shares);
}

/// A fill as a number: 0 nothing, then the regions, then the spaces.
std::uint16_t code_of(const geometry::Fill& fill, std::size_t regions) {
  if (const auto* region = std::get_if<RegionId>(&fill))
    return static_cast<std::uint16_t>(1 + region->index);
  if (const auto* space = std::get_if<SpaceId>(&fill))
    return static_cast<std::uint16_t>(1 + regions + space->index);
  return 0;
}

/// What each cell shows: below and above its diagonal where it is divided.
Json cells_of(const geometry::Mesh& mesh, std::size_t regions) {
  std::vector<std::uint16_t> below, above, split;
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const geometry::Cell& cell = mesh.cell(i, j);
      below.push_back(code_of(cell.below, regions));
      above.push_back(code_of(cell.above, regions));
      split.push_back(static_cast<std::uint16_t>(cell.split));
    }
  }
  Json json = {{"below", packed(below)}};
  if (!mesh.cells.empty()) {
    json["above"] = packed(above);
    json["split"] = packed(split);
  }
  return json;
}

}  // namespace

double page_mm(double metres) { return std::round(metres * 1e6) / 1e3; }

nlohmann::ordered_json grid_json(const SolvedVariant& solved) {
  const solver::Field& field = solved.surface.field;
  Json basis = Json::array();
  for (std::size_t a = 0; a + 1 < field.airs.size(); ++a)
    basis.push_back(packed_basis(field.basis[a]));
  return {{"x_mm", all_mm(field.mesh.x)},
          {"y_mm", all_mm(field.mesh.y)},
          {"cells", cells_of(field.mesh, solved.variant.regions.size())},
          {"basis", std::move(basis)}};
}

}  // namespace quoin::tools
