// SPDX-License-Identifier: Apache-2.0
#include "tools/outputs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <future>
#include <set>

#include "tools/csv_surface.hpp"
#include "tools/json_findings.hpp"
#include "tools/output/html/html_report.hpp"
#include "tools/output/pdf/pdf_report.hpp"
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
  std::vector<std::string> names, file_names;
  std::vector<File> files;
  for (std::size_t v = 0; v < stems.size(); ++v) {
    names.push_back(results.variants[v].variant.name);
    file_names.push_back(fmt::format("field-{}.vtr", stems[v]));
    files.push_back({file_names.back(), field_vtr(results.variants[v])});
  }
  files.push_back({"fields.vtm", fields_vtm(names, file_names)});
  return files;
}

constexpr std::array<Output, 10> all_outputs{{
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

}  // namespace

std::span<const Output> outputs() { return all_outputs; }

std::vector<File> files_of(const Results& results) {
  const Pictures pictures = pictures_of(results);
  // The PDF takes as long as all others together.
  std::future<std::vector<File>> pdf =
      std::async(std::launch::async, pdf_files, std::cref(results), std::cref(pictures));
  std::vector<File> all;
  for (const Output& output : outputs()) {
    for (File& file : output.files == pdf_files ? pdf.get() : output.files(results, pictures)) {
      all.push_back(std::move(file));
    }
  }
  return all;
}

std::vector<File> pngs_of(const std::vector<File>& files) {
  constexpr std::string_view ending = ".svg";
  constexpr int width = 1280;  // two pixels a unit: 250 to the inch across a page of A5
  std::vector<File> pngs;
  for (const File& file : files) {
    if (!file.name.ends_with(ending)) continue;
    const std::string stem = file.name.substr(0, file.name.size() - ending.size());
    pngs.push_back({stem + ".png", png_of(file.content, width)});
  }
  return pngs;
}

std::vector<std::string> file_stems(const std::vector<SolvedVariant>& variants) {
  std::vector<std::string> stems;
  std::set<std::string> taken;
  for (const SolvedVariant& solved : variants) {
    const std::string wanted = stem_of(solved.variant.name);
    std::string stem = wanted;
    for (int number = 2; !taken.insert(stem).second; ++number) {
      stem = fmt::format("{}-{}", wanted, number);
    }
    stems.push_back(std::move(stem));
  }
  return stems;
}

}  // namespace quoin::tools
