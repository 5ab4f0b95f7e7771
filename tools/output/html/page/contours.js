// SPDX-License-Identifier: Apache-2.0
// Isotherms on a canvas: exact along the edges of cells, so that their pieces meet.

const PIECE = 6;  // longest straight piece, CSS pixels

/// Where a level crosses the sides of a polygon of corners {x, y, t}: pairs of points.
function crossings(corners, level) {
  const points = [];
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length];
    if (a.t < level === b.t < level) return;
    const share = (level - a.t) / (b.t - a.t);
    points.push([a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)]);
  });
  return points.length === 4 ? [[points[0], points[1]], [points[2], points[3]]] :
         points.length === 2 ? [points] : [];
}

/// The pieces of a divided or undivided cell that hold material, as polygons of corners.
function* solidPieces(field, view, t, i, j) {
  if (!view.shows(field.x[i], field.x[i + 1], field.y[j], field.y[j + 1])) return;
  const cell = j * field.columns + i, node = j * field.x.length + i, split = field.split[cell];
  const [x1, x2] = [view.x(field.x[i]), view.x(field.x[i + 1])];
  const [y1, y2] = [view.y(field.y[j]), view.y(field.y[j + 1])];
  const [sw, se] = [{x: x1, y: y1, t: t[node]}, {x: x2, y: y1, t: t[node + 1]}];
  const above = node + field.x.length;
  const [nw, ne] = [{x: x1, y: y2, t: t[above]}, {x: x2, y: y2, t: t[above + 1]}];
  if (split !== UNDIVIDED) {
    const rising = split === RISING;
    if (field.isSolid(field.below[cell])) yield rising ? [sw, se, ne] : [sw, se, nw];
    if (field.isSolid(field.above[cell])) yield rising ? [sw, ne, nw] : [se, ne, nw];
    return;
  }
  if (!field.isSolid(field.below[cell])) return;
  const across = Math.min(40, Math.ceil((x2 - x1) / PIECE));
  const up = Math.min(40, Math.ceil((y1 - y2) / PIECE));
  const corner = (a, b) => {
    const u = a / across, v = b / up;
    return {x: x1 + u * (x2 - x1), y: y1 + v * (y2 - y1),
            t: (1 - v) * ((1 - u) * sw.t + u * se.t) + v * ((1 - u) * nw.t + u * ne.t)};
  };
  for (let b = 0; b < up; ++b) {
    for (let a = 0; a < across; ++a) {
      yield [corner(a, b), corner(a + 1, b), corner(a + 1, b + 1), corner(a, b + 1)];
    }
  }
}

/// Pieces of lines joined end to end.
function chained(pieces) {
  const key = ([x, y]) => `${Math.round(4 * x)} ${Math.round(4 * y)}`;
  const ends = new Map();
  pieces.forEach((piece, number) => piece.forEach((end) => {
    ends.set(key(end), [...(ends.get(key(end)) || []), number]);
  }));
  const used = new Set();
  const grown = (line) => {
    for (;;) {
      const end = line[line.length - 1];
      const next = (ends.get(key(end)) || []).find((number) => !used.has(number));
      if (next === undefined) return line;
      used.add(next);
      const [from, to] = pieces[next];
      line.push(key(from) === key(end) ? to : from);
    }
  };
  const lines = [];
  pieces.forEach((piece, number) => {
    if (used.has(number)) return;
    used.add(number);
    lines.push(grown(grown([...piece]).reverse()));
  });
  return lines;
}

/// For each level its lines. Shape: levels by lines by points.
function contours(field, view, temperatures, levels) {
  const pieces = levels.map(() => []);
  for (let j = 0; j < field.rows; ++j) {
    for (let i = 0; i < field.columns; ++i) {
      for (const corners of solidPieces(field, view, temperatures, i, j)) {
        const low = Math.min(...corners.map((corner) => corner.t));
        const high = Math.max(...corners.map((corner) => corner.t));
        levels.forEach((level, k) => {
          if (low < level && level <= high) pieces[k].push(...crossings(corners, level));
        });
      }
    }
  }
  return pieces.map(chained);
}

function lengthOf(line) {
  return line.slice(1).reduce((sum, [x, y], k) => sum + Math.hypot(x - line[k][0], y - line[k][1]), 0);
}

function strokeLines(context, lines) {
  context.beginPath();
  for (const line of lines) line.forEach(([x, y], k) => k ? context.lineTo(x, y) : context.moveTo(x, y));
  context.stroke();
}

/// Finds room for words along the longest of some lines: `taken` holds those that have theirs, and
/// these once they have, `fits` says whether a point may be written on.
function label(context, lines, words, colour, halo, taken, fits) {
  const line = lines.reduce((best, each) => lengthOf(each) > lengthOf(best) ? each : best, []);
  const width = context.measureText(words).width;
  if (lengthOf(line) < 1.5 * width) return;
  for (const share of [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9]) {
    const k = Math.max(1, Math.min(line.length - 2, Math.round(share * (line.length - 1))));
    const [x, y] = line[k];
    const [before, after] = [line[Math.max(0, k - 3)], line[Math.min(line.length - 1, k + 3)]];
    let turn = Math.atan2(after[1] - before[1], after[0] - before[0]);
    if (Math.abs(turn) > Math.PI / 2) turn -= Math.sign(turn) * Math.PI;
    const [dx, dy] = [Math.cos(turn) * width / 2, Math.sin(turn) * width / 2];
    if (!fits(x - dx, y - dy) || !fits(x + dx, y + dy) ||
        taken.some((other) => Math.hypot(other.x - x, other.y - y) < (other.width + width) / 2 + 8)) {
      continue;
    }
    taken.push({x, y, width, turn, words, colour, halo});
    return;
  }
}

/// Writes what `label` found room for.
function writeAlong(context, {x, y, turn, words, colour, halo}) {
  context.save();
  context.translate(x, y);
  context.rotate(turn);
  context.lineWidth = 4;
  context.strokeStyle = halo;
  context.strokeText(words, 0, 0);
  context.fillStyle = colour;
  context.fillText(words, 0, 0);
  context.restore();
}
