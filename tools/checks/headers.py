# SPDX-License-Identifier: Apache-2.0
"""Checks that each header compiles on its own, and twice over, with warnings as errors.

usage: headers.py ROOT COMPILER [FLAG...]
"""

import concurrent.futures
import os
import subprocess
import sys

import tree


def fault(root, name):
    source = f'#include "{name}"\n#include "{name}"\n'
    command = [*sys.argv[2:], "-I", str(root), "-x", "c++", "-fsyntax-only", "-"]
    compiled = subprocess.run(command, input=source, capture_output=True, text=True, check=False)
    if compiled.returncode == 0:
        return None
    return f"{name}: does not compile on its own\n{compiled.stderr}"


def faults(root):
    headers = [name for name in tree.files(root) if name.suffix == ".hpp"]
    with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
        found = pool.map(lambda name: fault(root, name), headers)
    return [line for line in found if line]


if __name__ == "__main__":
    tree.run(faults)
