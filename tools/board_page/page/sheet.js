// SPDX-License-Identifier: Apache-2.0
"use strict";

// Areas of a sheet under the hand: drawn, moved as a whole, their corners pulled into slopes.

const grid = 5;  // mm

/** Where an area lies: [{x, y}] in mm and, for each number of it, its path and how a shift changes it. */
function areaShape(node) {
  const number = (value) => ({mm: millimetres(value?.text), path: value?.path});
  const outline = under(node, "outline");
  if (outline) {
    const corners = entries(outline).map(([, corner]) => ({x: number(under(corner, "0")), y: number(under(corner, "1"))}));
    return {outline: true, corners, numbers: {x: corners.map(({x}) => x), y: corners.map(({y}) => y)}};
  }
  const [x, y] = ["x", "y"].map((key) => ["0", "1"].map((end) => number(under(node, key, end))));
  if (![...x, ...y].every(({mm}) => Number.isFinite(mm))) return null;
  return {outline: false, corners: [[0, 0], [1, 0], [1, 1], [0, 1]].map(([i, j]) => ({x: x[i], y: y[j]})), numbers: {x, y}};
}

const sheetOf = (tree) => under(tree, "section", "sheet");
const cornersOf = (shape) => shape.corners.map(({x, y}) => ({x: x.mm, y: y.mm}));

/** The area seen at a place: the last one painted there. */
function areaAt(tree, {x, y}) {
  let best = null;
  for (const [k, node] of entries(sheetOf(tree))) {
    const shape = areaShape(node);
    if (!shape) continue;
    const corners = cornersOf(shape);
    let inside = false;
    corners.forEach((a, i) => {
      const b = corners[(i + 1) % corners.length];
      if ((a.y > y) !== (b.y > y) && x < a.x + (y - a.y) * (b.x - a.x) / (b.y - a.y)) inside = !inside;
    });
    if (inside) best = Number(k);
  }
  return best;
}

/** A number drawn to the next line of another area within reach, else to the grid. */
function snapped(value, lines, reach) {
  const near = lines.reduce((best, line) => Math.abs(line - value) < Math.abs(best - value) ? line : best, Infinity);
  return Math.abs(near - value) <= reach ? near : Math.round(value / grid) * grid;
}

/** The lines of all areas but one, by axis, mm. */
function linesBeside(tree, index) {
  const lines = {x: [], y: []};
  for (const [k, node] of entries(sheetOf(tree))) {
    const shape = Number(k) === index ? null : areaShape(node);
    for (const axis of ["x", "y"]) lines[axis].push(...(shape?.numbers[axis].map(({mm}) => mm) ?? []));
  }
  return lines;
}

/** The edits that shift these numbers by (dx, dy): [path, value]. */
const shifted = (numbers, by) => ["x", "y"].flatMap((axis) =>
  by[axis] ? numbers[axis].map(({mm, path}) => [path, lengthText(mm + by[axis])]) : []);

async function editedAll(text, edits) {
  for (const [path, value] of edits) text = await hand.call("edited", {text, path, value});
  return text;
}

/** A grip on an area: dragged, or stepped by arrow keys. `numbers` move with it. */
function gripOf(plate, at, label, glyph, numbers, lines) {
  const screen = plate.toScreen(at.x, at.y), reach = () => 8 / plate.fit.scale;
  const by = (dx, dy) => {
    const to = {};
    for (const [axis, gone] of [["x", dx], ["y", dy]]) {
      const first = numbers[axis][0].mm, onGrid = Math.round((first + gone) / grid) * grid - first;
      const touching = numbers[axis].flatMap(({mm}) => lines[axis].map((line) => line - mm)).filter((one) => Math.abs(one - gone) <= reach());
      const still = Math.abs(gone) * plate.fit.scale < 3;
      to[axis] = still ? 0 : touching.reduce((best, one) => Math.abs(one - gone) < Math.abs(best - gone) ? one : best, touching[0] ?? onGrid);
    }
    return to;
  };
  const put = (to) => board.change((text) => editedAll(text, shifted(numbers, to)));
  const button = make("button", {type: "button", class: "grip", "aria-label": label, onkeydown: (event) => {
    const step = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1]}[event.key];
    if (!step) return;
    event.preventDefault();
    event.stopPropagation();
    const far = event.shiftKey ? 10 * grid : grid;
    put({x: step[0] * far, y: step[1] * far});
  }, onclick: (event) => event.stopPropagation()}, glyph);
  button.addEventListener("pointerdown", (event) => {
    if (event.button > 0) return;
    event.preventDefault();
    event.stopPropagation();
    let to = {x: 0, y: 0};
    plate.frozen = true;
    plate.host.classList.add("moving");
    const move = (now) => {
      const next = by((now.clientX - event.clientX) / plate.fit.scale, (event.clientY - now.clientY) / plate.fit.scale);
      if (next.x === to.x && next.y === to.y) return;
      to = next;
      plate.put(button, screen.x + to.x * plate.fit.scale, screen.y - to.y * plate.fit.scale);
      board.drags.run(async () => {
        if (!plate.frozen) return;
        try {
          const seen = await hand.call("glance", {...board.asked(), edits: shifted(numbers, to)});
          board.follow(plate, seen);
        } catch { /* a shape that cannot be built: the last picture stays */ }
      });
    };
    const end = async (now) => {
      plate.frozen = false;
      board.moving = false;
      plate.host.classList.remove("moving");
      if (now.type === "pointerup" && (to.x || to.y)) await put(to);
      else plate.show(board.base);
    };
    plate.letGo = followPointer(event, move, end);
  });
  return plate.put(button, screen.x, screen.y);
}

/** The grips and the outline of the area chosen. */
function areaMarks(plate, tree, index) {
  const node = under(sheetOf(tree), index), shape = node && areaShape(node);
  if (!shape) return [];
  const corners = cornersOf(shape), lines = linesBeside(tree, index);
  const screen = corners.map(({x, y}) => plate.toScreen(x, y));
  const outline = drawn("svg", {class: "stems", "aria-hidden": "true"},
    drawn("path", {class: "on", d: `M${screen.map(({x, y}) => `${x} ${y}`).join("L")}Z`}));
  const keep = (value, most) => Math.min(Math.max(value, 24), most - 24);
  const middle = {x: corners.reduce((sum, {x}) => sum + x, 0) / corners.length, y: corners.reduce((sum, {y}) => sum + y, 0) / corners.length};
  const shown = plate.toScreen(middle.x, middle.y);
  const grips = [gripOf(plate, plate.toSection(keep(shown.x, plate.wide), keep(shown.y, plate.high)),
    words.moveArea(index + 1), "✥", shape.numbers, lines)];
  if (shape.outline) {
    shape.corners.forEach(({x, y}, k) => {
      if (plate.inView(screen[k])) grips.push(gripOf(plate, corners[k], words.moveCorner(k + 1), "◆", {x: [x], y: [y]}, lines));
    });
  }
  return [outline, ...grips];
}

/** The corners of an area as YAML. */
const outlineOf = (node) => `[${cornersOf(areaShape(node)).map(({x, y}) => `[${lengthText(x)}, ${lengthText(y)}]`).join(", ")}]`;

/** Two corners dragged open on a plate become an area. */
function drawArea(plate, event, done) {
  const start = plate.placeAt(event), lines = linesBeside(board.tree, -1), reach = 8 / plate.fit.scale;
  const at = ({x, y}) => ({x: snapped(x, lines.x, reach), y: snapped(y, lines.y, reach)}), from = at(start);
  const frame = make("span", {class: "drawing"});
  plate.lay.append(frame);
  let to = from;
  const move = (now) => {
    to = at(plate.placeAt(now));
    const a = plate.toScreen(from.x, from.y), b = plate.toScreen(to.x, to.y);
    plate.put(frame, Math.min(a.x, b.x), Math.min(a.y, b.y));
    frame.style.width = `${Math.abs(a.x - b.x)}px`;
    frame.style.height = `${Math.abs(a.y - b.y)}px`;
  };
  const end = (now) => {
    frame.remove();
    if (now.type === "pointerup" && to.x !== from.x && to.y !== from.y) {
      done({x: [Math.min(from.x, to.x), Math.max(from.x, to.x)], y: [Math.min(from.y, to.y), Math.max(from.y, to.y)]});
    }
  };
  plate.letGo = followPointer(event, move, end);
}
