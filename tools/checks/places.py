# SPDX-License-Identifier: Apache-2.0
"""Checks that no file names a place of some developer's machine.

usage: places.py ROOT
"""

import re

import tree

PLACE = re.compile(r"(?<![\w.$}~/-])/(work|home|root|Users)/\w*")


def faults(root):
    return [f"{name}:{number}: names {found[0]}"
            for name in tree.files(root)
            for number, line in enumerate(tree.text(root, name).splitlines(), 1)
            for found in [PLACE.search(line)] if found]


if __name__ == "__main__":
    tree.run(faults)
