// SPDX-License-Identifier: Apache-2.0
// Gives a fuzz target each file named on the command line, or below a folder named there, with
// shortenings and small changes of it, the same on every run: what a compiler without a fuzzer
// can do.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

constexpr std::size_t shortenings = 20;
constexpr std::size_t changes = 40;

void give(const std::string& text) {
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
}

/// Words that mean something to YAML or to a case file.
const std::vector<std::string> words = {"{",
                                        "}",
                                        "[",
                                        "]",
                                        ": ",
                                        ",",
                                        "- ",
                                        "\n",
                                        "\n  ",
                                        "\"",
                                        "'",
                                        "#",
                                        "&a ",
                                        "*a",
                                        "!!x ",
                                        "<<: ",
                                        "~",
                                        "---\n",
                                        "...\n",
                                        "|\n",
                                        "\t",
                                        std::string(1, '\0'),
                                        "-1",
                                        "1e9",
                                        "1e999",
                                        ".nan",
                                        "010",
                                        "mm",
                                        " °C",
                                        "%",
                                        "nothing",
                                        "damp",
                                        "\xFF",
                                        "void",
                                        "{air layer: 25, openings: 2500}",
                                        "{is: unheated}",
                                        "wall base: ",
                                        "like: "};

/// One to four places of a text changed: a stretch removed, doubled or replaced by a word.
template <class Random>
std::string changed(std::string text, Random& random) {
  const auto below = [&](std::size_t limit) { return limit == 0 ? 0 : random() % limit; };
  const std::size_t count = 1 + below(4);
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t at = below(text.size());
    const std::size_t length = std::min(below(12), text.size() - at);
    const std::string stretch = text.substr(at, length);
    switch (below(3)) {
      case 0:
        text.erase(at, length);
        break;
      case 1:
        text.insert(at, stretch);
        break;
      default:
        text.replace(at, length, words[below(words.size())]);
    }
  }
  return text;
}

/// The number of files replayed: 1, or 0 where it cannot be read.
std::size_t replay(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) return 0;
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  for (std::size_t n = 0; n <= shortenings; ++n)
    give(text.substr(0, text.size() * n / shortenings));
  std::mt19937 random(1);  // the standard fixes its sequence
  for (std::size_t n = 0; n < changes; ++n) give(changed(text, random));
  return 1;
}

}  // namespace

int main(int count, char** arguments) {
  std::vector<std::filesystem::path> files;
  for (int i = 1; i < count; ++i) {
    if (!std::filesystem::is_directory(arguments[i])) {
      files.emplace_back(arguments[i]);
      continue;
    }
    for (const auto& entry : std::filesystem::recursive_directory_iterator(arguments[i])) {
      if (entry.is_regular_file()) files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  std::size_t replayed = 0;
  for (const auto& file : files) replayed += replay(file);
  std::printf("%zu files replayed\n", replayed);
  return replayed > 0 && replayed == files.size() ? 0 : 1;
}
