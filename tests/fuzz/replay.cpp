// SPDX-License-Identifier: Apache-2.0
// Gives a fuzz target each file named on the command line, or below a folder named there, and
// every shortening of it: what a compiler without a fuzzer can do.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

constexpr std::size_t shortenings = 50;

/// The number of files replayed: 1, or 0 where it cannot be read.
std::size_t replay(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) return 0;
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  for (std::size_t n = 0; n <= shortenings; ++n) {
    const std::size_t size = text.size() * n / shortenings;
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(text.data()), size);
  }
  return 1;
}

}  // namespace

int main(int count, char** arguments) {
  std::size_t files = 0;
  for (int i = 1; i < count; ++i) {
    if (!std::filesystem::is_directory(arguments[i])) {
      files += replay(arguments[i]);
      continue;
    }
    for (const auto& entry : std::filesystem::recursive_directory_iterator(arguments[i])) {
      if (entry.is_regular_file()) files += replay(entry.path());
    }
  }
  std::printf("%zu files replayed\n", files);
  return files > 0 ? 0 : 1;
}
