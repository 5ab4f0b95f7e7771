# SPDX-License-Identifier: Apache-2.0
"""The files of a source tree, and how a check ends. Shared by the checks of this folder."""

import pathlib
import subprocess
import sys

CPP = {".hpp", ".cpp"}
BUILT = ("build", "demo-output", "__pycache__")


def files(root):
    """Paths relative to root, sorted: what git would commit or, outside git, all but built files."""
    git = subprocess.run(
        ["git", "-C", root, "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        capture_output=True, text=True, check=False)
    if git.returncode == 0:
        names = {pathlib.Path(name) for name in git.stdout.split("\0") if name}
    else:
        names = {path.relative_to(root) for path in pathlib.Path(root).rglob("*")}
        names = {name for name in names if not name.parts[0].startswith((".git/", *BUILT))}
    return sorted(name for name in names if (root / name).is_file() and name.parts[0] != ".git")


def cpp_files(root):
    return [name for name in files(root) if name.suffix in CPP]


def text(root, name):
    return (root / name).read_text(encoding="utf-8", errors="replace")


def run(faults):
    """Runs a check, faults(root) -> list of lines, on the tree named first on the command line."""
    root = pathlib.Path(sys.argv[1]).resolve()
    found = faults(root)
    for line in found:
        print(line)
    print(f"{len(found)} faults in {root.name}")
    sys.exit(1 if found else 0)
