# SPDX-License-Identifier: Apache-2.0

# quoin_library(FOLDER [PUBLIC lib...] [PRIVATE lib...] [EXCEPT file...] [PRECOMPILED target])
# Makes the library quoin_FOLDER, alias quoin::FOLDER, of the sources of the calling folder.
# PRECOMPILED: the target, this or an earlier one with the same compile options, whose precompiled
# headers it has. A folder without sources yet becomes an interface library, so that each can be built alone.
function(quoin_library folder)
  cmake_parse_arguments(PARSE_ARGV 1 arg "" "PRECOMPILED" "PUBLIC;PRIVATE;EXCEPT")
  set(target quoin_${folder})
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS *.cpp)
  list(TRANSFORM arg_EXCEPT PREPEND "${CMAKE_CURRENT_SOURCE_DIR}/")
  if(arg_EXCEPT)
    list(REMOVE_ITEM sources ${arg_EXCEPT})
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

# quoin_install(FOLDER): the library quoin_FOLDER and the headers of the calling folder.
function(quoin_install folder)
  install(TARGETS quoin_${folder} EXPORT quoin)
  install(DIRECTORY ./ DESTINATION include/quoin/${folder} FILES_MATCHING PATTERN *.hpp)
endfunction()
