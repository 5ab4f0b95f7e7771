# SPDX-License-Identifier: Apache-2.0
"""Checks who includes whom: folder layers, rooms in order, one door per foreign library, no cycles.

usage: layers.py ROOT
"""

import fnmatch
import re

import tree

# The folders each folder may include, itself aside. The order has no cycle, so neither have they.
LAYERS = {
    "geometry": set(),
    "materials": set(),
    "solver": {"geometry", "materials"},
    "cases": {"geometry", "materials"},
    "tools": {"geometry", "materials", "solver", "cases"},
    "tests": {"geometry", "materials", "solver", "cases", "tools"},
}

# The rooms of a folder, lowest first: each may include only those before it. A folder that is not
# named here has no order within it but that no file may include itself in a circle.
ROOMS = {
    "solver": [
        "solver/linear/multigrid", "solver/linear", "solver/scheme", "solver/accuracy",
        "solver/findings", "solver/grids", "solver/triangles", "solver", "solver/vapour", "solver/survey"],
    "cases": [
        "cases/text", "cases/model", "cases/grammar", "cases/meaning", "cases"],
    "tools": [
        "tools/parts", "tools/answer/results", "tools/terminal", "tools/disk",
        "tools/answer/ask", "tools/answer/find", "tools/answer/judge",
        "tools/answer/survey", "tools/answer/words", "tools/answer", "tools/draw/canvas",
        "tools/draw/section", "tools/draw/field", "tools/draw/chart", "tools/draw",
        "tools/output/report", "tools/output/text", "tools/output/json",
        "tools/output/field", "tools/output/html", "tools/output/pdf", "tools/output",
        "tools/door", "tools/board_page", "tools/sweep", "tools/trace",
        "tools/command", "tools/python",
        "tools"],
}

# Rooms that stand side by side: none of them includes another.
SIDE_BY_SIDE = [["tools/output/text", "tools/output/json", "tools/output/field", "tools/output/html",
                 "tools/output/pdf"]]

# Foreign library: how its headers are spelt, and the files that may include them.
DOORS = {
    "yaml-cpp": (r"yaml-cpp/", ["cases/text/yaml_tree.cpp"]),
    "VTK": (r"vtk\w*\.h$", ["tools/output/field/vtk_*.?pp",
                              "tests/tools/output/field/test_vtk_*.cpp"]),
    "Eigen": (r"(unsupported/)?Eigen/", ["solver/*.cpp", "tests/solver/*.cpp",
                                         "tests/benchmarks/*"]),
    "Boost": (r"boost/", ["solver/survey/*.cpp"]),
    "nlohmann-json": (r"nlohmann/", ["tools/*", "tests/tools/*.cpp", "tests/door/*.cpp",
                                   "tests/sweep/*.cpp"]),
    "CLI11": (r"CLI/", ["tools/main.cpp", "tools/command/*.cpp"]),
    "SQLite": (r"sqlite3", ["tools/sweep/database.cpp"]),
    "GDAL": (r"(gdal|ogr|cpl)_?\w*\.h$", ["tools/trace/ogr_drawing.cpp"]),
    "pybind11": (r"pybind11/", ["tools/python/*.cpp"]),
    "cairo and Pango": (r"(cairo|pango)", ["tools/draw/canvas/cairo_paint.cpp"]),
    "doctest": (r"doctest", ["tests/*"]),
    "Google Benchmark": (r"benchmark/", ["tests/benchmarks/*"]),
}

INCLUDE = re.compile(r'^\s*#\s*include\s*(["<])([^">]+)[">]')


def includes(root, name):
    """(line number, is quoted, included path) of each include of a file. Ours are quoted."""
    for number, line in enumerate(tree.text(root, name).splitlines(), 1):
        found = INCLUDE.match(line)
        if found:
            yield number, found[1] == '"', found[2]


def layer_fault(folder, included):
    target = included.split("/")[0]
    if target not in LAYERS:
        return f'"{included}" does not start at the top of the tree'
    if target != folder and target not in LAYERS.get(folder, ()):
        return f"{folder}/ may not include {target}/"
    return None


def room_fault(name, included):
    """Why a file of one room may not include one of another room of its folder; None: it may."""
    order = ROOMS.get(name.parts[0])
    target = included.rpartition("/")[0]
    own = name.parent.as_posix()
    if order is None or included.split("/")[0] != name.parts[0] or own == target:
        return None
    for room in (own, target):
        if room not in order:
            return f"{room}/ is not a room of {name.parts[0]}/"
    if any(own in rooms and target in rooms for rooms in SIDE_BY_SIDE):
        return f"{own}/ and {target}/ stand side by side"
    if order.index(target) > order.index(own):
        return f"{own}/ may not include {target}/, which stands above it"
    return None


def door_fault(name, included):
    for library, (spelling, doors) in DOORS.items():
        if re.match(spelling, included) and not any(
                fnmatch.fnmatch(name.as_posix(), door) for door in doors):
            return f"{library} only in {', '.join(doors)}"
    return None


def cycle(graph):
    """Some cycle of a graph (node -> nodes) as a list that ends where it starts, or None."""
    done = set()

    def search(node, trail):
        if node in trail:
            return trail[trail.index(node):] + [node]
        if node in done:
            return None
        for following in sorted(graph.get(node, ())):
            found = search(following, trail + [node])
            if found:
                return found
        done.add(node)
        return None

    for node in sorted(graph):
        found = search(node, [])
        if found:
            return found
    return None


def faults(root):
    found = []
    graph = {}
    for name in tree.cpp_files(root):
        for number, quoted, included in includes(root, name):
            where = f"{name}:{number}: "
            fault = (layer_fault(name.parts[0], included) or room_fault(name, included)
                     if quoted else door_fault(name, included))
            if fault:
                found.append(where + fault)
            if quoted:
                graph.setdefault(name.as_posix(), set()).add(included)
    circle = cycle(graph)
    if circle:
        found.append("cycle: " + " -> ".join(circle))
    return found


if __name__ == "__main__":
    tree.run(faults)
