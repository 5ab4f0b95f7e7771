# SPDX-License-Identifier: Apache-2.0
"""Checks that a program is built so that a fault in its memory does as little harm as it can.

It moves in memory (PIE), what the loader fills in is read-only before it starts (full RELRO), its
stack is watched and calls of the C library are checked for room. As a twin, a program built without
any of these must be found to lack every one.

usage: hardened.py READELF PROGRAM COMPILER
"""

import pathlib
import re
import subprocess
import sys
import tempfile

BARE = "int main() { char name[64]; char* end = __builtin_strcpy(name, \"quoin\"); return end[5]; }\n"
BARE_FLAGS = ["-O0", "-no-pie", "-fno-stack-protector", "-U_FORTIFY_SOURCE", "-Wl,-z,norelro,-z,lazy"]

# What readelf must show, by the name of the guard.
GUARDS = {
    "moves in memory": r"Type:\s+DYN \(Position-Independent Executable",
    "read-only after loading": r"GNU_RELRO",
    "all bound at the start": r"FLAGS_1.*NOW",
    "a watched stack": r"__stack_chk_fail",
    "checked calls": r"__(mem|str|printf|snprintf|vsnprintf|read|fread)\w*_chk",
}


def missing(readelf, program):
    """Names of the guards a program lacks."""
    shown = subprocess.run([readelf, "--wide", "--file-header", "--program-headers", "--dynamic",
                            "--dyn-syms", program], capture_output=True, text=True,
                           check=True).stdout
    return [name for name, sign in GUARDS.items() if not re.search(sign, shown)]


def main():
    _, readelf, program, compiler = sys.argv
    lacking = missing(readelf, program)
    for name in lacking:
        print(f"{program} lacks: {name}")
    with tempfile.TemporaryDirectory() as folder:
        bare = pathlib.Path(folder) / "bare"
        subprocess.run([compiler, *BARE_FLAGS, "-x", "c++", "-", "-o", bare], input=BARE, text=True,
                       check=True)
        unnoticed = set(GUARDS) - set(missing(readelf, bare))
    for name in sorted(unnoticed):
        print(f"a program without guards was taken to have: {name}")
    print(f"{len(GUARDS)} guards, {len(lacking)} missing")
    sys.exit(1 if lacking or unnoticed else 0)


if __name__ == "__main__":
    main()
