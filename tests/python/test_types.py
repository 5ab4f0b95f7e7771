# SPDX-License-Identifier: Apache-2.0
"""The stubs of the Python module: mypy takes what is right and refuses what is wrong.

usage: test_types.py MYPY   (with the module in MYPYPATH); ends with 77 where the stubs of numpy are missing
"""

import os
import pathlib
import re
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).parent


def checked(name, cache):
    return subprocess.run([sys.argv[1], "--strict", "--cache-dir", cache, HERE / name],
                          capture_output=True, text=True)


def main():
    with tempfile.TemporaryDirectory() as cache:
        right = checked("typed.py", cache)
        assert right.returncode == 0, right.stdout
        wrong = checked("badly_typed.py", cache)
        lines = (HERE / "badly_typed.py").read_text("utf-8").splitlines()
        calls = {number for number, line in enumerate(lines, 1) if line.startswith("quoin.")}
        refused = {int(line) for line in re.findall(r":(\d+): error", wrong.stdout)}
        assert refused == calls, (refused, calls, wrong.stdout)
        stubs = pathlib.Path(os.environ["MYPYPATH"]) / "quoin/__init__.pyi"
        assert (stubs.parent / "py.typed").exists()


if __name__ == "__main__":
    main()
