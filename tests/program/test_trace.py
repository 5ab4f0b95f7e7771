# SPDX-License-Identifier: Apache-2.0
"""Draws cases as DXF and traces the drawings: temperatures and heat flow come back within the bands.

usage: test_trace.py PROGRAM SOURCE_DIR

Ends with 77, after a word, where drawings cannot be written (python3-ezdxf) or read here.
"""

import json
import pathlib
import subprocess
import sys
import tempfile

try:
    import ezdxf
except ImportError:
    print("skipped: no ezdxf here")
    sys.exit(77)

from sheet_drawing import Sheet

PROGRAM, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])

HEAD = """quoin: 1
title: Traced corner, invented
spaces:
  hall: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: -5}
materials:
  wall brick: {like: common brick, moisture: damp}
layers:
  WALL: wall brick
  PLASTER: lime plaster
  TIMBER: softwood across the grain
  HALL: hall
  YARD: yard
  NOTES: ~
"""

# An external corner, its angle at the origin, mm: a wall of 327 with 15 of plaster.
WALL = [(0, 0), (1500, 0), (1500, 327), (327, 327), (327, 1500), (0, 1500)]
PLASTER = [(327, 327), (1500, 327), (1500, 342), (342, 342), (342, 1500), (327, 1500)]
HALL = [(342, 342), (1500, 342), (1500, 400), (400, 400), (400, 1500), (342, 1500)]
YARD = [(-50, -50), (1500, -50), (1500, 0), (0, 0), (0, 1500), (-50, 1500)]


def new_drawing(unit=4):
    drawing = ezdxf.new()
    drawing.header["$INSUNITS"] = unit
    return drawing, drawing.modelspace()


def outline(space, layer, points, closed=True):
    space.add_lwpolyline(points, close=closed, dxfattribs={"layer": layer})


def corner(unit=4, factor=1.0, skip=()):
    drawing, space = new_drawing(unit)
    for layer, points in (("WALL", WALL), ("PLASTER", PLASTER), ("HALL", HALL), ("YARD", YARD)):
        if layer not in skip:
            outline(space, layer, [(x * factor, y * factor) for x, y in points])
    return drawing, space


class Desk:
    def __init__(self, folder):
        self.folder = folder
        self.layers = folder / "layers.yaml"
        self.layers.write_text(HEAD, "utf-8")

    def trace(self, drawing, *options, layers=None):
        drawing.saveas(self.folder / "drawing.dxf")
        return subprocess.run([PROGRAM, "trace", self.folder / "drawing.dxf", "--layers",
                               layers or self.layers, *options], capture_output=True, text=True)

    def case(self, drawing, *options, layers=None):
        done = self.trace(drawing, *options, layers=layers)
        assert done.returncode == 0, done.stderr
        return done.stdout, done.stderr

    def refused(self, drawing, *told, options=(), layers=None):
        done = self.trace(drawing, *options, layers=layers)
        assert done.returncode == 2, (done.returncode, done.stdout[:400], done.stderr)
        for words in told:
            assert words in done.stderr, (words, done.stderr)


def solved(text):
    done = subprocess.run([PROGRAM, "solve", "--json", "-"], input=text, capture_output=True,
                          text=True)
    assert done.returncode == 0, (done.stderr, text)
    return json.loads(done.stdout)["variants"][0]


def compare(traced, drawn):
    """fRsi of every room and L2D of every pair within the bands of both."""
    for name, room in drawn["surface"]["spaces"].items():
        one, other = room["coldest"], traced["surface"]["spaces"][name]["coldest"]
        band = one["fRsi_band"] + other["fRsi_band"] + 1e-4
        assert abs(one["fRsi"] - other["fRsi"]) <= band, (name, one["fRsi"], other["fRsi"])
    for one in drawn["heat"]["L2D_W_mK"]:
        other = next(each for each in traced["heat"]["L2D_W_mK"]
                     if set(each["between"]) == set(one["between"]))
        room = 1e-4 * one["value"]
        assert one["low"] - room <= other["high"] and other["low"] <= one["high"] + room, (one,
                                                                                             other)


def check_corner(desk):
    text, notes = desk.case(corner()[0])
    reference = solved(HEAD[:HEAD.index("layers:")] + """section:
  corner:
    layers:
      - {material: lime plaster, thickness: 15}
      - {material: wall brick, thickness: 327}
    leg: 1158
""")
    compare(solved(text), reference)
    assert not notes
    # In metres, and in metres that the drawing does not tell.
    assert desk.case(corner(6, 0.001)[0])[0] == text
    assert desk.case(corner(0, 0.001)[0], "--unit", "m")[0] == text
    return text


def check_other_ways(desk, text):
    """Lines instead of outlines, a hatch with a hole, text beside it, a small gap."""
    drawing, space = corner(skip=("YARD", "WALL"))
    for k, start in enumerate(YARD):
        space.add_line(start, YARD[(k + 1) % len(YARD)], dxfattribs={"layer": "YARD"})
    hatch = space.add_hatch(dxfattribs={"layer": "WALL"})
    hatch.paths.add_polyline_path(WALL, is_closed=True)
    space.add_text("wall", dxfattribs={"layer": "WALL"})
    space.add_line((0, 0), (5, 5), dxfattribs={"layer": "NOTES"})
    traced, notes = desk.case(drawing)
    compare(solved(traced), solved(text))
    assert "1 texts, dimensions and the like were left out" in notes, notes

    drawing, space = corner(skip=("PLASTER",))
    outline(space, "PLASTER", [(x + 0.4 if x == 327 else x, y + 0.4 if y == 327 else y)
                               for x, y in PLASTER])
    traced, notes = desk.case(drawing)
    compare(solved(traced), solved(text))
    assert "0.4 mm between" in notes or "0.57 mm between" in notes, notes

    drawing, space = corner(skip=("WALL",))
    hatch = space.add_hatch(dxfattribs={"layer": "WALL"})
    hatch.paths.add_polyline_path(WALL, is_closed=True)
    hole = [(100, 700), (200, 700), (200, 900), (100, 900)]
    hatch.paths.add_polyline_path(hole, is_closed=True, flags=16)
    desk.refused(drawing, "nothing is drawn in a hole")
    outline(space, "TIMBER", hole)
    assert "softwood across the grain" in desk.case(drawing)[0]


def placed(dx, dy, factor=1.0):
    """The corner elsewhere."""
    drawing, space = new_drawing()
    for layer, points in (("WALL", WALL), ("PLASTER", PLASTER), ("HALL", HALL), ("YARD", YARD)):
        outline(space, layer, [(x * factor + dx, y * factor + dy) for x, y in points])
    return drawing


def check_places(desk, text):
    """Far from the origin, as on a map of the country, and a fraction of a mm beside it."""
    factor = solved(text)["surface"]["spaces"]["hall"]["coldest"]["fRsi"]
    for dx, dy, told in ((523456789.123, 178901234.567, "523456739.1, 178901184.6 mm"),
                         (-5e5, -5e5, "-500050.0, -500050.0 mm"), (0.12, 0.57, "")):
        traced, notes = desk.case(placed(dx, dy))
        found = solved(traced)["surface"]["spaces"]["hall"]["coldest"]["fRsi"]
        assert abs(found - factor) < 1e-6, (dx, found, factor)
        assert told in notes, notes
    for drawing, told in ((placed(0, 0, 1e-9), "1.55e-06 mm across"),
                          (placed(0, 0, 1e9), "1.55e+12 mm across"),
                          (placed(1e16, 0), "too far from its origin")):
        desk.refused(drawing, told)
    drawing, space = corner()
    space.add_line((float("nan"), 0), (1, 1), dxfattribs={"layer": "WALL"})
    desk.refused(drawing, "not a number")
    desk.refused(new_drawing()[0], "nothing is drawn on the layers that are named")
    # The place of a fault is one of the drawing.
    drawing = placed(1e6, 0)
    outline(drawing.modelspace(), "TIMBER",
            [(1e6 + x, y) for x, y in [(100, 100), (300, 100), (300, 300), (100, 300)]])
    desk.refused(drawing, "overlap", "at 1000")


def check_blocks_and_names(desk, text):
    """What a block holds lies on its own layers, or on that of the block where it says none;
    dimensions leave nothing; names are read as they are written."""
    for layer, block_layer, attributes in (
            ("WALL", "NOTES", {}), ("0", "WALL", {}),
            ("WALL", "0", {"xscale": 10, "yscale": 10})):
        drawing, space = corner(skip=("WALL",))
        factor = 1 / attributes.get("xscale", 1)
        block = drawing.blocks.new("W")
        outline(block, layer, [(x * factor, y * factor) for x, y in WALL])
        outer = drawing.blocks.new("OUTER")
        outer.add_blockref("W", (0, 0), dxfattribs={"layer": block_layer, **attributes})
        space.add_blockref("OUTER", (0, 0), dxfattribs={"layer": block_layer})
        assert solved(desk.case(drawing)[0]) == solved(text), (layer, block_layer)
    drawing, space = corner()
    space.add_linear_dim(base=(0, -300), p1=(0, 0), p2=(1500, 0),
                         dxfattribs={"layer": "WALL"}).render()
    traced, notes = desk.case(drawing)
    assert traced == text and "1 texts, dimensions and the like were left out" in notes, notes
    layers = desk.folder / "named.yaml"
    layers.write_text(HEAD.replace("WALL:", "Außenwand Süd:"), "utf-8")
    for version in ("R2000", "R2013"):  # before and since letters are written in UTF-8
        drawing = ezdxf.new(version)
        drawing.header["$INSUNITS"] = 4
        for layer, points in (("Außenwand Süd", WALL), ("PLASTER", PLASTER), ("HALL", HALL),
                              ("YARD", YARD)):
            outline(drawing.modelspace(), layer, points)
        assert solved(desk.case(drawing, layers=layers)[0]) == solved(text), version


def check_arc(desk):
    """A round pier: arcs are stroked by chord, so that few corners tell it."""
    drawing, space = new_drawing()
    space.add_circle((0, 0), 300, dxfattribs={"layer": "WALL"})
    ring = space.add_hatch(dxfattribs={"layer": "HALL"})
    ring.paths.add_polyline_path([(-400, -400), (400, -400), (400, 0), (-400, 0)], is_closed=True)
    layers = desk.folder / "pier.yaml"
    layers.write_text(HEAD.replace("HALL: hall", "HALL: ~"), "utf-8")
    done = desk.trace(drawing, layers=layers)
    # A pier that touches no space is no case, and is said to be none.
    assert done.returncode == 2, done
    fine = desk.trace(drawing, "--chord", "0.1mm", layers=layers)
    assert fine.returncode == 2, fine


def check_faults(desk):
    desk.refused(corner(0)[0], "does not say its unit", "--unit mm")
    drawing, space = corner()
    outline(space, "WAL", WALL)
    desk.refused(drawing, "does not say what this layer is", "did you mean 'WALL'?")
    drawing, space = corner(skip=("YARD",))
    outline(space, "YARD", YARD, closed=False)
    desk.refused(drawing, "this line is open", "layer YARD")
    drawing, space = corner(skip=("WALL",))
    outline(space, "WALL", [(0, 0), (1500, 0), (200, 1500), (1500, 1200)])
    desk.refused(drawing, "crosses itself")
    drawing, space = corner()
    outline(space, "TIMBER", [(100, 100), (300, 100), (300, 300), (100, 300)])
    desk.refused(drawing, "overlap", "at ")
    drawing, space = corner(skip=("PLASTER", "HALL"))
    outline(space, "HALL", [tuple(330 if each == 342 else each for each in point)
                            for point in HALL])
    desk.refused(drawing, "leave a gap of 3 mm", "--close 3")
    desk.refused(corner(skip=("HALL", "YARD"))[0], "space")
    drawing, space = corner(skip=("YARD",))
    outline(space, "YARD", [(0, 0), (0, 1500)] + [(-50 - k % 2 * 50, 1500 - k) for k in range(1500)])
    desk.refused(drawing, "too many corners", "--chord")
    drawing, space = corner()
    space.add_spline(fit_points=[(0, 0), (100, 50), (200, 0)], dxfattribs={"layer": "WALL"})
    desk.refused(drawing, "a curve cannot be read", "a spline by fit points on layer WALL")
    # All of them at once.
    drawing, space = corner(0, skip=("YARD",))
    outline(space, "YARD", YARD, closed=False)
    outline(space, "PLASTR", PLASTER)
    desk.refused(drawing, "does not say its unit", "does not say what this layer is", "3 faults")
    other = desk.folder / "no-layers.yaml"
    other.write_text("quoin: 1\n", "utf-8")
    desk.refused(corner()[0], "does not say what the layers", layers=other)
    (desk.folder / "drawing.dxf").write_text("no drawing\n")
    done = subprocess.run([PROGRAM, "trace", desk.folder / "drawing.dxf", "--layers", desk.layers],
                          capture_output=True, text=True)
    assert done.returncode == 2 and "cannot be read" in done.stderr, done


def check_sheets(desk):
    """Every example, and with them every recipe: in pieces that touch, and in whole areas."""
    layers = desk.folder / "sheet-layers.yaml"
    count = 0
    for file in sorted((SOURCE / "cases/examples").glob("*.yaml")):
        done = subprocess.run([PROGRAM, "check", "--sheet", file], check=True, capture_output=True,
                              text=True)
        sheet = Sheet(done.stdout.split("\n---\n")[0] + "\n")
        layers.write_text(sheet.layers, "utf-8")
        drawn = solved(sheet.text)
        for draw in (sheet.draw_slices, sheet.draw_areas):
            drawing, space = new_drawing()
            draw(space)
            traced, notes = desk.case(drawing, layers=layers)
            assert not notes, (file, notes)
            compare(solved(sheet.with_section_of(traced)), drawn)
        count += 1
    assert count > 10


def main():
    with tempfile.TemporaryDirectory() as name:
        desk = Desk(pathlib.Path(name))
        first = desk.trace(corner()[0])
        if "built without the part that reads drawings" in first.stderr:
            print("skipped: this program reads no drawings")
            sys.exit(77)
        text = check_corner(desk)
        check_other_ways(desk, text)
        check_places(desk, text)
        check_blocks_and_names(desk, text)
        check_arc(desk)
        check_faults(desk)
        check_sheets(desk)


if __name__ == "__main__":
    main()
