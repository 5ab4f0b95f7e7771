# SPDX-License-Identifier: Apache-2.0
"""Kills quoin solve at random moments: its folder shows the old run or the new one, whole.

usage: kill_while_writing.py PROGRAM SOURCE_DIR [COUNT]

Half of the kills come at any moment of a run, half after the run has begun to write. The seed is
fixed; where a kill meets the program depends on the machine.
"""

import ctypes
import pathlib
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
COUNT = int(sys.argv[3]) if len(sys.argv) > 3 else 50

OWN = {"notes.txt": b"mine", "photo.jpg": bytes(range(256))}


def command(case, folder):
    return [PROGRAM, "solve", "--quiet", str(case), "-o", str(folder)]


def shown(folder):
    """What a folder shows: name -> content. None: it is not there."""
    if not folder.exists():
        return None
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def runs_of(scratch):
    """Two cases with other variants each, and what each leaves in a new folder."""
    text = (SOURCE / "cases/examples/lock_keepers_house_wall.yaml").read_text("utf-8")
    assert "behind the dresser" in text
    cases = []
    for number, content in enumerate([text, text.replace("behind", "beside")]):
        case = scratch / f"case{number}.yaml"
        case.write_text(content, "utf-8")
        cases.append(case)
    wholes = []
    for case in cases:
        subprocess.run(command(case, scratch / "whole"), check=True)
        wholes.append(shown(scratch / "whole"))
        shutil.rmtree(scratch / "whole")
    assert wholes[0] != wholes[1]
    return cases, wholes


def exchanges(scratch):
    """Whether the disk lets two folders change places at once. Where it does not, a kill may leave
    files of both runs, which the next run puts right."""
    one, other = scratch / "one", scratch / "other"
    one.mkdir()
    other.mkdir()
    libc = ctypes.CDLL(None, use_errno=True)
    current, exchange = -100, 2  # AT_FDCWD, RENAME_EXCHANGE
    return libc.renameat2(current, bytes(one), current, bytes(other), exchange) == 0


def is_old_or_new(found, wholes, new):
    """Whether a folder holds all of one run and what is the user's own, or is new and not there."""
    if found is None:
        return new
    own = {} if new else OWN
    return any(found == {**whole, **own} for whole in wholes)


def kill(case, folder, how, chance):
    """Runs and kills; whether it was writing then."""
    with subprocess.Popen(command(case, folder)) as run:
        start = time.monotonic()
        if chance < 0.5:
            time.sleep(chance * 2 * kill.duration)
        else:
            while run.poll() is None and not list(folder.parent.glob(".*.writing-*")):
                time.sleep(0.0002)
            time.sleep((chance - 0.5) * 0.02)
        run.send_signal(how)
        status = run.wait()
        if status == 0:
            kill.duration = time.monotonic() - start
        return status != 0 and bool(list(folder.parent.glob(".*.writing-*")))


kill.duration = 1.0


def main():
    chances = random.Random(1)
    with tempfile.TemporaryDirectory(prefix="quoin-kill-") as name:
        scratch = pathlib.Path(name)
        cases, wholes = runs_of(scratch)
        at_once = exchanges(scratch)
        # The check itself sees what it looks for.
        mix = {**wholes[0], "findings.json": wholes[1]["findings.json"]}
        part = {key: value for key, value in wholes[0].items() if key != "report.pdf"}
        assert is_old_or_new(wholes[0], wholes, True) and is_old_or_new(None, wholes, True)
        assert not is_old_or_new(mix, wholes, True) and not is_old_or_new(part, wholes, True)
        assert not is_old_or_new(None, wholes, False)

        room = scratch / "room"
        old, new = room / "old", room / "new"
        room.mkdir()
        subprocess.run(command(cases[0], old), check=True)
        for key, content in OWN.items():
            (old / key).write_bytes(content)
        writing = 0
        for number in range(COUNT):
            folder = new if number % 4 == 3 else old
            how = signal.SIGTERM if number % 5 == 4 else signal.SIGKILL
            writing += kill(cases[(number + 1) % 2], folder, how, chances.random())
            for each in (old, new) if at_once else (new,):
                assert is_old_or_new(shown(each), wholes, each == new), (number, how, each)
            if folder == new:
                shutil.rmtree(new, ignore_errors=True)
        # The next run takes away what the kills left.
        for folder in (old, new):
            subprocess.run(command(cases[0], folder), check=True)
        assert sorted(path.name for path in room.iterdir()) == ["new", "old"]
        assert shown(old) == {**wholes[0], **OWN} and shown(new) == wholes[0]
        print(f"{COUNT} kills, {writing} of them while files were written"
              + ("" if at_once else "; this disk exchanges no folders: the old one is seen at the end"))


if __name__ == "__main__":
    main()
