# SPDX-License-Identifier: Apache-2.0
# cmake -D BUILD=... -D CONSUMER=... -D WORK=... -D COMPILER=... -P install.cmake
# Installs the build tree BUILD below WORK; a project that finds Quoin there must build and run, one
# that looks elsewhere must not find it.

file(REMOVE_RECURSE "${WORK}")
execute_process(COMMAND "${CMAKE_COMMAND}" --install "${BUILD}" --prefix "${WORK}/prefix"
                OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)

# Whoever passes the program on passes on the notices of what is built into it.
file(GLOB_RECURSE notices RELATIVE "${WORK}/prefix" "${WORK}/prefix/*/doc/*/licences/*")
foreach(package IN ITEMS libeigen3-dev libfmt-dev libyaml-cpp-dev libcli11-dev nlohmann-json3-dev
                         libvtk9-dev)
  if(EXISTS /usr/share/doc/${package}/copyright AND NOT notices MATCHES "/licences/${package}")
    message(FATAL_ERROR "The licence of ${package} is not installed, only: ${notices}")
  endif()
endforeach()

set(configure "${CMAKE_COMMAND}" -S "${CONSUMER}" -G Ninja "-DCMAKE_CXX_COMPILER=${COMPILER}"
              "-DCMAKE_CXX_FLAGS=${FLAGS}" -DCMAKE_FIND_USE_PACKAGE_REGISTRY=OFF)
execute_process(COMMAND ${configure} -B "${WORK}/elsewhere" RESULT_VARIABLE elsewhere
                OUTPUT_QUIET ERROR_VARIABLE complaint)
if(elsewhere EQUAL 0 OR NOT complaint MATCHES "\"quoin\"")
  message(FATAL_ERROR "Quoin was found without the prefix:\n${complaint}")
endif()

execute_process(COMMAND ${configure} -B "${WORK}/consumer" "-DCMAKE_PREFIX_PATH=${WORK}/prefix"
                COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND "${CMAKE_COMMAND}" --build "${WORK}/consumer" COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND "${WORK}/consumer/consumer" COMMAND_ERROR_IS_FATAL ANY)
