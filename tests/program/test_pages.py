# SPDX-License-Identifier: Apache-2.0
"""The manual page and the completions: they tell every command and option of the help, and shells
read them. A shell that is not here is left out.

usage: test_pages.py PROGRAM
"""

import re
import shutil
import subprocess
import sys

PROGRAM = sys.argv[1]


def run(*arguments):
    return subprocess.run([PROGRAM, *arguments], check=True, capture_output=True, text=True).stdout


def options_of(text):
    return set(re.findall(r"(?<![\w-])--[a-z][a-z-]*", text))


def commands():
    help_text = run("--help")
    listed = help_text[help_text.index("Commands"):]
    return re.findall(r"^  ([a-z]+) ", listed, re.MULTILINE)


def completed(script, line):
    """What bash would offer behind a line."""
    words = line.split(" ")
    code = (f"{script}\nCOMP_WORDS=({' '.join(repr(word) for word in words)})\n"
            f"COMP_CWORD={len(words) - 1}\n_quoin\nprintf '%s\\n' \"${{COMPREPLY[@]}}\"\n")
    done = subprocess.run(["bash", "-c", code], check=True, capture_output=True, text=True)
    return set(done.stdout.split())


def main():
    names = commands()
    assert {"solve", "vary", "gather", "trace", "schema"} <= set(names), names
    assert "pages" not in names
    man, bash, zsh, fish = (run("pages", "--for", kind) for kind in ("man", "bash", "zsh", "fish"))
    for name in names:
        wanted = options_of(run(name, "--help"))
        assert f'.SS "quoin {name}"' in man, name
        assert wanted <= options_of(man.replace("\\-", "-").replace("\\fB", " ")), name
        assert wanted <= completed(bash, f"quoin {name} -"), name
        for option in wanted:
            assert option in zsh, (name, option)
            assert f"-l {option[2:]} " in fish, (name, option)
    assert completed(bash, "quoin so") == {"solve"}
    assert completed(bash, "quoin solve case.yaml --js") == {"--json"}
    assert completed(bash, "quoin solve case.yaml --nothing") == set()
    if shutil.which("man"):
        done = subprocess.run(["man", "--warnings", "-l", "-"], input=man, capture_output=True,
                              text=True, env={"LC_ALL": "C.UTF-8", "PATH": "/usr/bin:/bin"})
        assert done.returncode == 0 and not done.stderr, done.stderr
    for shell, script in (("zsh", zsh), ("fish", fish), ("bash", bash)):
        if shutil.which(shell):
            subprocess.run([shell, "-n"], input=script, check=True, text=True)
    version = run("--version")
    assert re.fullmatch(r"quoin \S+ \((commit [0-9a-f]{12}(-dirty)?|no commit known), "
                        r"(g|clang)\+\+ [\d.]+.*\)\n", version), version


if __name__ == "__main__":
    main()
