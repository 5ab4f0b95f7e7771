# SPDX-License-Identifier: Apache-2.0
"""Checks that kernels compiled for wide registers define nothing that other sources define too.

The linker keeps one copy of what several sources define. Were that the one for wide registers, the
program would stop on a machine that lacks them. As a twin, a source that does share its functions
must be refused.

usage: wide_kernels.py NM ARCHIVE
"""

import re
import subprocess
import sys

SHARED = set("VWuvw")  # letters of nm for what may be defined more than once


def shared_names(nm, archive, member):
    """What a member of an archive may share with others; None without such a member."""
    listed = subprocess.run([nm, "-C", "--defined-only", archive], capture_output=True, text=True,
                            check=True).stdout
    sections = re.split(r"^(\S+\.o):$", listed, flags=re.MULTILINE)
    for name, symbols in zip(sections[1::2], sections[2::2]):
        if name == member:
            return [line.split(maxsplit=2)[2] for line in symbols.splitlines()
                    if len(line.split(maxsplit=2)) == 3 and line.split()[1] in SHARED]
    return None


def main():
    _, nm, archive = sys.argv
    failed = False
    for width in (32, 64):
        names = shared_names(nm, archive, f"panel_kernels_{width}.cpp.o")
        if names is None:
            sys.exit(f"no kernels for registers of {width} bytes in {archive}")
        foreign = [name for name in names if f"registers_of_{width}_bytes" not in name]
        print(f"{len(names)} kernels for registers of {width} bytes")
        for name in foreign:
            print(f"panel_kernels_{width}.cpp shares {name}")
        failed = failed or bool(foreign) or not names
    if not shared_names(nm, archive, "multigrid_solver.cpp.o"):
        print("multigrid_solver.cpp shares functions, but none was found")
        failed = True
    sys.exit(1 if failed else 0)


if __name__ == "__main__":
    main()
