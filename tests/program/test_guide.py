# SPDX-License-Identifier: Apache-2.0
"""Runs the commands of cases/guide and sees that its pages say the numbers that the program finds.

usage: test_guide.py PROGRAM SOURCE_DIR

A page names its files once, `<!-- name = file -->`, and says behind each number what it is:
`11.0<!--=name variants/as found/.../temperature_C .1f-->`. A step of a path is a key, a position, or the
name of an item. Of a sweep, whose rows are gathered from the folder that the page's commands fill:
`0.62<!--=rows max fRsi PATH=VALUE .2f-->`.
"""

import csv
import io
import json
import pathlib
import re
import shlex
import shutil
import subprocess
import sys
import tempfile

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
PAGES = ["1-damp-corner", "2-reveal", "3-foot", "4-hand-in", "5-forty-details"]
TOLD = re.compile(r"(-?[\d.]+)<!--=(\w+) (.*?) (\.\df)-->")


def run(arguments, folder):
    done = subprocess.run([PROGRAM, *arguments], cwd=folder, capture_output=True, text=True)
    assert done.returncode == 0, (arguments, done)
    return done.stdout


def step(value, name):
    if isinstance(value, list):
        if name.isdigit():
            return value[int(name)]
        return next(item for item in value if item.get("name") == name)
    return value[name]


def found(findings, path):
    value = findings
    for name in path.split("/"):
        value = step(value, name)
    return value


def of_rows(table, wanted):
    which, column, condition = wanted.split(" ", 2)
    path, value = condition.split("=", 1)
    rows = [row for row in csv.DictReader(io.StringIO(table)) if row[path] == value]
    assert rows, wanted
    return {"max": max, "min": min}[which](float(row[column]) for row in rows)


def check_numbers(page, text, folder):
    names = dict(re.findall(r"<!-- (\w+) = (\S+) -->", text))
    answers = {}
    wrong = []
    numbers = TOLD.findall(text)
    assert numbers, f"{page} tells no number"
    for told, name, path, form in numbers:
        if name not in answers:
            is_sweep = names[name].endswith(".vary.yaml")
            sweep = names[name].removesuffix(".vary.yaml")
            answers[name] = (run(["gather", sweep], folder) if is_sweep else
                             json.loads(run(["solve", "--json", names[name]], folder)))
        answer = answers[name]
        value = of_rows(answer, path) if isinstance(answer, str) else found(answer, path)
        if f"{value:{form}}" != told:
            wrong.append(f"{page}: says {told}, found {value:{form}}: {path}")
    return wrong, len(numbers)


def main():
    wrong, count = [], 0
    with tempfile.TemporaryDirectory() as name:
        cases = pathlib.Path(name) / "cases"
        shutil.copytree(SOURCE / "cases", cases)
        folder = cases / "guide"
        for page in PAGES:
            text = (folder / f"{page}.md").read_text("utf-8")
            for block in re.findall(r"```console\n(.*?)```", text, re.DOTALL):
                for line in block.splitlines():
                    words = shlex.split(line)
                    assert words[:2] == ["$", "quoin"], line
                    output = run(words[2:], folder)
                    if "--picture" in words:
                        assert output.startswith("<svg") or output.startswith("<?xml"), output[:80]
            for picture in re.findall(r"\]\((pictures/\S+\.svg)\)", text):
                assert (folder / picture).stat().st_size > 1000, picture
            for link in re.findall(r"\]\(([^)#:]+)\)", text):
                assert (folder / link).exists() or link.startswith("../../"), (page, link)
            if "yaml\nvary" in text:
                block = re.search(r"```yaml\n(.*?)```", text, re.DOTALL)[1]
                assert block in (folder / "forty.vary.yaml").read_text("utf-8")
            more, numbers = check_numbers(page, text, folder)
            wrong += more
            count += numbers
            # A twin: a number that is not what is found is seen.
            told = TOLD.search(text)
            spoilt = text.replace(told[0], told[0].replace(told[1], told[1] + "9", 1), 1)
            assert check_numbers(page, spoilt, folder)[0], f"{page}: a wrong number passes"
    print("\n".join(wrong + [f"{count} numbers in {len(PAGES)} pages"]))
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
