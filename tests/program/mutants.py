# SPDX-License-Identifier: Apache-2.0
"""Gives the program case files that went wrong in the hand: the examples and every starting case
with keys removed, doubled, swapped, misspelt or nested wrongly, with values of the wrong kind, huge,
negative or in other signs, or cut short. Whatever it is, the program says so and ends with 0, 1 or
2, in time. The same mutants on every run.

usage: mutants.py PROGRAM SOURCE_FOLDER [COUNT]
"""

import concurrent.futures
import os
import pathlib
import random
import re
import subprocess
import sys
import tempfile

LIMIT_SECONDS = 60  # a mutant may ask for much, and machines are slow; a run for ever is what counts

VALUES = ["", "~", "{}", "[]", "[[]]", "0", "-1", "1e9", "-1e308", "1e999", ".nan", "010", "0x10",
          "0,5", "12 °F", "100 %", "1 mm", "5 m", "true", "nothing", "inside", "outside", "damp",
          "\"\"", "\"  \"", "\"\\e[31m\"", "\u202e", "\U0001f525", "ﬀ", "[1, 2, 3]", "{a: b}",
          "[0, 0]", "[10, 0]", "x" * 300, "*a", "&a 1", "!!int 1", "|", "- ", "\ttab", "common brick",
          "room", "outdoors", "air layer", "infinite", "0.0001", "1000000"]
KEYS = ["temprature", "is", "like", "void", "temperature", "humidity", "b", "losses", "air bricks",
        "wind", "resistance", "behind", "coat", "layers", "lining", "of", "fill", "part", "outside",
        "inside", "openings", "moisture", "cavity", "air layer", "quoin", "section", "\"\\e[2J\""]
HURTFUL = ["AddressSanitizer", "runtime error:", "Assertion", "terminate called", "Traceback",
           "std::", "/usr/include/"]


def lines_with_keys(lines):
    return [k for k, line in enumerate(lines) if re.match(r"\s*(- )?[^#\s].*: ?", line)]


def remove_line(lines, pick):
    del lines[pick.randrange(len(lines))]


def double_line(lines, pick):
    k = pick.randrange(len(lines))
    lines.insert(k, lines[k])


def swap_lines(lines, pick):
    a, b = pick.randrange(len(lines)), pick.randrange(len(lines))
    lines[a], lines[b] = lines[b], lines[a]


def indent_line(lines, pick):
    k = pick.randrange(len(lines))
    lines[k] = "  " + lines[k] if pick.random() < 0.5 else lines[k][2:]


def change_text(lines, pick, pattern, replacements):
    """One place that fits the pattern, somewhere in the file, replaced."""
    text = "\n".join(lines)
    places = list(re.finditer(pattern, text))
    if places:
        place = pick.choice(places)
        text = text[:place.start(1)] + pick.choice(replacements) + text[place.end(1):]
        lines[:] = text.split("\n")


def other_value(lines, pick):
    change_text(lines, pick, r": +([^\s{}\[\],#][^{}\[\],#\n]*)", VALUES)


def other_key(lines, pick):
    change_text(lines, pick, r"([A-Za-z][A-Za-z ]*):", KEYS)


def other_number(lines, pick):
    change_text(lines, pick, r"(?<![\w.])(-?\d+(?:\.\d+)?)", VALUES)


def swap_words(lines, pick):
    words = re.findall(r"[A-Za-z][A-Za-z ]+[a-z]", "\n".join(lines))
    change_text(lines, pick, r"([A-Za-z][A-Za-z ]+[a-z])", words or VALUES)


def remove_entry(lines, pick):
    change_text(lines, pick, r"([A-Za-z][A-Za-z ]*: *[^\s{}\[\],]+,? *)", [""])


def remove_sign(lines, pick):
    change_text(lines, pick, r"([{}\[\],:])", ["", " ", "{", "}", "[", "]", ","])


def empty_block(lines, pick):
    """A key whose block is gone or is another's."""
    keys = lines_with_keys(lines)
    if keys:
        k = pick.choice(keys)
        lines[k] = lines[k].split(":")[0] + ": " + pick.choice(VALUES)


def cut_short(lines, pick):
    text = "\n".join(lines)
    lines[:] = text[:pick.randrange(len(text))].split("\n")


def letter(lines, pick):
    k = pick.randrange(len(lines))
    if lines[k]:
        at = pick.randrange(len(lines[k]))
        lines[k] = lines[k][:at] + pick.choice("ax0 :-{}[],#\"'é\u202e\x07") + lines[k][at + 1:]


CHANGES = [remove_line, double_line, swap_lines, indent_line, other_value, other_value, other_key,
           other_key, other_number, other_number, swap_words, swap_words, remove_entry, remove_entry,
           remove_sign, empty_block, cut_short, letter]


def mutant(text, pick):
    lines = text.split("\n")
    for _ in range(pick.choice([1, 1, 1, 2, 3])):
        if lines:
            pick.choice(CHANGES)(lines, pick)
    return "\n".join(lines)


def seeds(program, source):
    texts = [path.read_text("utf-8") for path in sorted((source / "cases/examples").glob("*.yaml"))]
    known = subprocess.run([program, "new", "no such recipe"], capture_output=True, text=True)
    names = re.search(r"expected +(.*)", known.stderr).group(1).split(", ")
    for name in names:
        start = subprocess.run([program, "new", name], capture_output=True, text=True, check=True)
        texts.append(start.stdout)
        # What is commented out is part of the language, too.
        texts.append(re.sub(r"(?m)^( *)# (?=[a-z-][^.]*:)", r"\1", start.stdout))
    return texts


def fault_of(program, command, path):
    """What is wrong with how the program took a file; empty where nothing is."""
    try:
        run = subprocess.run([program, "--quiet", command, path], capture_output=True,
                             timeout=LIMIT_SECONDS, check=False)
    except subprocess.TimeoutExpired:
        return f"no end within {LIMIT_SECONDS} s"
    said = run.stderr.decode("utf-8", "replace")
    if run.returncode not in (0, 1, 2):
        return f"exit {run.returncode}: {said[-300:]}"
    if run.returncode == 2 and not said.strip():
        return "refused without a word"
    for word in HURTFUL:
        if word in said:
            return f"'{word}' in {said[-300:]}"
    if re.search("[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e]", said):
        return f"a sign that steers a terminal: {said[-300:]!r}"
    return ""


def main():
    program, source = sys.argv[1], pathlib.Path(sys.argv[2])
    count = int(sys.argv[3]) if len(sys.argv) > 3 else 5000
    texts = seeds(program, source)
    with tempfile.TemporaryDirectory(prefix="quoin-mutants-") as folder:
        def attempt(number):
            text = mutant(texts[number % len(texts)], random.Random(number))
            path = pathlib.Path(folder) / f"mutant{number}.yaml"
            path.write_text(text, "utf-8")
            fault = fault_of(program, "solve", str(path))
            path.unlink()
            return number, text, fault

        failures = 0
        with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as workers:
            for number, text, fault in workers.map(attempt, range(count)):
                if fault:
                    failures += 1
                    print(f"mutant {number}: {fault}\n{text}\n")
    print(f"{count} mutants of {len(texts)} cases, {failures} taken wrongly")
    return 1 if failures or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
