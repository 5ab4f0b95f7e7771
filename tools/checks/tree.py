# SPDX-License-Identifier: Apache-2.0
"""The files of a source tree, and how a check ends. Shared by the checks of this folder."""

import fnmatch
import os
import pathlib
import shutil
import subprocess
import sys

CPP = {".hpp", ".cpp"}


def ignored(root):
    """A predicate on paths relative to root: what .gitignore at the top leaves out, and .git.

    Of its language names and wildcards, with `/` in front for the top alone; no `!`, no `a/b`.
    """
    listed = root / ".gitignore"
    patterns = listed.read_text(encoding="utf-8").split() if listed.is_file() else []
    anywhere = [pattern.rstrip("/") for pattern in patterns if not pattern.startswith("/")]
    at_top = [".git", *(pattern.strip("/") for pattern in patterns if pattern.startswith("/"))]
    return lambda name: any(
        fnmatch.fnmatch(name.name, pattern)
        for pattern in (anywhere if len(name.parts) > 1 else anywhere + at_top))


def walked(root):
    """Every file below root but the ignored ones, relative to it."""
    is_ignored = ignored(root)
    for folder, folders, names in os.walk(root):
        here = pathlib.Path(folder).relative_to(root)
        folders[:] = [name for name in folders if not is_ignored(here / name)]
        yield from (here / name for name in names if not is_ignored(here / name))


def listed_by_git(root):
    """What git would commit; None for a tree that is not git's, or where git does not serve."""
    if not (root / ".git").exists() or not shutil.which("git"):
        return None
    git = subprocess.run(
        ["git", "-C", root, "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        capture_output=True, text=True, check=False)
    if git.returncode != 0:
        return None
    return {pathlib.Path(name) for name in git.stdout.split("\0") if name}


def files(root):
    """Paths relative to root, sorted: what git would commit or, in a source archive, the like."""
    names = listed_by_git(root)
    if names is None:
        names = walked(root)
    return sorted(name for name in names if (root / name).is_file())


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
