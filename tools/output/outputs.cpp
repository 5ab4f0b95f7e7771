// SPDX-License-Identifier: Apache-2.0
#include "tools/output/outputs.hpp"

#include <fmt/format.h>

#include <array>
#include <span>
#include <string_view>
#include <utility>

#include "tools/disk/apart.hpp"
#include "tools/draw/canvas/paint.hpp"
#include "tools/draw/pictures.hpp"
#include "tools/output/field/csv_surface.hpp"
#include "tools/output/field/vtk_field.hpp"
#include "tools/output/file_names.hpp"
#include "tools/output/html/report.hpp"
#include "tools/output/json/findings.hpp"
#include "tools/output/pdf/report.hpp"

namespace quoin::tools {
namespace {

std::vector<File> findings_files(const Results& results, const Pictures& /*pictures*/) {
  return {{"findings.json", findings_json(results)}};
}

std::vector<File> page_files(const Results& results, const Pictures& pictures) {
  return {{"report.html", report_page(results, pictures)}};
}

std::vector<File> pdf_files(const Results& results, const Pictures& pictures) {
  return {{"report.pdf", report_pdf(results, pictures)}};
}

std::vector<File> surface_files(const Results& results, const Pictures& /*pictures*/) {
  return {{"surface.csv", surface_csv(results)}};
}

struct NamedPicture {
  std::string stem;  ///< of its file
  Picture picture;
};

std::vector<NamedPicture> section_pictures(const Results& results, const Pictures& pictures) {
  if (results.variants.empty()) return {};
  return {{"section", pictures.sections.front()}};
}

/// A picture of each variant, where there is one.
std::vector<NamedPicture> of_variants(const Results& results, std::string_view kind,
                                      const std::vector<Picture>& pictures) {
  const std::vector<std::string> stems = file_stems(results.variants);
  std::vector<NamedPicture> named;
  for (std::size_t v = 0; v < stems.size(); ++v)
    named.push_back({fmt::format("{}-{}", kind, stems[v]), pictures[v]});
  return named;
}

std::vector<NamedPicture> field_pictures(const Results& results, const Pictures& pictures) {
  return of_variants(results, "field", pictures.fields);
}

std::vector<NamedPicture> surface_pictures(const Results& /*results*/, const Pictures& pictures) {
  return {{"surface", pictures.surface}};
}

std::vector<NamedPicture> compare_pictures(const Results& /*results*/, const Pictures& pictures) {
  return {{"compare", pictures.compare}};
}

std::vector<NamedPicture> flow_pictures(const Results& results, const Pictures& pictures) {
  return of_variants(results, "flow", pictures.flows);
}

/// The pictures of one kind as files in one format, each with the author's note.
template <auto pictures_of_kind, auto written>
std::vector<File> picture_files(const Results& results, const Pictures& pictures) {
  std::vector<File> files;
  for (const NamedPicture& named : pictures_of_kind(results, pictures)) {
    if (named.picture.is_empty()) continue;
    const Picture picture = named.picture.noted(results.note);
    files.push_back(written(named.stem, picture));
  }
  return files;
}

File svg_file(const std::string& stem, const Picture& picture) {
  return {stem + ".svg", picture.svg()};
}

File png_file(const std::string& stem, const Picture& picture) {
  constexpr int width = 1280;  // two pixels a unit: 250 to the inch across a page of A5
  return {stem + ".png", png_of(picture, width)};
}

std::string field_name(std::string_view stem, std::string_view ending) {
  return fmt::format("field-{}{}", stem, ending);
}

/// The fields of the variants whose files end so.
template <const std::string_view& ending>
std::vector<File> vtk_files(const Results& results, const Pictures& /*pictures*/) {
  const std::vector<std::string> stems = file_stems(results.variants);
  std::vector<File> files;
  for (std::size_t v = 0; v < stems.size(); ++v) {
    const SolvedVariant& solved = results.variants[v];
    if (field_ending(solved) != ending) continue;
    files.push_back({field_name(stems[v], ending), field_file(solved)});
  }
  return files;
}

std::vector<File> vtk_index_files(const Results& results, const Pictures& /*pictures*/) {
  const std::vector<std::string> stems = file_stems(results.variants);
  std::vector<std::string> names, file_names;
  for (std::size_t v = 0; v < stems.size(); ++v) {
    names.push_back(results.variants[v].variant.name);
    file_names.push_back(field_name(stems[v], field_ending(results.variants[v])));
  }
  return {{"fields.vtm", fields_vtm(names, file_names)}};
}

/// One kind of file that a run writes.
struct Output {
  std::string_view name;  ///< as the manual calls it; <variant> stands for the stem of each
  std::vector<File> (*files)(const Results&, const Pictures&);
};

// Every output. A new one is one file pair and one line here.

constexpr std::array<Output, 11> text_outputs{{
    {"findings.json", findings_files},
    {"report.html", page_files},
    {"surface.csv", surface_files},
    {"section.svg", picture_files<section_pictures, svg_file>},
    {"field-<variant>.svg", picture_files<field_pictures, svg_file>},
    {"surface.svg", picture_files<surface_pictures, svg_file>},
    {"compare.svg", picture_files<compare_pictures, svg_file>},
    {"flow-<variant>.svg", picture_files<flow_pictures, svg_file>},
    {"field-<variant>.vtr", vtk_files<on_a_grid>},
    {"field-<variant>.vtu", vtk_files<in_triangles>},
    {"fields.vtm", vtk_index_files},
}};

/// What is painted rather than written, in a process of its own.
constexpr std::array<Output, 1> painted_outputs{{{"report.pdf", pdf_files}}};

constexpr std::array<Output, 5> png_outputs{{
    {"section.png", picture_files<section_pictures, png_file>},
    {"field-<variant>.png", picture_files<field_pictures, png_file>},
    {"surface.png", picture_files<surface_pictures, png_file>},
    {"compare.png", picture_files<compare_pictures, png_file>},
    {"flow-<variant>.png", picture_files<flow_pictures, png_file>},
}};

void add(std::vector<File>& all, std::span<const Output> outputs, const Results& results,
         const Pictures& pictures) {
  for (const Output& output : outputs) {
    for (File& file : output.files(results, pictures)) all.push_back(std::move(file));
  }
}

void add(std::vector<std::string>& names, std::span<const Output> outputs,
         const std::vector<std::string>& stems) {
  constexpr std::string_view place = "<variant>";
  for (const Output& output : outputs) {
    const std::size_t at = output.name.find(place);
    if (at == std::string_view::npos) {
      names.emplace_back(output.name);
      continue;
    }
    for (const std::string& stem : stems) {
      names.push_back(std::string(output.name).replace(at, place.size(), stem));
    }
  }
}

}  // namespace

std::vector<File> files_of(const Results& results, Png png) {
  const Pictures pictures = pictures_of(results);
  Apart painting([&] {
    std::vector<File> painted;
    add(painted, painted_outputs, results, pictures);
    if (png == Png::too) add(painted, png_outputs, results, pictures);
    return painted;
  });
  std::vector<File> all;
  add(all, text_outputs, results, pictures);
  for (File& file : painting.files()) all.push_back(std::move(file));
  return all;
}

std::vector<std::string> possible_names(const std::vector<std::string>& variants, Png png) {
  const std::vector<std::string> stems = file_stems(variants);
  std::vector<std::string> names;
  add(names, text_outputs, stems);
  add(names, painted_outputs, stems);
  if (png == Png::too) add(names, png_outputs, stems);
  return names;
}

}  // namespace quoin::tools
