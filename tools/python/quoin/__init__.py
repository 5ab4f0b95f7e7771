# SPDX-License-Identifier: Apache-2.0
"""Quoin: heat, damp and mould at the cold places of old walls.

    import quoin
    results = quoin.solve(quoin.start("corner"))
    room = results.findings["variants"][0]["surface"]["spaces"]
    field = results.variants["as found"].field("surface")
    field.temperature          # numpy, degC, one row of nodes after another: rows by columns

What the numbers mean is told by the findings' schema, `quoin.schema(findings=True)`. Lengths in fields
are metres, temperatures degC.
"""

from __future__ import annotations

import concurrent.futures
import json
import os
import pathlib

from . import _quoin
from ._quoin import Field, InputError, SolveError, Variant

__all__ = [
    "Field", "InputError", "Results", "SolveError", "Variant", "materials", "schema", "solve",
    "solve_many", "start"]
__version__ = _quoin.version


class Results:
    """A solved case: every variant, judged and compared."""

    def __init__(self, solved):
        self._solved = solved
        self._findings = None
        self.index = None
        """Which of the cases given to `solve_many` this is, from 0; None from `solve`."""

    @property
    def findings(self):
        """The findings as `quoin solve --json` prints them, as a dict."""
        if self._findings is None:
            self._findings = json.loads(self._solved.findings_json())
        return self._findings

    @property
    def variants(self):
        """The variants by name, in the order of the case."""
        return self._solved.variants

    def svg(self, kind, variant=None):
        """A picture as SVG text: "section", "field", "flow" (each of one variant, the first unless
        named), "surface" or "compare"; empty where there is nothing to show."""
        return self._solved.svg(kind, variant)

    def report(self):
        """The report as one HTML page that needs nothing else."""
        return self._solved.report()

    def save(self, folder, *, replace=False):
        """Writes all files that `quoin solve -o` writes, complete or not at all. `replace`: also in
        the place of files there that no run wrote. Raises OSError."""
        self._solved.save(os.fspath(folder), replace)

    def __repr__(self):
        return f"<quoin.Results of {', '.join(repr(name) for name in self.variants)}>"


def _text_and_file(case):
    """The text of a case and the file that it is from; empty: it is from none."""
    if isinstance(case, dict):
        return json.dumps(case, ensure_ascii=False), ""
    if isinstance(case, os.PathLike):
        return None, os.fspath(case)
    if isinstance(case, str):
        return case, ""
    raise TypeError(f"a case is a text, a dict or a path, not {type(case).__name__}")


def solve(case, *, threads=1):
    """Solves a case with all its variants, for both purposes, and judges it.

    `case`: the text of a case file, the same as a dict, or the Path of a file; tables that a file
    names are read from beside it. `threads`: for the linear solver; the answer is the same with any
    number. Other Python threads run meanwhile, and Ctrl-C ends it.

    Raises InputError, which holds every fault of the case, and SolveError where the numerics fail.
    """
    text, file = _text_and_file(case)
    return Results(_quoin.solve(text, file, threads))


def solve_many(cases, workers=None):
    """Solves cases as `solve` does, several at a time, and yields the Results of each as it is done.

    In the place of a case that cannot be solved it yields the InputError, SolveError or TypeError,
    unraised: one bad case does not stop the rest. `index` of what it yields says which of the cases
    it is. `workers`: cases at a time, all cores unless given. Cases may come from a generator without
    end: no more are taken than can be worked on soon.
    """
    workers = workers or os.cpu_count() or 1
    waiting = enumerate(cases)

    def outcome(index, case):
        try:
            result = solve(case)
        except (InputError, SolveError, TypeError) as error:
            result = error
        result.index = index
        return result

    with concurrent.futures.ThreadPoolExecutor(workers) as pool:
        running = set()
        try:
            while True:
                for index, case in waiting:
                    running.add(pool.submit(outcome, index, case))
                    if len(running) >= 2 * workers:
                        break
                if not running:
                    return
                done, running = concurrent.futures.wait(
                    running, return_when=concurrent.futures.FIRST_COMPLETED)
                for each in done:
                    yield each.result()
        finally:
            for each in running:
                each.cancel()


def start(recipe):
    """A commented case file to start from: "wall", "corner", "reveal", ... Raises ValueError for a
    recipe that there is none of, with those there are."""
    return _quoin.start(recipe)


def schema(*, findings=False):
    """The JSON schema of the case file, or of the findings, as a dict."""
    return json.loads(_quoin.schema(findings))


def materials():
    """The catalogue: a dict of materials by name, each with its dry conductivity (W/(m K)), density
    (kg/m3), moisture law, source, and by state the moisture (m3/m3) and conductivity in it."""
    return _quoin.materials()
