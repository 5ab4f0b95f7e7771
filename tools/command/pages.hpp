// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

namespace CLI {
class App;
}

namespace quoin::tools {

// What is installed beside the program, made from the words that its help is made of.

/// The manual page, section 1.
[[nodiscard]] std::string man_page(const CLI::App& program);

// Scripts by which a shell completes commands and options.
[[nodiscard]] std::string bash_completion(const CLI::App& program);
[[nodiscard]] std::string zsh_completion(const CLI::App& program);
[[nodiscard]] std::string fish_completion(const CLI::App& program);

}  // namespace quoin::tools
