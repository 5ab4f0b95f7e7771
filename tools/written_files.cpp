// SPDX-License-Identifier: Apache-2.0
#include "tools/written_files.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>

#include "cases/sha256.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

std::string content_of(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

/// Whether a name stays within its folder and is none that we would hide.
bool is_plain_name(std::string_view name) {
  return !name.empty() && name.front() != '.' && name.find('/') == std::string_view::npos &&
         name != list_name;
}

}  // namespace

std::string list_of(const std::vector<File>& files) {
  std::string text;
  for (const File& file : files) text += cases::sha256(file.content) + "  " + file.name + "\n";
  return text;
}

std::vector<fs::path> outdated(const fs::path& folder, const std::vector<File>& files) {
  std::vector<fs::path> paths;
  std::ifstream list(folder / list_name, std::ios::binary);
  constexpr std::size_t digits = 64;
  for (std::string line; std::getline(list, line);) {
    if (line.size() < digits + 3 || line.substr(digits, 2) != "  ") continue;
    const std::string sum = line.substr(0, digits), name = line.substr(digits + 2);
    const bool is_written = std::any_of(files.begin(), files.end(),
                                        [&](const File& file) { return file.name == name; });
    if (is_written || !is_plain_name(name)) continue;
    const fs::path path = folder / name;
    std::error_code unknown;
    if (!fs::is_regular_file(fs::symlink_status(path, unknown))) continue;
    if (cases::sha256(content_of(path)) == sum) paths.push_back(path);
  }
  return paths;
}

}  // namespace quoin::tools
