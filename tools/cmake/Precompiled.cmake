# SPDX-License-Identifier: Apache-2.0
# What nearly every source includes of foreign headers, parsed once for all sources with the same
# options. It is there for speed alone: every file still includes what it uses, which builds without
# it (CMAKE_DISABLE_PRECOMPILE_HEADERS) prove. ccache, which remembers no source that was built with
# precompiled headers, builds without them.
if(CMAKE_CXX_COMPILER_LAUNCHER MATCHES "ccache" AND NOT DEFINED CMAKE_DISABLE_PRECOMPILE_HEADERS)
  set(CMAKE_DISABLE_PRECOMPILE_HEADERS ON)
endif()

# quoin_precompiled(TARGET FIRST HEADER...): the common headers and those named, parsed for the target
# FIRST and used again by every other TARGET with the same options.
function(quoin_precompiled target first)
  if(target STREQUAL first)
    target_precompile_headers(
      ${target} PRIVATE <algorithm> <cmath> <map> <memory> <optional> <span> <string>
                        <string_view> <utility> <variant> <vector> <fmt/format.h> ${ARGN})
  else()
    target_precompile_headers(${target} REUSE_FROM ${first})
  endif()
endfunction()
