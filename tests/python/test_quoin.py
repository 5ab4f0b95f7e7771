# SPDX-License-Identifier: Apache-2.0
"""The Python module: what it finds is what the program finds, and it gets on with Python.

usage: test_quoin.py PROGRAM SOURCE_DIR   (with the module in PYTHONPATH)
"""

import gc
import json
import os
import pathlib
import pydoc
import signal
import subprocess
import sys
import tempfile
import threading
import time

import numpy as np

import quoin

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])
# Every case that stands on its own: those of a house lean on its survey.
CASES = sorted(case for case in (SOURCE / "cases").rglob("*.yaml")
               if case.parent.name != "house" and not case.name.endswith(".vary.yaml"))


def refused(kind, call, *arguments, **named):
    try:
        call(*arguments, **named)
    except kind as error:
        return error
    raise AssertionError(f"{call} is not refused")


def test_findings_are_those_of_the_program():
    assert len(CASES) > 25
    for case in CASES:
        told = subprocess.run([PROGRAM, "solve", "--json", case], check=True,
                              capture_output=True, text=True).stdout
        assert quoin.solve(case).findings == json.loads(told), case.name


def test_a_text_a_dict_and_a_path_are_one_case():
    text = quoin.start("corner")
    case = {
        "quoin": 1, "title": "Wall, invented",
        "spaces": {"hall": {"is": "inside", "temperature": 20, "humidity": 50},
                   "yard": {"is": "outside", "temperature": "-5 °C"}},
        "section": {"wall": {"layers": [{"material": "lime plaster", "thickness": 15},
                                        {"material": "common brick", "thickness": 327}]}}}
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "corner.yaml"
        file.write_text(text, "utf-8")
        assert quoin.solve(file).findings == quoin.solve(text).findings
    found = quoin.solve(case).findings
    assert found["title"] == "Wall, invented"
    case["spaces"]["yard"]["temperature"] = 5
    assert quoin.solve(case).findings != found
    refused(TypeError, quoin.solve, 5)


def test_any_number_of_threads_gives_the_same():
    text = quoin.start("reveal")
    assert quoin.solve(text, threads=2).findings == quoin.solve(text).findings
    refused(ValueError, quoin.solve, text, threads=0)


def test_fields_outlive_their_results():
    results = quoin.solve(quoin.start("corner"))
    variant = next(iter(results.variants.values()))
    field = variant.field("surface")
    rows, columns = len(field.y), len(field.x)
    assert field.temperature.shape == field.solid.shape == (rows, columns)
    assert sum(array[field.solid] for array in field.basis.values()).ptp() < 1e-9
    assert field.temperature.base is not None, "a view, no copy"
    before = field.temperature.copy()
    kept = field.temperature
    coldest = min(space["coldest"]["temperature_C"] for space in
                  results.findings["variants"][0]["surface"]["spaces"].values())
    assert (abs(kept[field.solid] - coldest) < 1e-9).any(), "the coldest spot is a node"
    del results, variant, field
    gc.collect()
    scratch = [np.full(before.shape, np.nan) for _ in range(50)]
    assert (kept == before).all() and scratch
    refused(ValueError, kept.__setitem__, (0, 0), 1.0)


def test_purposes_differ():
    variant = quoin.solve(quoin.start("corner")).variants["as found"]
    heat, surface = variant.field("heat"), variant.field("surface")
    assert heat.temperature[heat.solid].min() != surface.temperature[surface.solid].min()
    refused(ValueError, variant.field, "light")


def test_faults_have_their_places():
    error = refused(quoin.InputError, quoin.solve, "quoin: 1\nspaces: {hall: {is: insid}}\n")
    assert isinstance(error, ValueError)
    assert {fault["line"] for fault in error.faults} == {1, 2} and "inside" in str(error)
    missing = refused(quoin.InputError, quoin.solve, pathlib.Path("/nowhere/case.yaml"))
    assert "cannot be read" in missing.faults[0]["what"]


def test_many_cases_come_as_they_are_done_and_a_bad_one_stops_none():
    text = quoin.start("corner")
    cases = [text, "quoin: 2\n", text.replace("327", "215"), 5, text]
    done = {each.index: each for each in quoin.solve_many(cases, workers=2)}
    assert sorted(done) == list(range(5))
    assert isinstance(done[1], quoin.InputError) and isinstance(done[3], TypeError)
    assert done[0].findings == done[4].findings == quoin.solve(text).findings

    def endless():
        while True:
            taken.append(1)
            yield text

    taken = []
    stream = quoin.solve_many(endless(), workers=2)
    next(stream)
    stream.close()
    assert len(taken) < 20, "no more are taken than can be worked on"


def test_other_threads_run_meanwhile():
    text = quoin.start("wall base")
    ticks, call, done = {}, [0], threading.Event()

    def tick():
        while not done.is_set():
            ticks[call[0]] = ticks.get(call[0], 0) + 1
            time.sleep(0.001)

    thread = threading.Thread(target=tick)
    thread.start()
    # While one call lasts. Were all else stopped meanwhile, one tick could slip in before it begins.
    for number in range(1, 51):
        call[0] = number
        quoin.solve(text)
        call[0] = 0
        if ticks.get(number, 0) >= 3:
            break
    done.set()
    thread.join()
    assert max(count for number, count in ticks.items() if number > 0) >= 3


def test_ctrl_c_is_heeded():
    code = ("import quoin, sys\n"
            "text = quoin.start('wall base')\n"
            "try:\n"
            "    print('ready', flush=True)\n"
            "    while True: quoin.solve(text)\n"
            "except KeyboardInterrupt:\n"
            "    sys.exit(42)\n")
    run = subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, text=True,
                           env=os.environ)
    assert run.stdout.readline() == "ready\n"
    time.sleep(0.3)
    run.send_signal(signal.SIGINT)
    assert run.wait(timeout=60) == 42


def test_files_and_pictures():
    results = quoin.solve(quoin.start("corner"))
    for kind in ("section", "field", "flow", "surface"):
        assert "<svg" in results.svg(kind), kind
    refused(ValueError, results.svg, "oil painting")
    refused(KeyError, results.svg, "field", "no such variant")
    assert results.report().lstrip().lower().startswith("<!doctype html>")
    with tempfile.TemporaryDirectory() as folder:
        results.save(pathlib.Path(folder) / "out")
        found = json.loads((pathlib.Path(folder) / "out/findings.json").read_text("utf-8"))
        assert found == results.findings
        (pathlib.Path(folder) / "taken").write_text("mine")
        refused(OSError, results.save, pathlib.Path(folder) / "taken")


def test_what_there_is_to_start_from():
    assert quoin.solve(quoin.start("wall")).findings["variants"]
    assert "corner" in str(refused(ValueError, quoin.start, "cornr"))
    assert quoin.schema()["properties"]["section"]
    assert quoin.schema(findings=True)["properties"]["variants"]
    brick = quoin.materials()["common brick"]
    states = brick["states"]
    assert states["damp"]["conductivity_W_mK"] > states["dry"]["conductivity_W_mK"] > 0
    assert "Raises InputError" in pydoc.render_doc(quoin.solve)


def main():
    tests = [each for name, each in globals().items() if name.startswith("test_")]
    for test in tests:
        test()
        print(test.__name__, flush=True)


if __name__ == "__main__":
    main()
