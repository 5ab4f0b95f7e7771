# SPDX-License-Identifier: Apache-2.0
"""Checks that the top level holds only the names it is meant to hold.

usage: top_level.py ROOT
"""

import tree

FOLDERS = {".ci", "cases", "geometry", "materials", "solver", "tests", "tools"}
FILES = {".clang-format", ".clang-tidy", ".gitignore", "CMakeLists.txt", "CMakePresets.json",
         "DEVELOPERS.md", "LICENSE", "README.md"}


def faults(root):
    found = []
    for name in tree.files(root):
        top = name.parts[0]
        if top not in (FOLDERS if len(name.parts) > 1 else FILES):
            found.append(f"{top}: not a name of the top level")
    return sorted(set(found))


if __name__ == "__main__":
    tree.run(faults)
