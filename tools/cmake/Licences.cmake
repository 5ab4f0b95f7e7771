# SPDX-License-Identifier: Apache-2.0

# quoin_install_licences(PACKAGE...): the notices of libraries whose headers are compiled into what
# is installed, below licences/ in its documentation. They are those of the Debian packages on the
# machine that builds, so that they belong to the versions built in; elsewhere who passes the
# program on adds them.
function(quoin_install_licences)
  foreach(package IN LISTS ARGN)
    set(notice /usr/share/doc/${package}/copyright)
    if(EXISTS ${notice})
      install(FILES ${notice} DESTINATION ${CMAKE_INSTALL_DOCDIR}/licences RENAME ${package})
    else()
      message(STATUS "No ${notice}: the licence of ${package} is not installed")
    endif()
  endforeach()
endfunction()
