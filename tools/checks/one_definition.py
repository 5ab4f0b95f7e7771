# SPDX-License-Identifier: Apache-2.0
"""Checks that no two files define a type of one name in one namespace.

No compiler sees both, and the linker keeps one copy of what either needs: of two that differ the
program takes apart one by the rule of the other.

usage: one_definition.py ROOT
"""

import collections
import re

import tree

OPENS = re.compile(r"namespace(?: ([\w:]+))? \{")
CLOSES = re.compile(r"\}\s*// namespace")
DEFINES = re.compile(r"(?:struct|class|enum class|enum) (\w+)(?: final)?(?: :[^:;]*)? ?\{")


def defined(text):
    """The types a file defines outside others and in no namespace of its own, with their lines."""
    spaces = []
    for number, line in enumerate(text.splitlines(), 1):
        if found := OPENS.match(line):
            spaces.append(found[1])
        elif CLOSES.match(line) and spaces:
            spaces.pop()
        elif (found := DEFINES.match(line)) and None not in spaces:
            yield "::".join([*spaces, found[1]]), number


def faults(root):
    places = collections.defaultdict(list)
    for name in tree.cpp_files(root):
        for what, number in defined(tree.text(root, name)):
            places[what].append((name, number))
    return [f"{name}:{number}: {what} is defined in {first[0]}, too"
            for what, (first, *others) in places.items()
            for name, number in others if name != first[0]]


if __name__ == "__main__":
    tree.run(faults)
