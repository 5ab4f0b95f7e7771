// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#ifndef QUOIN_PROGRAM
#define QUOIN_PROGRAM ""
#endif

namespace quoin::testing {

/// A folder of this test alone, gone with it.
class Scratch {
 public:
  Scratch() {
    std::string name = (std::filesystem::temp_directory_path() / "quoin-program-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    folder_ = name;
  }
  ~Scratch() {
    std::error_code ignored;
    std::filesystem::permissions(folder_, std::filesystem::perms::owner_all, ignored);
    std::filesystem::remove_all(folder_, ignored);
  }
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;

  [[nodiscard]] std::filesystem::path operator/(const std::string& name) const {
    return folder_ / name;
  }
  [[nodiscard]] bool holds_only(const std::vector<std::string>& names) const {
    std::size_t count = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder_)) {
      if (std::find(names.begin(), names.end(), entry.path().filename().string()) == names.end()) {
        return false;
      }
      ++count;
    }
    return count == names.size();
  }

 private:
  std::filesystem::path folder_;
};

inline std::string text_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

struct Run {
  int exit = -1;
  std::string out;
  std::string notes;
};

/// Runs the program with arguments as a shell splits them, after other commands of the shell.
inline Run run(const std::string& arguments, const std::string& before = "") {
  const Scratch scratch;
  const std::string out = (scratch / "out").string(), notes = (scratch / "notes").string();
  const std::string command = fmt::format("{} '{}' {} >'{}' 2>'{}' </dev/null", before,
                                          QUOIN_PROGRAM, arguments, out, notes);
  const int status = std::system(command.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, text_of(out), text_of(notes)};
}

inline std::string example(const std::string& name) {
  return fmt::format("'{}/cases/examples/lock_keepers_house_{}.yaml'", QUOIN_SOURCE_DIR, name);
}

}  // namespace quoin::testing
