# SPDX-License-Identifier: Apache-2.0
# Writes a header with the commit that SOURCE stands at, where it is a clone of its repository; leaves
# the header alone where that has not changed.
#
# usage: cmake -DSOURCE=dir -DHEADER=file -P Commit.cmake
set(commit "")
if(EXISTS "${SOURCE}/.git")
  execute_process(COMMAND git -C "${SOURCE}" describe --always --dirty --abbrev=12 "--exclude=*"
                  OUTPUT_VARIABLE commit OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_QUIET
                  RESULT_VARIABLE failed)
  if(failed)
    set(commit "")
  endif()
endif()
file(CONFIGURE OUTPUT "${HEADER}" @ONLY CONTENT [[
// SPDX-License-Identifier: Apache-2.0
#pragma once

/// The commit that the program was built from; empty: unknown.
#define QUOIN_COMMIT "@commit@"
]])
