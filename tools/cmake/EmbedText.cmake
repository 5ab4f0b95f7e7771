# SPDX-License-Identifier: Apache-2.0
# Written as a script (cmake -D INPUT= -D OUTPUT= -D HEADER= -D FUNCTION= -P) it writes OUTPUT, a
# source that defines FUNCTION (declared in HEADER) as the text of INPUT. Included, it offers
# quoin_embed_text, which makes that a build step that runs again when INPUT changes.

if(CMAKE_SCRIPT_MODE_FILE STREQUAL CMAKE_CURRENT_LIST_FILE)
  file(READ "${INPUT}" text)
  set(delimiter "embedded_text")
  if(text MATCHES "\\)${delimiter}\"")
    message(FATAL_ERROR "${INPUT} contains )${delimiter}\" and cannot be embedded")
  endif()
  file(WRITE "${OUTPUT}" "// Generated from ${NAME}.
#include \"${HEADER}\"

std::string_view ${FUNCTION}() { return R\"${delimiter}(${text})${delimiter}\"; }
")
  return()
endif()

set(QUOIN_EMBED_TEXT_SCRIPT "${CMAKE_CURRENT_LIST_FILE}")

# Adds to TARGET a generated source that defines `std::string_view FUNCTION()`, declared in HEADER
# (an include path from the top), as the text of FILE (relative to the calling folder).
function(quoin_embed_text target file header function)
  set(input "${CMAKE_CURRENT_SOURCE_DIR}/${file}")
  set(output "${CMAKE_CURRENT_BINARY_DIR}/${file}.cpp")
  cmake_path(GET output PARENT_PATH folder)
  file(MAKE_DIRECTORY "${folder}")
  add_custom_command(
    OUTPUT "${output}"
    COMMAND "${CMAKE_COMMAND}" -D "INPUT=${input}" -D "OUTPUT=${output}" -D "NAME=${file}"
            -D "HEADER=${header}" -D "FUNCTION=${function}" -P "${QUOIN_EMBED_TEXT_SCRIPT}"
    DEPENDS "${input}" "${QUOIN_EMBED_TEXT_SCRIPT}"
    COMMENT "Embedding ${file}"
    VERBATIM)
  target_sources(${target} PRIVATE "${output}")
endfunction()
