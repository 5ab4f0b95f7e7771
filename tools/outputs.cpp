// SPDX-License-Identifier: Apache-2.0
#include "tools/outputs.hpp"

#include <fmt/format.h>

#include <array>
#include <set>

#include "tools/apart.hpp"
#include "tools/csv_surface.hpp"
#include "tools/html_report.hpp"
#include "tools/json_findings.hpp"
#include "tools/pdf_report.hpp"
#include "tools/rsvg_paint.hpp"
#include "tools/vtk_field.hpp"

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

std::vector<File> section_files(const Results& results, const Pictures& pictures) {
  if (results.variants.empty()) return {};
  return {{"section.svg", pictures.sections.front().svg(results.note)}};
}

std::vector<File> field_files(const Results& results, const Pictures& pictures) {
  const std::vector<std::string> stems = file_stems(results.variants);
  std::vector<File> files;
  for (std::size_t v = 0; v < stems.size(); ++v) {
    files.push_back({fmt::format("field-{}.svg", stems[v]), pictures.fields[v].svg(results.note)});
  }
  return files;
}

std::vector<File> surface_picture_files(const Results& /*results*/, const Pictures& pictures) {
  if (pictures.surface.empty()) return {};
  return {{"surface.svg", pictures.surface}};
}

std::vector<File> compare_files(const Results& /*results*/, const Pictures& pictures) {
  if (pictures.compare.empty()) return {};
  return {{"compare.svg", pictures.compare}};
}

std::vector<File> flow_files(const Results& results, const Pictures& pictures) {
  const std::vector<std::string> stems = file_stems(results.variants);
  std::vector<File> files;
  for (std::size_t v = 0; v < stems.size(); ++v) {
    std::string picture = pictures.flows[v].svg(results.note);
    if (picture.empty()) continue;
    files.push_back({fmt::format("flow-{}.svg", stems[v]), std::move(picture)});
  }
  return files;
}

std::vector<File> vtk_files(const Results& results, const Pictures& /*pictures*/) {
  const std::vector<std::string> stems = file_stems(results.variants);
  std::vector<File> files;
  for (std::size_t v = 0; v < stems.size(); ++v) {
    files.push_back({fmt::format("field-{}.vtr", stems[v]), field_vtr(results.variants[v])});
  }
  return files;
}

std::vector<File> vtk_index_files(const Results& results, const Pictures& /*pictures*/) {
  std::vector<std::string> names, file_names;
  for (const SolvedVariant& solved : results.variants) names.push_back(solved.variant.name);
  for (const std::string& stem : file_stems(results.variants)) {
    file_names.push_back(fmt::format("field-{}.vtr", stem));
  }
  return {{"fields.vtm", fields_vtm(names, file_names)}};
}

constexpr std::array<Output, 11> all_outputs{{
    {"findings.json", findings_files},
    {"report.html", page_files},
    {"report.pdf", pdf_files},
    {"surface.csv", surface_files},
    {"section.svg", section_files},
    {"field-<variant>.svg", field_files},
    {"surface.svg", surface_picture_files},
    {"compare.svg", compare_files},
    {"flow-<variant>.svg", flow_files},
    {"field-<variant>.vtr", vtk_files},
    {"fields.vtm", vtk_index_files},
}};

/// Lower-case ASCII letters and digits, with a hyphen for each run of anything else.
std::string stem_of(std::string_view name) {
  constexpr std::size_t longest = 60;
  std::string stem;
  for (const char c : name) {
    const bool upper = c >= 'A' && c <= 'Z';
    if (upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
      stem += upper ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!stem.empty() && stem.back() != '-') {
      stem += '-';
    }
    if (stem.size() == longest) break;
  }
  while (!stem.empty() && stem.back() == '-') stem.pop_back();
  return stem.empty() ? "variant" : stem;
}

constexpr std::string_view picture_ending = ".svg";

bool is_picture(std::string_view name) { return name.ends_with(picture_ending); }

std::string png_name(std::string_view name) {
  return std::string(name.substr(0, name.size() - picture_ending.size())) + ".png";
}

}  // namespace

std::span<const Output> outputs() { return all_outputs; }

std::vector<File> files_of(const Results& results, Png png) {
  const Pictures pictures = pictures_of(results);
  // The PDF takes as long as all others together.
  Apart pdf([&] { return pdf_files(results, pictures); });
  std::vector<File> all;
  for (const Output& output : outputs()) {
    for (File& file : output.files == pdf_files ? pdf.files() : output.files(results, pictures)) {
      all.push_back(std::move(file));
    }
  }
  if (png == Png::too) {
    Apart painted([&] { return pngs_of(all); });
    for (File& file : painted.files()) all.push_back(std::move(file));
  }
  return all;
}

std::vector<std::string> possible_names(const std::vector<std::string>& variants, Png png) {
  constexpr std::string_view place = "<variant>";
  std::vector<std::string> names;
  for (const Output& output : outputs()) {
    const std::size_t at = output.name.find(place);
    if (at == std::string_view::npos) {
      names.emplace_back(output.name);
      continue;
    }
    for (const std::string& stem : file_stems(variants)) {
      names.push_back(std::string(output.name).replace(at, place.size(), stem));
    }
  }
  if (png == Png::no) return names;
  for (std::size_t n = 0, count = names.size(); n < count; ++n) {
    if (is_picture(names[n])) names.push_back(png_name(names[n]));
  }
  return names;
}

std::vector<File> pngs_of(const std::vector<File>& files) {
  constexpr int width = 1280;  // two pixels a unit: 250 to the inch across a page of A5
  std::vector<File> pngs;
  for (const File& file : files) {
    if (is_picture(file.name)) pngs.push_back({png_name(file.name), png_of(file.content, width)});
  }
  return pngs;
}

std::vector<std::string> file_stems(const std::vector<SolvedVariant>& variants) {
  std::vector<std::string> names;
  for (const SolvedVariant& solved : variants) names.push_back(solved.variant.name);
  return file_stems(names);
}

std::vector<std::string> file_stems(const std::vector<std::string>& variants) {
  std::vector<std::string> stems;
  std::set<std::string> taken;
  for (const std::string& name : variants) {
    const std::string wanted = stem_of(name);
    std::string stem = wanted;
    for (int number = 2; !taken.insert(stem).second; ++number) {
      stem = fmt::format("{}-{}", wanted, number);
    }
    stems.push_back(std::move(stem));
  }
  return stems;
}

}  // namespace quoin::tools
