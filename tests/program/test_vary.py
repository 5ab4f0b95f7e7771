# SPDX-License-Identifier: Apache-2.0
"""Kills, stops and starves quoin vary: no row is lost, none is there twice, the file is whole.

usage: test_vary.py PROGRAM [KILLS]

The seed is fixed; where a kill meets the program depends on the machine.
"""

import contextlib
import csv
import io
import pathlib
import random
import resource
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time

from sweep_case import CASE

PROGRAM = sys.argv[1]
KILLS = int(sys.argv[2]) if len(sys.argv) > 2 else 20

# 2,000 rows, some of them no case: a wall of negative thickness.
SWEEP = """vary: 1
case: corner.yaml
over:
  section/corner/layers/1/thickness: {from: -100, to: 898, step: 2}
  spaces/yard/temperature: [-10, -5, 0, 5]
table: [coldest, fRsi, psi]
"""
ROWS = 2000


def command(folder, rows="rows", *more):
    return [PROGRAM, "vary", str(folder / "sweep.yaml"), "-o", str(folder / rows), *more]


def gathered(folder, rows="rows"):
    done = subprocess.run([PROGRAM, "gather", str(folder / rows)], check=True,
                          capture_output=True, text=True)
    return done.stdout


def base(folder, rows="rows"):
    return sqlite3.connect(folder / rows / "part-1-of-1.sqlite")


def see_whole(folder):
    """How many rows the file holds; it is whole and holds none twice."""
    with base(folder) as rows:
        assert rows.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        if not rows.execute("SELECT 1 FROM sqlite_master WHERE name = 'rows'").fetchall():
            return 0
        count, keys, numbers = rows.execute(
            "SELECT count(*), count(DISTINCT key), count(DISTINCT number) FROM rows").fetchone()
    assert count == keys == numbers, (count, keys, numbers)
    return count


def wait_for_rows(run, folder, rows="rows"):
    """Until a run has put rows into its file, or has ended. Whether it goes on."""
    file = folder / rows / "part-1-of-1.sqlite"
    while run.poll() is None:
        try:
            with contextlib.closing(sqlite3.connect(f"file:{file}?mode=ro", uri=True)) as store:
                if store.execute("SELECT 1 FROM rows LIMIT 1").fetchone():
                    break
        except sqlite3.OperationalError:  # not there yet, or being written
            pass
        time.sleep(0.01)
    return run.poll() is None


def check_kills(folder, wanted, seconds):
    """Killed at any moment it goes on; what it holds at the end is what one run gives."""
    chance = random.Random(20)
    longest = max(0.8, seconds / 5)  # so that twenty runs cut short get about as far as a whole one
    count = 0
    for kill in range(KILLS):
        run = subprocess.Popen(command(folder), stderr=subprocess.DEVNULL)
        if kill == 0:
            wait_for_rows(run, folder)
        time.sleep(chance.uniform(0.0, longest))
        run.send_signal(signal.SIGKILL)
        run.wait()
        if (folder / "rows/part-1-of-1.sqlite").exists():
            # Whoever looks first takes back what was half written.
            if kill % 2:
                seen = subprocess.run([PROGRAM, "gather", str(folder / "rows")],
                                      capture_output=True, text=True)
                assert seen.returncode in (0, 4), seen
            now = see_whole(folder)
            assert now >= count, f"rows were lost: {count}, then {now}"
            count = now
    print(f"{count} of {ROWS} rows after {KILLS} kills")
    assert count > 0, "the first run was killed after it had put rows into its file"
    end = subprocess.run(command(folder), capture_output=True, text=True)
    assert end.returncode == 2, end  # rows of negative thickness
    assert see_whole(folder) == ROWS
    assert gathered(folder) == wanted


def check_interrupt(folder):
    """Asked to end, it keeps what it has and says how to go on."""
    run = subprocess.Popen(command(folder, "stopped"), stderr=subprocess.PIPE, text=True)
    wait_for_rows(run, folder, "stopped")
    run.send_signal(signal.SIGINT)
    notes = run.communicate()[1]
    if run.returncode == 2:
        print("this machine is done before it can be stopped")
        return
    assert run.returncode == -signal.SIGINT, run.returncode
    last = notes.splitlines()[-1]  # lines before it tell how far it was
    told = int(last.split(" of ")[0])
    assert told == ROWS or "the same command goes on from here" in last, notes
    with base(folder, "stopped") as rows:
        assert rows.execute("SELECT count(*) FROM rows").fetchone() == (told,)


def check_full_disk(folder):
    """A file that can grow no further: exit 4, and what was written before stays."""
    def starve():
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (60_000, 60_000))

    run = subprocess.run(command(folder, "starved"), preexec_fn=starve, capture_output=True,
                         text=True)
    assert run.returncode == 4, run
    assert "part-1-of-1.sqlite" in run.stderr, run.stderr
    with base(folder, "starved") as rows:
        assert rows.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    end = subprocess.run(command(folder, "starved"), capture_output=True, text=True)
    assert end.returncode == 2, end
    assert gathered(folder, "starved") == gathered(folder, "whole")


def check_table(folder, text):
    """The table has every row once, in order, and tells why one is none; SQLite shows the same."""
    rows = list(csv.DictReader(io.StringIO(text)))
    assert [int(row["row"]) for row in rows] == list(range(ROWS))
    path = "section/corner/layers/1/thickness"
    faulty = [row for row in rows if row["fault"]]
    assert faulty and all(float(row[path]) < 1000 for row in faulty)
    assert any(float(row[path]) < 0 for row in faulty)
    assert not any(row["fault"] for row in rows if 100 <= float(row[path]) <= 800)
    with base(folder, "whole") as store:
        shown = store.execute(f'SELECT number, "{path}", fRsi FROM sweep').fetchall()
    assert len(shown) == ROWS
    for row, (number, thickness, factor) in zip(rows, shown):
        assert (int(row["row"]), float(row[path])) == (number, thickness)
        assert (row["fRsi"] == "") == (factor is None)
        assert factor is None or float(row["fRsi"]) == factor


def main():
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "corner.yaml").write_text(CASE, "utf-8")
        (folder / "sweep.yaml").write_text(SWEEP, "utf-8")
        start = time.monotonic()
        assert subprocess.run(command(folder, "whole", "--quiet")).returncode == 2
        seconds = time.monotonic() - start
        wanted = gathered(folder, "whole")
        check_table(folder, wanted)
        check_kills(folder, wanted, seconds)
        check_interrupt(folder)
        check_full_disk(folder)
        # A file of another kind in the place of the rows is said, not overwritten.
        (folder / "odd").mkdir()
        (folder / "odd/part-1-of-1.sqlite").write_text("mine\n" * 300)
        odd = subprocess.run(command(folder, "odd"), capture_output=True, text=True)
        assert odd.returncode == 4 and "take it away" in odd.stderr, odd
        assert (folder / "odd/part-1-of-1.sqlite").read_text() == "mine\n" * 300
        empty = subprocess.run([PROGRAM, "gather", str(folder)], capture_output=True, text=True)
        assert empty.returncode == 4 and "quoin vary" in empty.stderr, empty


if __name__ == "__main__":
    main()
