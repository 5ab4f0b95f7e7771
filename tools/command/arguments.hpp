// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace quoin::tools {

/// The whole program's name, words and how its help looks.
void describe(CLI::App& program);

/// Reads the command line into the options that were added. False where it asked for help or the
/// version, whose text is then in `answer`. Throws: InputError where it cannot be understood.
[[nodiscard]] bool read_arguments(CLI::App& program, int argc, char** argv, std::string& answer);

/// Case files, at least one.
void add_cases(CLI::App& command, std::vector<std::string>& cases);

/// An option that takes a whole number between bounds, of which `refuse`, if given, may tell why it
/// is not to be had: an empty text where it is.
struct WholeNumber {
  std::string name;
  std::string help;
  std::size_t low = 0;
  std::size_t high = 0;
  std::function<std::string(std::size_t)> refuse;
};
void add_whole_number(CLI::App& command, const WholeNumber& option,
                      const std::function<void(std::size_t)>& set);

/// An option that takes one of some words.
void add_choice(CLI::App& command, const std::string& name, const std::string& help,
                const std::vector<std::string>& words, const std::function<void(std::size_t)>& set);

}  // namespace quoin::tools
