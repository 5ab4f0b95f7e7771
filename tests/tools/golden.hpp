// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fstream>
#include <sstream>
#include <string>

namespace quoin::testing {

/// The text of tests/tools/golden/NAME. To accept a change of outputs on purpose, look at the new
/// file the failed test wrote beside the program (NAME), then copy it there.
inline std::string golden(const std::string& name) {
  std::ifstream file(std::string(QUOIN_SOURCE_DIR) + "/tests/tools/golden/" + name,
                     std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// Whether a text is the golden one; if not it is written to NAME in the working folder.
inline bool is_golden(const std::string& text, const std::string& name) {
  if (text == golden(name)) return true;
  std::ofstream(name, std::ios::binary) << text;
  return false;
}

}  // namespace quoin::testing
