// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <limits>
#include <string>
#include <vector>

#include "cases/read.hpp"
#include "tools/answer/run.hpp"
#include "tools/draw/canvas/paint.hpp"
#include "tools/output/pdf/page_flow.hpp"
#include "tools/output/pdf/report.hpp"

namespace quoin::tools {
namespace {

/// The smallest letters of the pictures on a page, points; infinite where there are none.
double smallest_in_pictures(const Canvas& canvas, double scale = 0.0) {
  double smallest = std::numeric_limits<double>::infinity();
  for (const Item& item : canvas.items()) {
    if (const auto* words = std::get_if<Words>(&item); words != nullptr && scale > 0.0)
      smallest = std::min(smallest, scale * words->lettering.size * unit_mm / 25.4 * 72.0);
    if (const auto* inset = std::get_if<Inset>(&item))
      smallest = std::min(
          smallest, smallest_in_pictures(*inset->canvas, inset->scale * (scale > 0 ? scale : 1)));
  }
  return smallest;
}

double smallest_in_pictures(const std::vector<Canvas>& pages) {
  double smallest = std::numeric_limits<double>::infinity();
  for (const Canvas& page : pages) smallest = std::min(smallest, smallest_in_pictures(page));
  return smallest;
}

std::vector<Canvas> pages_of(const std::string& text, const std::string& name) {
  const Results results = results_of(cases::case_of_house(text, name, {}), name, {}, {});
  return report_pages(results, pictures_of(results));
}

constexpr double least = 6.0 - 1e-9;  // points

}  // namespace

TEST_CASE("letters of every picture in the PDF of every example have six points at least") {
  std::size_t files = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(QUOIN_SOURCE_DIR "/cases/examples")) {
    if (entry.path().extension() != ".yaml") continue;
    std::ifstream file(entry.path());
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    const std::string name = entry.path().filename().string();
    const std::vector<Canvas> pages = pages_of(text, name);
    const double smallest = smallest_in_pictures(pages);
    CAPTURE(name);
    CHECK(smallest >= least);
    CHECK(smallest < 20.0);  // there are pictures
    if (name.find("house_corner") != std::string::npos) CHECK(pages.size() <= 8);
    ++files;
  }
  CHECK(files >= 15);
}

TEST_CASE("twelve variants stay legible on paper") {
  std::string text =
      "quoin: 1\ntitle: invented\nspaces:\n"
      "  room: {is: inside, temperature: 19, humidity: 60}\n"
      "  yard: {is: outside, temperature: 2}\n"
      "section: {corner: {layers: [[lime plaster, 15], [common brick, 330]]}}\nvariants:\n";
  for (int k = 1; k < 12; ++k) {
    text += fmt::format(
        "  board {0}: {{section: {{corner: {{layers: [[lime plaster, 10], [wood fibre board, {0}], "
        "[common brick, 330]]}}}}}}\n",
        10 * k);
  }
  CHECK(smallest_in_pictures(pages_of(text, "twelve.yaml")) >= least);
}

TEST_CASE("a picture with smaller letters is shrunk less") {
  const auto smallest = [](double size) {
    Canvas canvas;
    canvas.text({0.0, 20.0}, "words", {size, Anchor::start, 0.0, false, black, {}});
    PageFlow flow("title", "foot");
    flow.picture({canvas, 800.0, "a", "b"});
    return smallest_in_pictures(flow.pages());
  };
  CHECK(smallest(9.0) >= least);
  CHECK(smallest(30.0) >= least);
  CHECK(smallest(7.0) < least);  // the twin: no picture is enlarged
}

}  // namespace quoin::tools
