// SPDX-License-Identifier: Apache-2.0
#include "tools/output/file_names.hpp"
#include "tools/output/outputs.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <new>
#include <set>

#include "tests/tools/by_hand.hpp"
#include "tools/disk/apart.hpp"
#include "tools/parts/parts.hpp"

using namespace quoin;
using namespace quoin::tools;

namespace {

TEST_CASE("names of variants make different file names of plain letters") {
  Results results = testing::results_by_hand();
  const auto named = [&](std::vector<std::string> names) {
    results.variants.resize(names.size(), results.variants.front());
    for (std::size_t v = 0; v < names.size(); ++v) results.variants[v].variant.name = names[v];
    return file_stems(results.variants);
  };
  using Stems = std::vector<std::string>;
  CHECK(named({"as found", "As  found!", "as-found"}) ==
        Stems{"as-found", "as-found-2", "as-found-3"});
  CHECK(named({"../../etc/passwd", "a/b", "CON:"}) == Stems{"etc-passwd", "a-b", "con"});
  CHECK(named({"", "家", "\xF0\x9F\x94\xA5"}) == Stems{"variant", "variant-2", "variant-3"});
  CHECK(named({std::string(10000, 'x')})[0].size() <= 60);
  CHECK(named({"a-2", "a", "a"}) == Stems{"a-2", "a", "a-3"});
}

TEST_CASE("all outputs together write each file once") {
  const auto files = files_of(testing::results_by_hand());
  std::set<std::string> names;
  for (const File& file : files) {
    CHECK(names.insert(file.name).second);
    CHECK_FALSE(file.content.empty());
  }
  CHECK(names == std::set<std::string>{"findings.json", "report.html", "report.pdf", "surface.csv",
                                       "section.svg", "surface.svg", "compare.svg",
                                       "field-as-found.svg", "field-dried-out.svg",
                                       "field-as-found.vtr", "field-dried-out.vtr", "fields.vtm"});
}

TEST_CASE("the names of all files are known before anything is solved") {
  const Results results = testing::results_by_hand();
  const std::vector<std::string> possible = possible_names({"as found", "dried out"}, Png::too);
  const auto files = files_of(results, Png::too);
  CHECK(std::any_of(files.begin(), files.end(),
                    [](const File& file) { return file.name == "compare.png"; }));
  for (const File& file : files) {
    CAPTURE(file.name);
    CHECK(std::count(possible.begin(), possible.end(), file.name) == 1);
  }
  CHECK(possible_names({"as found"}, Png::no).size() <
        possible_names({"as found"}, Png::too).size());
}

TEST_CASE("files made apart arrive whole whatever is in them") {
  const std::string big(3'000'000, '\0');
  Apart apart([&] { return std::vector<File>{{"a", big}, {"b", ""}, {"c", "."}}; });
  const std::vector<File> files = apart.files();
  REQUIRE(files.size() == 3);
  CHECK(files[0].name == "a");
  CHECK(files[0].content == big);
  CHECK(files[1].content.empty());
  CHECK(files[2].content == ".");
}

TEST_CASE("what fails apart is told here, an end without an answer among it") {
  using Files = std::vector<File>;
  const auto made = [](const std::function<Files()>& make) { return Apart(make).files(); };
  CHECK_THROWS_WITH_AS(made([]() -> Files { throw PartError("no brush"); }), "no brush", PartError);
  CHECK_THROWS_AS(made([]() -> Files { throw std::bad_alloc(); }), std::bad_alloc);
  CHECK_THROWS_AS(made([]() -> Files { std::abort(); }), PartError);
  CHECK_THROWS_AS(made([]() -> Files { std::_Exit(7); }), PartError);
  CHECK(made([]() -> Files { return {}; }).empty());
}

}  // namespace
