# SPDX-License-Identifier: Apache-2.0
"""A case in sheet form as a drawing: what is painted over is cut away, as in a drawing it must be."""

import math
import re

PATCH = re.compile(r"^    - \{fill: ([^,}]+), (x: \[.*?\], y: \[.*?\]|outline: \[\[.*?\]\])(.*)\}$",
                   re.MULTILINE)
NEAR = 1e-6  # mm


def outline_of(text):
    numbers = [float(each) for each in re.findall(r"-?[\d.]+(?:e-?\d+)?", text)]
    if text.startswith("x:"):
        left, right, bottom, top = numbers
        return [(left, bottom), (right, bottom), (right, top), (left, top)]
    return list(zip(numbers[::2], numbers[1::2]))


def edges_of(outline):
    return list(zip(outline, outline[1:] + outline[:1]))


def height(edge, x):
    (x0, y0), (x1, y1) = edge
    return y0 + (x - x0) / (x1 - x0) * (y1 - y0)


def lies_in(x, y, outline):
    return sum((a[1] > y) != (b[1] > y) and x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
               for a, b in edges_of(outline)) % 2 == 1


def crossings(edges):
    """x of the places where two edges cross."""
    for n, (a, b) in enumerate(edges):
        for c, d in edges[:n]:
            turn = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
            if abs(turn) < 1e-9:
                continue
            t = ((c[0] - a[0]) * (d[1] - c[1]) - (c[1] - a[1]) * (d[0] - c[0])) / turn
            u = ((c[0] - a[0]) * (b[1] - a[1]) - (c[1] - a[1]) * (b[0] - a[0])) / turn
            if 0 <= t <= 1 and 0 <= u <= 1:
                yield a[0] + t * (b[0] - a[0])


def slices(patches):
    """Patches, the later over the earlier, as triangles and trapezoids that only touch, each with the
    number of what is seen there. Between two places where edges end or cross none of them cross."""
    edges = [edge for outline, _ in patches for edge in edges_of(outline)]
    places = sorted({x for outline, _ in patches for x, _ in outline} | set(crossings(edges)))
    places = [x for k, x in enumerate(places) if k == 0 or x - places[k - 1] > 1e-3]
    for left, right in zip(places, places[1:]):
        middle = (left + right) / 2
        across = sorted({tuple(sorted(edge)) for edge in edges
                         if min(edge[0][0], edge[1][0]) < middle < max(edge[0][0], edge[1][0])},
                        key=lambda edge: height(edge, middle))
        for low, high in zip(across, across[1:]):
            if height(high, middle) - height(low, middle) < 1e-3:
                continue
            y = (height(low, middle) + height(high, middle)) / 2
            seen = [kind for outline, kind in patches if lies_in(middle, y, outline)]
            if not seen:
                continue
            corners = [(left, height(low, left)), (right, height(low, right)),
                       (right, height(high, right)), (left, height(high, left))]
            yield ([point for k, point in enumerate(corners)
                    if math.dist(point, corners[k - 1]) > NEAR], seen[-1])


def signed_area(outline):
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in edges_of(outline)) / 2


def without_straight(outline):
    def bends(k):
        a, b, c = outline[k - 1], outline[k], outline[(k + 1) % len(outline)]
        return abs((b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])) > 1e-3
    return [point for k, point in enumerate(outline) if bends(k)]


def rings(pieces):
    """The outlines of what pieces that touch make together: anticlockwise, holes clockwise."""
    rounded = [[(round(x, 4), round(y, 4)) for x, y in piece] for piece in pieces]
    corners = {point for piece in rounded for point in piece}
    edges = set()
    for piece in rounded:
        for a, b in edges_of(piece):
            between = [p for p in corners
                       if a[0] == b[0] == p[0] and min(a[1], b[1]) < p[1] < max(a[1], b[1])]
            chain = [a, *sorted(between, key=lambda p: math.dist(a, p)), b]
            for edge in zip(chain, chain[1:]):
                if edge[::-1] in edges:
                    edges.remove(edge[::-1])
                else:
                    edges.add(edge)
    while edges:
        start, at = edges.pop()
        ring = [start]
        before = start
        while at != start:
            back = math.atan2(before[1] - at[1], before[0] - at[0])
            # The sharpest turn to the left stays at the same piece where two meet in a point.
            after = min((edge for edge in edges if edge[0] == at),
                        key=lambda edge: (back - math.atan2(edge[1][1] - at[1], edge[1][0] - at[0]))
                        % (2 * math.pi) or 2 * math.pi)
            edges.remove(after)
            ring.append(at)
            before, at = at, after[1]
        yield without_straight(ring)


def areas(pieces):
    """Each area as its outline and its holes."""
    found = list(rings(pieces))
    outer = sorted((ring for ring in found if signed_area(ring) > 0), key=signed_area)
    result = [(ring, []) for ring in outer]
    for hole in (ring for ring in found if signed_area(ring) < 0):
        # A little within the material beside the hole's first edge lies what it is a hole of.
        (x0, y0), (x1, y1) = hole[0], hole[1]
        length = math.dist(hole[0], hole[1])
        x, y = (x0 + x1) / 2 - 0.01 * (y1 - y0) / length, (y0 + y1) / 2 + 0.01 * (x1 - x0) / length
        next(holes for ring, holes in result if lies_in(x, y, ring)).append(hole)
    return result


class Sheet:
    """A case in sheet form, ready to be drawn and to be put together from what was traced."""

    def __init__(self, text):
        self.text = text
        found = list(PATCH.finditer(text))
        self.start, self.end = found[0].start(), found[-1].end()
        # Lines between the patches that are none, such as membranes.
        self.others = [line for line in text[self.start:self.end].splitlines()
                       if not PATCH.match(line)]
        head = text[:text.index("\nsection:")]
        spaces = re.findall(r"^  ([^:\n]+): \{", head[head.index("spaces:"):].split("\n\n")[0],
                            re.MULTILINE)
        self.kinds = sorted({(each[1], each[3]) for each in found})
        patches = [(outline_of(each[2]), self.kinds.index((each[1], each[3]))) for each in found]
        self.slices = list(slices(patches))
        # Names of the layers' fills: what is said of a patch beside its place is put back afterwards.
        self.names = [fill if fill in spaces else f"piece {k}" for k, (fill, _) in
                      enumerate(self.kinds)]
        pieces = "".join(f"  {name}: {{conductivity: 1}}\n" for name in self.names
                         if name not in spaces)
        if "\nmaterials:\n" in head:
            head = head.replace("\nmaterials:\n", "\nmaterials:\n" + pieces)
        else:
            head += "\nmaterials:\n" + pieces
        self.layers = head + "\nlayers:\n" + "".join(
            f"  L{k}: {name}\n" for k, name in enumerate(self.names))

    def draw_slices(self, space):
        for outline, kind in self.slices:
            space.add_lwpolyline(outline, close=True, dxfattribs={"layer": f"L{kind}"})

    def draw_areas(self, space):
        for kind in range(len(self.kinds)):
            for outline, holes in areas([piece for piece, of in self.slices if of == kind]):
                hatch = space.add_hatch(dxfattribs={"layer": f"L{kind}"})
                hatch.paths.add_polyline_path(outline, is_closed=True)
                for hole in holes:
                    hatch.paths.add_polyline_path(hole, is_closed=True, flags=16)

    def with_section_of(self, traced):
        """This case with the patches of a traced one, which have their first names and states."""
        lines = []
        for fill, place, more in PATCH.findall(traced):
            name, state = self.kinds[self.names.index(fill)]
            lines.append(f"    - {{fill: {name}, {place}{state}{more}}}")
        return self.text[:self.start] + "\n".join(lines + self.others) + self.text[self.end:]
