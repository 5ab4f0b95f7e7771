# SPDX-License-Identifier: Apache-2.0
"""Solves a sample of the rows of cases/catalogue on their own: the tables say what the program says.

usage: test_catalogue.py PROGRAM SOURCE_DIR
"""

import csv
import json
import pathlib
import random
import re
import subprocess
import sys
import tempfile

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
SAMPLE = 4  # rows of each detail, others on another day's seed
DETAILS = ["corner", "jamb", "sill", "head", "wall_base", "partition"]


def one_row(detail, row, folder):
    """The row of a table by a sweep of that row alone."""
    text = (SOURCE / f"cases/catalogue/{detail}.vary.yaml").read_text("utf-8")
    lines = []
    for line in text.splitlines():
        found = re.match(r"  (\S.*): \[", line)
        if found and found[1] in row:
            line = f"  {found[1]}: [{row[found[1]]}]"
        lines.append(line)
    lining = next(path for path in row if re.search(r"/(layers|lining)/1$", path))
    start = lines.index(f"  {lining}:")
    while lines[start + 1].startswith("    -"):
        del lines[start + 1]
    lines.insert(start + 1, f"    - {row[lining]}")
    (folder / f"{detail}.vary.yaml").write_text("\n".join(lines), "utf-8")
    (folder / f"{detail}.yaml").write_bytes((SOURCE / f"cases/catalogue/{detail}.yaml").read_bytes())
    rows = folder / f"rows-{detail}-{row['row']}"
    subprocess.run([PROGRAM, "vary", "--quiet", folder / f"{detail}.vary.yaml", "-o", rows],
                   check=True)
    return subprocess.run([PROGRAM, "gather", rows, "--case", "0"], check=True,
                          capture_output=True, text=True).stdout


def check(detail, row, folder):
    case = one_row(detail, row, folder)
    solved = subprocess.run([PROGRAM, "solve", "--json", "-"], input=case, check=True,
                            capture_output=True, text=True)
    found = json.loads(solved.stdout)["variants"][0]
    coldest = found["surface"]["spaces"]["inside"]["coldest"]
    psi = {each["dimensions"]: each for each in found["psi_W_mK"]}
    told = {"fRsi": coldest["fRsi"], "fRsi band": coldest["fRsi_band"],
            "psi": found["psi_W_mK"][0]["value"], "psi band": found["psi_W_mK"][0]["band"],
            "psi external": psi["external"]["value"], "U": found["plain"][0]["U_W_m2K"]}
    for name, value in told.items():
        # The last digits of a table made on another machine may differ.
        assert abs(float(row[name]) - value) <= 1e-9 * max(1.0, abs(value)), (detail, row, name,
                                                                             value)


def main():
    chance = random.Random(1870)
    count = 0
    with tempfile.TemporaryDirectory() as name:
        for detail in DETAILS:
            with open(SOURCE / f"cases/catalogue/{detail}.csv", encoding="utf-8") as table:
                rows = list(csv.DictReader(table))
            assert [int(row["row"]) for row in rows] == list(range(168)), detail
            assert not any(row["fault"] for row in rows), detail
            count += len(rows)
            for row in chance.sample(rows, SAMPLE):
                check(detail, row, pathlib.Path(name))
            # A twin: another row is no match.
            try:
                check(detail, {**rows[0], "psi": rows[-1]["psi"]}, pathlib.Path(name))
            except AssertionError:
                continue
            raise AssertionError(f"{detail}: a wrong row passes")
    print(f"{count} rows, {SAMPLE * len(DETAILS)} of them solved again")


if __name__ == "__main__":
    main()
