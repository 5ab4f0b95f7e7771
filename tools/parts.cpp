// SPDX-License-Identifier: Apache-2.0
#include "tools/parts.hpp"

#include <dlfcn.h>

namespace quoin::tools {

PartFunction function_of(const std::string& part, const char* name, std::string& reason) {
  // Found by the program's own search path: beside it where it was built, in its library folder
  // where it was installed. Never closed: the libraries behind parts do not like that.
  void* module = dlopen(("quoin-" + part + ".so").c_str(), RTLD_NOW | RTLD_LOCAL);
  void* found = module != nullptr ? dlsym(module, name) : nullptr;
  if (found == nullptr) {
    const char* why = dlerror();
    reason = why != nullptr ? why : "a part of the program is missing";
  }
  return reinterpret_cast<PartFunction>(found);
}

}  // namespace quoin::tools
