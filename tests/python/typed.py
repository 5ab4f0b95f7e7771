# SPDX-License-Identifier: Apache-2.0
"""What mypy must take: the module as its stubs describe it."""

from pathlib import Path

import quoin


def lowest(case: str) -> float:
    results = quoin.solve(case, threads=2)
    variant = results.variants["as found"]
    field = variant.field("surface")
    return float(field.temperature[field.solid].min())


def all_of(folder: Path) -> list[quoin.Results]:
    solved: list[quoin.Results] = []
    for each in quoin.solve_many(folder.glob("*.yaml"), workers=4):
        if isinstance(each, quoin.InputError):
            print(each.index, each.faults[0]["line"])
        elif isinstance(each, quoin.Results):
            each.save(folder / "out", replace=True)
            solved.append(each)
    return solved
