# SPDX-License-Identifier: Apache-2.0
"""Checks that clang-format would change no C++ file. Exits with 77 (skipped) where it is missing.

usage: format.py ROOT
"""

import shutil
import subprocess
import sys

import tree


def faults(root):
    names = [str(name) for name in tree.cpp_files(root)]
    if not names:
        return []
    checked = subprocess.run(["clang-format", "--dry-run", "--Werror", *names], cwd=root,
                             capture_output=True, text=True, check=False)
    return [line for line in checked.stderr.splitlines() if "error:" in line]


if __name__ == "__main__":
    if not shutil.which("clang-format"):
        print("skipped: clang-format is not installed")
        sys.exit(77)
    tree.run(faults)
