# SPDX-License-Identifier: Apache-2.0
"""Checks that every source file names its licence in one of its first two lines.

usage: licence.py ROOT
"""

import tree

SUFFIXES = {".hpp", ".cpp", ".py", ".cmake", ".in", ".js", ".css"}
SPDX = "SPDX-License-" + "Identifier: Apache-2.0"


def is_source(root, name):
    return (name.suffix in SUFFIXES or name.name in ("CMakeLists.txt", "catalogue.yaml")
            or tree.text(root, name).startswith("#!"))


def faults(root):
    return [f"{name}: no line '{SPDX}' at the top" for name in tree.files(root)
            if is_source(root, name) and SPDX not in
            "\n".join(tree.text(root, name).splitlines()[:2])]


if __name__ == "__main__":
    tree.run(faults)
