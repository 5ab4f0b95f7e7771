// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/run.hpp"
#include "tools/draw/field/compare.hpp"
#include "tools/draw/field/field.hpp"
#include "tools/draw/field/flow.hpp"
#include "tools/draw/section/section.hpp"
#include "tools/draw/section/view.hpp"

namespace quoin::tools {
namespace {

using testing::WithinAbs;

const std::string foot = R"(quoin: 1
title: A foot
spaces:
  room: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: 5}
section:
  wall base:
    layers: [{material: common brick, thickness: 225}]
    foundation: [{material: common brick, thickness: 225}]
    footing: limestone rubble
    floor: [{material: hard limestone, thickness: 60}]
    ground: clay soil
)";

cases::Variant base() { return cases::case_of(foot, "case.yaml").variants.front(); }

/// A value that is linear in both directions.
double linear(Point place) { return 3.0 + 2.0 * place.x - 5.0 * place.y; }

bool says(const std::string& picture, std::string_view words) {
  return picture.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("the part of a field that a picture shows has the field's values, on its edges too") {
  const cases::Variant variant = base();
  const geometry::Section section = geometry::section_of(variant.sheet);
  const geometry::Mesh mesh = geometry::mesh_of(section, geometry::subdivision_of(section, 8.0));
  std::vector<double> values;
  for (std::size_t n = 0; n < mesh.nx() * mesh.ny(); ++n) values.push_back(linear(mesh.place(n)));
  const Shown shown = shown_part(variant, section);
  CHECK(shown.broken.left);
  CHECK(shown.broken.right);
  CHECK(shown.broken.below);
  CHECK_FALSE(shown.broken.above);  // a cut plane
  const MeshValues part = shown_part(shown, mesh, values);
  REQUIRE(part.values.size() == part.mesh.nx() * part.mesh.ny());
  CHECK(part.mesh.x.front() == shown.section.x.front());
  CHECK(part.mesh.x.back() == shown.section.x.back());
  CHECK(part.mesh.y.front() == shown.section.y.front());
  for (std::size_t n = 0; n < part.values.size(); ++n)
    CHECK(part.values[n] == WithinAbs{linear(part.mesh.place(n)), 1e-10});  // rounding
  for (std::size_t j = 0; j < part.mesh.rows(); ++j) {
    for (std::size_t i = 0; i < part.mesh.columns(); ++i) {
      const double x = (part.mesh.x[i] + part.mesh.x[i + 1]) / 2;
      const double y = (part.mesh.y[j] + part.mesh.y[j + 1]) / 2;
      const auto strip = [](const std::vector<double>& lines, double at) {
        return static_cast<std::size_t>(std::upper_bound(lines.begin(), lines.end(), at) -
                                        lines.begin() - 1);
      };
      CHECK(part.mesh.cell(i, j) == section.cell(strip(section.x, x), strip(section.y, y)));
    }
  }
  // Without a close-up the mesh stays as it is.
  cases::Variant whole = variant;
  whole.close_up.reset();
  CHECK_FALSE(shown_part(whole, section).broken.any());
  CHECK(shown_part(shown_part(whole, section), mesh, values).mesh.x == mesh.x);
}

TEST_CASE("all pictures of a wall base show its foot large, and the whole small beside it") {
  const Results results = results_of(cases::case_of(foot + R"(variants:
  dry: ~
  damp: {section: {wall base: {foundation: [[common brick, 225, damp]]}}}
)",
                                                    "case.yaml"),
                                     "case.yaml", {}, {});
  const SolvedVariant& solved = results.variants.front();
  SolvedVariant whole = solved;
  whole.variant.close_up.reset();
  const double step = flow_step(results);
  constexpr std::string_view key = "All of the section";
  CHECK(says(drawn_section(solved.variant, solved.conductivity, "").svg(), key));
  CHECK(says(drawn_section(solved.variant, solved.conductivity, "").svg(), "broken off"));
  CHECK(says(drawn_field(solved, "").svg(), key));
  CHECK(says(drawn_flow(solved, step, "").svg(), key));
  CHECK(says(drawn_compare(results).svg(), key));
  CHECK_FALSE(says(drawn_section(whole.variant, solved.conductivity, "").svg(), key));
  CHECK_FALSE(says(drawn_section(whole.variant, solved.conductivity, "").svg(), "broken off"));
  CHECK_FALSE(says(drawn_field(whole, "").svg(), key));
  CHECK_FALSE(says(drawn_flow(whole, step, "").svg(), key));
  const geometry::Section& section = solved.surface.field.mesh.section;
  const View close(shown_part(solved.variant, section), {0, 0}, 600, 500);
  const View far(section, {0, 0}, 600, 500);
  CHECK(close.scale() > 5.0 * far.scale());
  CHECK(close.shows(solved.surface.airs.front().coldest.place));
}

bool has_open_line(const Canvas& canvas) {
  return std::any_of(canvas.items().begin(), canvas.items().end(), [](const Item& item) {
    const auto* path = std::get_if<Path>(&item);
    return path != nullptr && !path->closed;
  });
}

TEST_CASE("what is broken off is no cut plane and no edge of a material") {
  const cases::Variant variant = base();
  const geometry::Section section = geometry::section_of(variant.sheet);
  const View view(shown_part(variant, section), {0, 0}, 600, 500);
  int broken = 0, cut = 0;
  for (const Stretch& stretch : cuts(view.section()))
    (view.is_broken_off(stretch) ? broken : cut) += 1;
  CHECK(broken == 3);
  CHECK(cut >= 1);
  Canvas canvas;
  draw_edges(canvas, view, variant.regions.size(), Stroke{});
  CHECK(has_open_line(canvas));  // the outline of the ground
  const View whole(section, {0, 0}, 600, 500);
  Canvas closed;
  draw_edges(closed, whole, variant.regions.size(), Stroke{});
  CHECK_FALSE(closed.items().empty());
  CHECK_FALSE(has_open_line(closed));
}

TEST_CASE("each part of a space that is drawn apart is named") {
  const auto named = [](const std::string& floor) {
    const cases::Variant variant = cases::case_of(
                                       "quoin: 1\ntitle: A floor\nspaces:\n"
                                       "  parlour: {is: inside, temperature: 20}\n"
                                       "  yard: {is: outside, temperature: 0}\nsection:\n" +
                                           floor,
                                       "case.yaml")
                                       .variants.front();
    Per<RegionId, materials::Conductivity> conductivity(variant.regions.size());
    const std::string picture = drawn_section(variant, conductivity, "A floor").svg();
    std::size_t count = 0;
    for (std::size_t at = picture.find(">parlour<"); at != std::string::npos;
         at = picture.find(">parlour<", at + 1))
      ++count;
    return count;
  };
  CHECK(named("  floor: {layers: [[common brick, 330]], boards: [[softwood across the grain, 22]], "
              "joist: softwood along the grain}\n") == 2);
  CHECK(named("  wall: {layers: [[common brick, 330]]}\n") == 1);
}

}  // namespace quoin::tools
