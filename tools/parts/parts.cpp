// SPDX-License-Identifier: Apache-2.0
#include "tools/parts/parts.hpp"

#include <dlfcn.h>

#include <new>
#include <string_view>

namespace quoin::tools {
namespace {

/// Whether the loader's words tell of memory that it was not given. It has no other sign for it.
bool tells_of_memory(std::string_view why) {
  return why.find("failed to map") != std::string_view::npos ||
         why.find("annot allocate") != std::string_view::npos ||
         why.find("annot create") != std::string_view::npos;
}

}  // namespace

PartFunction function_of(const std::string& part, const char* name, std::string& reason) {
  // Found by the program's own search path: beside it where it was built, in its library folder
  // where it was installed. Never closed: the libraries behind parts do not like that.
  void* module = dlopen(("quoin-" + part + ".so").c_str(), RTLD_NOW | RTLD_LOCAL);
  void* found = module != nullptr ? dlsym(module, name) : nullptr;
  if (found == nullptr) {
    const char* why = dlerror();
    reason = why != nullptr ? why : "a part of the program is missing";
    if (tells_of_memory(reason)) throw std::bad_alloc();
  }
  return reinterpret_cast<PartFunction>(found);
}

}  // namespace quoin::tools
