# SPDX-License-Identifier: Apache-2.0

# quoin_library(FOLDER [PUBLIC lib...] [PRIVATE lib...] [ONLY pattern...] [EXCEPT pattern...]
#               [PRECOMPILED target])
# Makes the library quoin_FOLDER, alias quoin::FOLDER, of the sources of the calling folder, or of those
# ONLY that a pattern matches.
# PRECOMPILED: the target, this or an earlier one with the same compile options, whose precompiled
# headers it has. A folder without sources yet becomes an interface library, so that each can be built alone.
function(quoin_library folder)
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "PRECOMPILED" "PUBLIC;PRIVATE;ONLY;EXCEPT")
  set(target quoin_${folder})
  if(arg_ONLY)
    file(GLOB sources CONFIGURE_DEPENDS ${arg_ONLY})
  else()
    file(GLOB_RECURSE sources CONFIGURE_DEPENDS *.cpp)
  endif()
  if(arg_EXCEPT)
    file(GLOB except CONFIGURE_DEPENDS ${arg_EXCEPT})
    list(REMOVE_ITEM sources ${except})
  endif()
  if(sources)
    add_library(${target} STATIC ${sources})
    set(scope PUBLIC)
    target_link_libraries(${target} PRIVATE ${arg_PRIVATE})
    if(arg_PRECOMPILED)
      quoin_precompiled(${target} ${arg_PRECOMPILED})
    endif()
  else()
    add_library(${target} INTERFACE)
    set(scope INTERFACE)
  endif()
  add_library(quoin::${folder} ALIAS ${target})
  set_target_properties(${target} PROPERTIES EXPORT_NAME ${folder})
  target_compile_features(${target} ${scope} cxx_std_20)
  target_include_directories(${target} ${scope} "$<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}>"
                                                "$<INSTALL_INTERFACE:include/quoin>")
  target_link_libraries(${target} ${scope} ${arg_PUBLIC})
endfunction()

# quoin_part(NAME SOURCES file... LIBRARIES lib...)
# Makes the shared module quoin-NAME.so, a part of the program that it loads when first needed. It
# shows nothing but its extern "C" functions, so that what it holds twice is not mixed up.
function(quoin_part name)
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "" "SOURCES;LIBRARIES")
  set(target quoin_${name})
  add_library(${target} MODULE ${arg_SOURCES})
  set_target_properties(${target} PROPERTIES PREFIX "" OUTPUT_NAME quoin-${name} SUFFIX ".so"
                        CXX_VISIBILITY_PRESET hidden VISIBILITY_INLINES_HIDDEN ON)
  target_compile_features(${target} PRIVATE cxx_std_20)
  target_include_directories(${target} PRIVATE "${PROJECT_SOURCE_DIR}")
  target_link_libraries(${target} PRIVATE ${arg_LIBRARIES})
  target_link_options(${target} PRIVATE "LINKER:--exclude-libs,ALL")
  if(NOT CMAKE_CXX_FLAGS MATCHES "-fsanitize")  # whose functions the program itself has
    target_link_options(${target} PRIVATE "LINKER:--no-undefined")
  endif()
  install(TARGETS ${target} DESTINATION "${CMAKE_INSTALL_LIBDIR}/quoin")
endfunction()

# quoin_install(FOLDER): the library quoin_FOLDER and the headers of the calling folder.
function(quoin_install folder)
  install(TARGETS quoin_${folder} EXPORT quoin COMPONENT library)
  install(DIRECTORY ./ DESTINATION include/quoin/${folder} COMPONENT library
          FILES_MATCHING PATTERN *.hpp)
endfunction()
