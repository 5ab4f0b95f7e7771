# SPDX-License-Identifier: Apache-2.0
"""Checks that no variable of a header is computed when the program starts.

It is constexpr, or a function gives it: not every compiler starts inline variables in the order
that the standard wants (the board's does not), and one read before its start is zero.

usage: constants.py ROOT
"""

import re

import tree

STARTED = re.compile(r"(?:static )?inline (?!constexpr )(?:static )?(?:const )?[\w:<>, ]+ (\w+)(?:\[\w*\])?(?: = | ?\{(?!$))")


def faults(root):
    return [f"{name}:{number}: {found[1]} is computed when the program starts"
            for name in tree.cpp_files(root) if name.suffix == ".hpp" and name.parts[0] != "tests"
            for number, line in enumerate(tree.text(root, name).splitlines(), 1)
            if (found := STARTED.match(line.strip()))]


if __name__ == "__main__":
    tree.run(faults)
