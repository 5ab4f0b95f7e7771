# SPDX-License-Identifier: Apache-2.0
# What the build of the board, by a compiler that knows no libraries of this machine, is given of
# them: yaml-cpp and fmt compiled from their Debian source packages (QUOIN_SOURCES, which tools/board
# unpacks), and the headers of those that are headers only.
set(QUOIN_SOURCES "" CACHE PATH "Where the source packages of yaml-cpp and fmt are unpacked")
file(GLOB yaml_sources LIST_DIRECTORIES true "${QUOIN_SOURCES}/yaml-cpp-*")
file(GLOB fmt_sources LIST_DIRECTORIES true "${QUOIN_SOURCES}/fmtlib-*")
list(FILTER yaml_sources EXCLUDE REGEX "\\.(dsc|xz|gz)$")
list(FILTER fmt_sources EXCLUDE REGEX "\\.(dsc|xz|gz)$")
if(NOT yaml_sources OR NOT fmt_sources)
  message(FATAL_ERROR "No source packages in QUOIN_SOURCES (\"${QUOIN_SOURCES}\"): tools/board gets them")
endif()

file(GLOB yaml_files "${yaml_sources}/src/*.cpp")
add_library(yaml-cpp STATIC ${yaml_files})
target_include_directories(yaml-cpp SYSTEM PUBLIC "${yaml_sources}/include")
# Not ours to warn about.
target_compile_options(yaml-cpp PRIVATE -w)
add_library(fmt STATIC "${fmt_sources}/src/format.cc")
target_include_directories(fmt SYSTEM PUBLIC "${fmt_sources}/include")
add_library(fmt::fmt ALIAS fmt)

# Not all of /usr/include: its other headers are those of another machine.
set(headers "${PROJECT_BINARY_DIR}/headers")
file(MAKE_DIRECTORY "${headers}")
foreach(name boost eigen3 nlohmann)
  if(NOT EXISTS "${headers}/${name}")
    file(CREATE_LINK "/usr/include/${name}" "${headers}/${name}" SYMBOLIC)
  endif()
endforeach()
add_library(Eigen3::Eigen INTERFACE IMPORTED)
target_include_directories(Eigen3::Eigen SYSTEM INTERFACE "${headers}/eigen3")
add_library(Boost::headers INTERFACE IMPORTED)
target_include_directories(Boost::headers SYSTEM INTERFACE "${headers}")
add_library(nlohmann_json::nlohmann_json INTERFACE IMPORTED)
target_include_directories(nlohmann_json::nlohmann_json SYSTEM INTERFACE "${headers}")
