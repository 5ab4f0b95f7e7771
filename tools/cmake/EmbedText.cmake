# SPDX-License-Identifier: Apache-2.0
# Builds text files into the program. Written as a script (cmake -D INPUTS=file|file... -D OUTPUT=
# -D HEADER= -D FUNCTION= -D KIND= -P) it writes OUTPUT, a source that defines FUNCTION (declared in
# HEADER). Included, it offers quoin_embed_text and quoin_embed_files, which make that a build step
# that runs again when a file changes.

if(CMAKE_SCRIPT_MODE_FILE STREQUAL CMAKE_CURRENT_LIST_FILE)
  set(delimiter "embedded_text")
  set(names)
  set(entries)
  string(REPLACE "|" ";" INPUTS "${INPUTS}")
  foreach(input IN LISTS INPUTS)
    file(READ "${input}" text)
    if(text MATCHES "\\)${delimiter}\"")
      message(FATAL_ERROR "${input} contains )${delimiter}\" and cannot be embedded")
    endif()
    cmake_path(GET input FILENAME name)
    string(APPEND names " ${name}")
    set(literal "R\"${delimiter}(${text})${delimiter}\"")
    string(APPEND entries "      {\"${name}\", ${literal}},\n")
  endforeach()
  if(KIND STREQUAL "files")
    set(definition "auto ${FUNCTION}() -> std::span<const EmbeddedFile> {
  static constexpr EmbeddedFile files[] = {
${entries}  };
  return files;
}")
  else()
    set(definition "std::string_view ${FUNCTION}() { return ${literal}; }")
  endif()
  file(WRITE "${OUTPUT}" "// Generated from${names}.\n#include \"${HEADER}\"\n\n${definition}\n")
  return()
endif()

set(QUOIN_EMBED_TEXT_SCRIPT "${CMAKE_CURRENT_LIST_FILE}")

# The build step behind both functions; `name` is that of the generated source.
function(quoin_embed target kind name header function)
  set(output "${CMAKE_CURRENT_BINARY_DIR}/${name}.cpp")
  list(JOIN ARGN "|" inputs)
  add_custom_command(
    OUTPUT "${output}"
    COMMAND "${CMAKE_COMMAND}" -D "INPUTS=${inputs}" -D "OUTPUT=${output}" -D "KIND=${kind}"
            -D "HEADER=${header}" -D "FUNCTION=${function}" -P "${QUOIN_EMBED_TEXT_SCRIPT}"
    DEPENDS ${ARGN} "${QUOIN_EMBED_TEXT_SCRIPT}"
    COMMENT "Embedding ${name}"
    VERBATIM)
  target_sources(${target} PRIVATE "${output}")
endfunction()

# Adds to TARGET a generated source that defines `std::string_view FUNCTION()`, declared in HEADER
# (an include path from the top), as the text of FILE (relative to the calling folder).
function(quoin_embed_text target file header function)
  quoin_embed(${target} text ${file} ${header} ${function} "${CMAKE_CURRENT_SOURCE_DIR}/${file}")
endfunction()

# The same for several files, given by full path: `std::span<const EmbeddedFile> FUNCTION()`, with
# EmbeddedFile {name, text} declared in HEADER in the namespace of FUNCTION. NAME is that of the
# generated source.
function(quoin_embed_files target name header function)
  quoin_embed(${target} files ${name} ${header} ${function} ${ARGN})
endfunction()
