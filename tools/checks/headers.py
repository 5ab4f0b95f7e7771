# SPDX-License-Identifier: Apache-2.0
"""Checks that each header compiles on its own, and twice over, with warnings as errors.

A header that some source includes first is left to the build of that source. One that needs a
library which no set-up installs is skipped where that library is missing, and named.

usage: headers.py ROOT COMPILER [FLAG...]
"""

import concurrent.futures
import os
import re
import subprocess
import sys

import tree

# Headers of libraries that only benchmarks use.
OPTIONAL = re.compile(r"fatal error: '?(benchmark/|cholmod|HYPRE|mpi)")
INCLUDE = re.compile(r'^#include ["<](.+)[">]', re.MULTILINE)


def included_first(root):
    """The header that each source includes before all others."""
    for name in tree.cpp_files(root):
        first = INCLUDE.search(tree.text(root, name))
        if first and name.suffix == ".cpp":
            yield first[1]


def fault(root, name):
    source = f'#include "{name}"\n#include "{name}"\n'
    command = [*sys.argv[2:], "-I", str(root), "-x", "c++", "-fsyntax-only", "-"]
    compiled = subprocess.run(command, input=source, capture_output=True, text=True, check=False)
    if compiled.returncode == 0:
        return None
    if OPTIONAL.search(compiled.stderr):
        print(f"{name}: skipped, for want of a library that only benchmarks use")
        return None
    return f"{name}: does not compile on its own\n{compiled.stderr}"


def faults(root):
    compiled = set(included_first(root))
    headers = [name for name in tree.cpp_files(root)
               if name.suffix == ".hpp" and name.as_posix() not in compiled]
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        found = pool.map(lambda name: fault(root, name), headers)
    return [line for line in found if line]


if __name__ == "__main__":
    tree.run(faults)
