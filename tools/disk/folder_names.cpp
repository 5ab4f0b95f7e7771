// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/folder_names.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "cases/text/utf8.hpp"
#include "tools/terminal/text_table.hpp"

namespace quoin::tools {
namespace {

constexpr std::size_t longest = 200;  // bytes; the disks allow 255, and names grow by numbers

std::string without_capitals(std::string text) {
  for (char& letter : text) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  return text;
}

bool is_awkward(char32_t code) {
  return code == U'\uFFFD' ||
         std::u32string_view(U"/\\:*?\"<>|").find(code) != std::u32string_view::npos;
}

std::string trimmed(const std::string& text) {
  const std::size_t start = text.find_first_not_of(".- ~");
  if (start == std::string::npos) return "";
  return text.substr(start, text.find_last_not_of(". ") + 1 - start);
}

}  // namespace

std::string folder_name(std::string_view file) {
  if (file == "-") return "case";
  file.remove_prefix(file.find_last_of('/') + 1);  // npos + 1 is 0
  for (const std::string_view ending : {".yaml", ".yml"}) {
    if (file.ends_with(ending)) {
      file.remove_suffix(ending.size());
      break;
    }
  }
  std::string name;
  const std::string safe = harmless(file, {});
  for (std::string_view left = safe; !left.empty();) {
    const cases::Character next = cases::first_character(left);
    if (name.size() + next.bytes > longest) break;
    if (is_awkward(next.code)) {
      name += '-';
    } else {
      name += left.substr(0, next.bytes);
    }
    left.remove_prefix(next.bytes);
  }
  name = trimmed(name);
  return name.empty() ? "case" : name;
}

std::vector<std::string> folder_names(const std::vector<std::string>& files) {
  std::vector<std::string> names;
  std::set<std::string> taken;
  for (const std::string& file : files) {
    const std::string wanted = folder_name(file);
    std::string name = wanted;
    for (int n = 2; !taken.insert(without_capitals(name)).second; ++n) {
      name = fmt::format("{}-{}", wanted, n);
    }
    names.push_back(std::move(name));
  }
  return names;
}

}  // namespace quoin::tools
