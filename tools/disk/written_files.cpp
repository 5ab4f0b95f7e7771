// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/written_files.hpp"

#include <algorithm>
#include <fstream>
#include <iterator>

#include "cases/text/sha256.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view remark = "# files of one run of quoin, this list: ";
constexpr std::size_t digits = 64;

std::string content_of(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

bool is_plain_file(const fs::path& path) {
  std::error_code unknown;
  return fs::is_regular_file(fs::symlink_status(path, unknown));
}

/// Whether a name stays within its folder and is none that we would hide.
bool is_plain_name(std::string_view name) {
  return !name.empty() && name.front() != '.' && name.find('/') == std::string_view::npos &&
         name != list_name;
}

}  // namespace

FileList list_of(const std::vector<File>& files) {
  FileList list;
  for (const File& file : files) list.emplace(cases::sha256(file.content), file.name);
  return list;
}

std::string text_of(const FileList& list) {
  std::string lines;
  for (const auto& [sum, name] : list) lines.append(sum).append("  ").append(name) += '\n';
  return std::string(remark) + cases::sha256(lines) + '\n' + lines;
}

FileList list_in(const fs::path& folder) {
  if (!is_plain_file(folder / list_name)) return {};
  const std::string text = content_of(folder / list_name);
  std::size_t end = text.find('\n');
  if (end == std::string::npos) return {};
  const std::string lines = text.substr(end + 1);
  if (text.substr(0, end) != std::string(remark) + cases::sha256(lines)) return {};
  FileList list;
  for (std::size_t start = 0; start < lines.size(); start = end + 1) {
    end = std::min(lines.find('\n', start), lines.size());
    const std::string line = lines.substr(start, end - start);
    if (line.size() < digits + 3 || line.substr(digits, 2) != "  ") continue;
    if (!is_plain_name(line.substr(digits + 2))) continue;
    list.emplace(line.substr(0, digits), line.substr(digits + 2));
  }
  return list;
}

bool is_ours(const fs::path& folder, const std::string& name, const FileList& list) {
  if (!is_plain_file(folder / name)) return false;
  if (name == list_name) return !list.empty();
  const auto named = [&](const auto& entry) { return entry.second == name; };
  if (std::none_of(list.begin(), list.end(), named)) return false;  // before its file is read
  return list.contains({cases::sha256(content_of(folder / name)), name});
}

std::vector<std::string> outdated(const fs::path& folder, const std::vector<File>& files) {
  std::set<std::string> names;
  const FileList list = list_in(folder);
  for (const auto& [sum, name] : list) {
    const bool is_written = std::any_of(files.begin(), files.end(),
                                        [&](const File& file) { return file.name == name; });
    if (!is_written && is_ours(folder, name, list)) names.insert(name);
  }
  return {names.begin(), names.end()};
}

std::vector<std::string> foreign(const fs::path& folder, const std::vector<std::string>& names) {
  const FileList list = list_in(folder);
  std::vector<std::string> found;
  for (const std::string& name : names) {
    std::error_code unknown;
    if (!fs::exists(fs::symlink_status(folder / name, unknown))) continue;
    if (!is_ours(folder, name, list)) found.push_back(name);
  }
  return found;
}

}  // namespace quoin::tools
