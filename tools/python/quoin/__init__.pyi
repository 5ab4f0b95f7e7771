# SPDX-License-Identifier: Apache-2.0
import os
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, Literal, TypedDict, type_check_only

import numpy as np
import numpy.typing as npt

_Case = str | dict[str, Any] | os.PathLike[str]

@type_check_only
class Fault(TypedDict):
    file: str
    line: int
    column: int
    source: str
    what: str
    found: str
    expected: str
    remedy: str

class InputError(ValueError):
    faults: list[Fault]
    index: int

class SolveError(RuntimeError):
    index: int

class Field:
    @property
    def x(self) -> npt.NDArray[np.float64]: ...
    @property
    def y(self) -> npt.NDArray[np.float64]: ...
    @property
    def basis(self) -> dict[str, npt.NDArray[np.float64]]: ...
    @property
    def temperature(self) -> npt.NDArray[np.float64]: ...
    @property
    def solid(self) -> npt.NDArray[np.bool_]: ...

class Variant:
    @property
    def name(self) -> str: ...
    def field(self, purpose: Literal["surface", "heat"] = ...) -> Field: ...

class Results:
    index: int | None
    @property
    def findings(self) -> dict[str, Any]: ...
    @property
    def variants(self) -> Mapping[str, Variant]: ...
    def svg(
        self,
        kind: Literal["section", "field", "flow", "surface", "compare"],
        variant: str | None = ...,
    ) -> str: ...
    def report(self) -> str: ...
    def save(self, folder: str | os.PathLike[str], *, replace: bool = ...) -> None: ...

__version__: str

def solve(case: _Case, *, threads: int = ...) -> Results: ...
def solve_many(
    cases: Iterable[_Case], workers: int | None = ...
) -> Iterator[Results | InputError | SolveError | TypeError]: ...
def start(recipe: str) -> str: ...
def schema(*, findings: bool = ...) -> dict[str, Any]: ...
def materials() -> dict[str, dict[str, Any]]: ...
