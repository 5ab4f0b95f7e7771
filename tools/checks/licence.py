# SPDX-License-Identifier: Apache-2.0
"""Checks that every source file names its licence in one of its first two lines, and that what lies in a
folder `vendor`, as others made it, has its notice beside it: NAME.licence.txt for NAME.js.

usage: licence.py ROOT
"""

import tree

SUFFIXES = {".hpp", ".cpp", ".py", ".cmake", ".in", ".js", ".css"}
SPDX = "SPDX-License-" + "Identifier: Apache-2.0"


def is_source(root, name):
    return (name.suffix in SUFFIXES or name.name in ("CMakeLists.txt", "catalogue.yaml")
            or tree.text(root, name).startswith("#!"))


def fault(root, name, names):
    if SPDX in "\n".join(tree.text(root, name).splitlines()[:2]):
        return None
    if "vendor" not in name.parts:
        return f"{name}: no line '{SPDX}' at the top"
    notice = name.with_name(f"{name.name.split('.')[0]}.licence.txt")
    return None if notice in names else f"{name}: no notice beside it, {notice.name}"


def faults(root):
    names = set(tree.files(root))
    told = (fault(root, name, names) for name in sorted(names) if is_source(root, name))
    return [one for one in told if one]


if __name__ == "__main__":
    tree.run(faults)
