// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace quoin::testing {

/// Whether every tag that opens is closed again in order, and nothing but tags begins with "<".
inline bool is_well_formed(const std::string& text) {
  std::vector<std::string> open;
  for (auto at = text.find('<'); at != std::string::npos; at = text.find('<', at + 1)) {
    const auto end = text.find('>', at);
    if (end == std::string::npos) return false;
    const std::string tag = text.substr(at + 1, end - at - 1);
    if (tag.empty() || tag.find('<') != std::string::npos) return false;
    if (tag.front() == '?' || tag.back() == '/') continue;
    const std::string name = tag.substr(0, tag.find(' '));
    if (tag.front() != '/') {
      open.push_back(name);
    } else if (open.empty() || "/" + open.back() != tag) {
      return false;
    } else {
      open.pop_back();
    }
  }
  return open.empty();
}

/// How often a part occurs.
inline std::size_t count(const std::string& text, const std::string& part) {
  std::size_t found = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

/// Names that may do harm where they are not escaped, and one that is very long.
inline std::vector<std::string> hostile_names() {
  return {"<script>alert(1)</script>",  "\"'><svg onload=x>&amp;", "\xF0\x9F\x94\xA5 emoji",
          "\x01\x1b[31m\xFF\xFE bytes", std::string(10000, 'W'),   "]]>",
          "=cmd|' /C calc'!A0",         "../../etc/passwd",        ""};
}

}  // namespace quoin::testing
