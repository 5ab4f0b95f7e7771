// SPDX-License-Identifier: Apache-2.0
#include "tools/command/built.hpp"

#include "tools/command/commit.hpp"

namespace quoin::tools {

std::string built_from() {
  const std::string commit = QUOIN_COMMIT;
  return commit.empty() ? "no commit known" : "commit " + commit;
}

std::string built_by() {
#if defined(__clang__)
  return std::string("clang++ ") + __clang_version__;
#else
  return std::string("g++ ") + __VERSION__;
#endif
}

}  // namespace quoin::tools
