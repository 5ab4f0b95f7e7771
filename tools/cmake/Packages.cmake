# SPDX-License-Identifier: Apache-2.0

# Debian packages by `cpack -G DEB`: the program, its libraries with headers, the Python module. Two
# builds of one commit give the same bytes where SOURCE_DATE_EPOCH is set, as tools/package does.
set(CPACK_PACKAGE_NAME quoin)
set(CPACK_PACKAGE_VENDOR "The Quoin project")
set(CPACK_PACKAGE_CONTACT "The Quoin project <quoin@example.invalid>")
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "Heat, damp and mould at the cold places of old walls")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_VERBATIM_VARIABLES ON)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_COMPONENTS_ALL program)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME quoin)
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION
    "Steady two-dimensional heat flow through damp old walls: temperatures, fRsi, humidity and psi\nwith error bands, from a short text file.")
# Letters of reports and pictures.
set(CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS fonts-dejavu-core)

list(APPEND CPACK_COMPONENTS_ALL library)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME libquoin-dev)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SHLIBDEPS OFF)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_DEPENDS "libfmt-dev, libyaml-cpp-dev, libboost-dev, libeigen3-dev")
set(CPACK_COMPONENT_LIBRARY_DESCRIPTION
    "Static libraries and headers of Quoin, found by find_package(quoin).")

if(TARGET quoin_python)
  list(APPEND CPACK_COMPONENTS_ALL python)
  set(CPACK_DEBIAN_PYTHON_PACKAGE_NAME python3-quoin)
  set(CPACK_DEBIAN_PYTHON_PACKAGE_SECTION python)
  # Pictures, PDF and fields are made by the parts of the program.
  set(CPACK_DEBIAN_PYTHON_PACKAGE_DEPENDS
      "python3 (>= ${QUOIN_PYTHON_FROM}), python3 (<< ${QUOIN_PYTHON_BEFORE}), python3-numpy, quoin (= ${PROJECT_VERSION})")
  set(CPACK_COMPONENT_PYTHON_DESCRIPTION "Quoin as a module of Python 3.")
endif()
# Each package says under what licence it comes, where Debian looks for that.
foreach(component IN LISTS CPACK_COMPONENTS_ALL)
  string(TOUPPER ${component} upper)
  install(FILES LICENSE DESTINATION "share/doc/${CPACK_DEBIAN_${upper}_PACKAGE_NAME}"
          RENAME copyright COMPONENT ${component} EXCLUDE_FROM_ALL)
endforeach()
include(CPack)
