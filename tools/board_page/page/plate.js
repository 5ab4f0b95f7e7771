// SPDX-License-Identifier: Apache-2.0
"use strict";

// A picture of one variant with what can be taken hold of on it.

const svgSpace = "http://www.w3.org/2000/svg";
const make = (tag, attributes = {}, ...inner) => {
  const node = document.createElement(tag);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith("on")) node.addEventListener(key.slice(2), value);
    else if (key === "class") node.className = value || "";
    else if (key.startsWith("aria-") && typeof value === "boolean") node.setAttribute(key, String(value));
    else if (value === true) node.setAttribute(key, "");
    else if (value !== false && value !== undefined && value !== null) node.setAttribute(key, value);
  }
  node.append(...inner.filter((one) => one !== null && one !== undefined && one !== false));
  return node;
};
const drawn = (tag, attributes = {}, ...inner) => {
  const node = document.createElementNS(svgSpace, tag);
  for (const [key, value] of Object.entries(attributes)) node.setAttribute(key, value);
  node.append(...inner);
  return node;
};
const degrees = (value) => value.toFixed(1);

/** Follows the pointer that was put down until it is lifted or taken away, wherever it goes. What is
    handed back lets go of it at once. */
function followPointer(down, move, end) {
  const own = (heard) => (event) => { if (event.pointerId === down.pointerId) heard(event); };
  const moved = own(move), ended = own((event) => {
    letGo();
    end(event);
  });
  const letGo = () => {
    removeEventListener("pointermove", moved);
    removeEventListener("pointerup", ended);
    removeEventListener("pointercancel", ended);
  };
  addEventListener("pointermove", moved);
  addEventListener("pointerup", ended);
  addEventListener("pointercancel", ended);
  return letGo;
}

class Plate {
  /** `acts`: {drag(handle, value), drop(handle, value), choose(handle), tap(place), hover(place)} */
  constructor(host, acts) {
    this.host = host;
    this.acts = acts;
    this.lay = host.querySelector(".lay");
    this.held = null;  // while an edge is dragged: {handle, along, across, origin, value, near}
    this.coming = null;  // what the next frame shows
    this.frozen = false;  // while an area is moved: nothing but the picture changes
    host.addEventListener("pointerdown", (event) => {
      if (this.fit && event.button <= 0 && !event.target.closest("button") && this.acts.press(this, event)) event.preventDefault();
    });
    host.addEventListener("pointermove", (event) => {
      if (this.held || event.pointerType === "touch" || !this.fit) return;
      this.acts.hover(this.placeAt(event));
    });
    host.addEventListener("pointerleave", () => this.acts.hover(null));
    host.addEventListener("click", (event) => {
      if (this.fit && !event.target.closest("button")) this.acts.tap(this.placeAt(event));
    });
    new ResizeObserver(() => this.seen && this.show(this.seen)).observe(host);
  }

  /** Nothing to be seen or taken hold of. */
  clear() {
    this.letGo?.();
    this.host.classList.remove("moving");
    Object.assign(this, {seen: null, fit: null, held: null, dropping: false, frozen: false});
    this.host.querySelector(":scope > svg")?.remove();
    this.lay.replaceChildren();
  }

  placeAt(event) {
    const box = this.host.getBoundingClientRect();
    return this.toSection(event.clientX - box.left, event.clientY - box.top);
  }
  toSection(x, y) { return {x: (x - this.fit.x) / this.fit.scale, y: (this.fit.y - y) / this.fit.scale}; }
  toScreen(x, y) { return {x: this.fit.x + x * this.fit.scale, y: this.fit.y - y * this.fit.scale}; }

  /** Scale and place of the section on the plate: the coldest spot in view, layers wide enough to be
      told apart. What shows stays where it is as long as an edge is held. */
  fitted(seen) {
    const {wide, high} = this, {view} = seen;
    const low = {x: -view.left / view.units_per_mm, y: (view.top - view.height) / view.units_per_mm};
    const size = {x: view.width / view.units_per_mm, y: view.height / view.units_per_mm};
    const whole = Math.min((wide - 24) / size.x, high / size.y);  // a mark at an end is seen
    const scale = Math.min(Math.max(whole, Math.min(wide, high) / 900), Math.max(whole * 4, 0.02));
    const cold = seen.rooms[0] ?? {x_mm: low.x + size.x / 2, y_mm: low.y + size.y / 2};
    const put = (from, length, room, towards, share) => {
      if (length * scale <= room) return (room - length * scale) / 2 - from * scale;
      const wanted = room * share - towards * scale;
      // What is marked at an end of the section is seen whole.
      const air = (away) => away * scale < 12 ? 16 : 0, low = air(towards - from), high = air(from + length - towards);
      return Math.min(low - from * scale, Math.max(room - high - (from + length) * scale, wanted));
    };
    const x = put(low.x, size.x, wide, cold.x_mm, 0.38);
    const up = put(low.y, size.y, high, cold.y_mm, 0.4);
    return {scale, x, y: high - up};
  }

  /** With the next frame, the newest of what came until then; `act` after it. Whoever works out the
      next picture need not wait for this one to be drawn. */
  showSoon(seen, act) {
    if (!this.coming) {
      requestAnimationFrame(() => {
        const {coming} = this;
        this.coming = null;
        if ((this.held && !this.dropping) || this.frozen) {
          this.show(coming.seen);
          coming.act();
        }
      });
    }
    this.coming = {seen, act};
  }

  show(seen) {
    this.seen = seen;
    this.wide = this.host.clientWidth;  // asked for before anything changes: no layout between
    this.high = this.host.clientHeight;
    if (!this.wide) return;
    if (this.held) this.followHeld(seen);
    else if (!this.frozen) this.fit = this.fitted(seen);
    const parsed = new DOMParser().parseFromString(seen.picture, "image/svg+xml").documentElement;
    const picture = document.importNode(parsed, true);
    const zoom = this.fit.scale / seen.view.units_per_mm;
    picture.setAttribute("width", seen.view.width * zoom);
    picture.setAttribute("height", seen.view.height * zoom);
    picture.setAttribute("aria-hidden", "true");
    picture.removeAttribute("role");
    picture.querySelectorAll("title, desc, :scope > rect:not([x])").forEach((one) => one.remove());  // its paper, too
    picture.style.left = `${this.fit.x - seen.view.left * zoom}px`;
    picture.style.top = `${this.fit.y - seen.view.top * zoom}px`;
    this.host.querySelector(":scope > svg")?.remove();
    this.host.prepend(picture);
    if (!this.frozen) this.mark(seen);
  }

  /** Keeps the outer face still where a recipe counts from the inner one. */
  followHeld(seen) {
    const {handle, along, across, origin} = this.held;
    const now = seen.handles.find((one) => one.path === handle.path && one.axis === handle.axis
      && one.grows * handle.grows > 0);
    if (!now) return;
    const shift = across + (now.value - handle.value) / handle.grows - this.across(seen, now, along);
    const fit = {...origin};
    if (handle.axis === "x") fit.x += shift * fit.scale;
    else fit.y -= shift * fit.scale;
    this.fit = fit;
  }

  /** The ends of the edge of a handle in the section, mm. */
  ends(seen, handle) {
    const {left, top, units_per_mm: unit} = seen.view;
    return [handle.from, handle.to].map(([x, y]) => ({x: (x - left) / unit, y: (top - y) / unit}));
  }
  /** Where its line is on the axis on which it moves, so far along the other, mm. */
  across(seen, handle, along) {
    const [a, b] = this.ends(seen, handle);
    return handle.axis === "x" ? lineAt(a.y, a.x, b.y, b.x, along) : lineAt(a.x, a.y, b.x, b.y, along);
  }

  /** One handle a value: the edge of which most is in view, lying ones first on a wide plate. */
  chosen(seen) {
    const best = new Map(), {wide, high} = this;
    for (const handle of seen.handles) {
      const [a, b] = this.ends(seen, handle).map(({x, y}) => this.toScreen(x, y));
      const upright = handle.axis === "x", [side, room, most] = upright ? ["y", high, wide] : ["x", wide, high];
      const from = Math.max(Math.min(a[side], b[side]), 0);
      const to = Math.min(Math.max(a[side], b[side]), room);
      const across = (along) => upright ? lineAt(a.y, a.x, b.y, b.x, along) : lineAt(a.x, a.y, b.x, b.y, along);
      const middle = across((from + to) / 2);
      const inView = middle > 0 && middle < most ? to - from : 0;
      const held = best.get(handle.path);
      if (inView > 20 && (!held || inView > held.inView)) best.set(handle.path, {handle, from, to, across, inView});
    }
    return [...best.values()].slice(0, 8);
  }

  mark(seen) {
    const focused = document.activeElement?.dataset?.knob;
    const kept = this.held && this.lay.querySelector(`[data-knob="${CSS.escape(this.held.handle.path)}"]`);
    const pieces = [], stems = drawn("svg", {class: "stems", "aria-hidden": "true"});
    const sides = new Map(), all = this.chosen(seen), sideOf = ({handle}) => handle.axis + Math.sign(handle.grows);
    for (const one of all) sides.set(sideOf(one), [...sides.get(sideOf(one)) ?? [], one]);
    for (const side of sides.values()) this.spreadAlong(seen, side);
    for (const one of all) {
      const {handle} = one, knob = this.knob(seen, one, stems);
      if (kept && kept.dataset.knob === handle.path) {  // under a finger: moved, not replaced
        this.put(kept, parseFloat(knob.style.left), parseFloat(knob.style.top));
        kept.className = knob.className;
      } else {
        pieces.push(knob);
      }
    }
    for (const room of seen.rooms) {
      const at = this.toScreen(room.x_mm, room.y_mm);
      if (!this.inView(at)) continue;
      pieces.push(this.put(make("span", {class: "cold", title: words.coldest}), at.x, at.y));
      const tag = make("span", {class: "tag"}, words.colder(degrees(room.coldest_C)));
      pieces.push(this.put(tag, Math.min(at.x + 14, this.wide - 84), Math.max(at.y - 34, 2)));
    }
    pieces.push(...this.acts.marks(this, seen));
    for (const one of [...this.lay.children]) if (one !== kept) one.remove();
    this.lay.prepend(stems);
    this.lay.append(...pieces);
    this.spread();
    if (focused) this.lay.querySelector(`[data-knob="${CSS.escape(focused)}"]`)?.focus();
  }

  /** Lifts figures that would lie on others: what was placed first stays. */
  spread() {
    const placed = [];
    for (const one of this.lay.querySelectorAll(".pin b, .tag:not(.finger)")) {
      const box = one.getBoundingClientRect();
      let lift = 0;
      for (let k = 0; k < 5; ++k) {
        const other = placed.find((held) => box.left < held.right && held.left < box.right && box.top - lift < held.bottom && held.top < box.bottom - lift);
        if (!other) break;
        lift = box.bottom - other.top + 1;
      }
      if (lift) one.style.marginTop = `${-lift}px`;
      placed.push({left: box.left, right: box.right, top: box.top - lift, bottom: box.bottom - lift});
    }
  }

  inView(at) {
    return at.x >= 0 && at.y >= 0 && at.x <= this.wide && at.y <= this.high;
  }
  put(node, x, y) {
    node.style.left = `${x}px`;
    node.style.top = `${y}px`;
    return node;
  }

  /** Where the stems of one side stand along their edges: away from the coldest spot at the one end, the
      lying ones in two rows where there is little room, and no two knobs on each other. */
  spreadAlong(seen, side) {
    const lies = side[0].handle.axis === "y", step = lies ? 74 : 54, most = (lies ? this.wide : this.high) - 34;
    const foot = side[0].across((side[0].from + side[0].to) / 2);
    const twoRows = lies && (side[0].handle.grows > 0 ? foot : this.high - foot) > 62 + 46 + 24;
    let last = null;
    side.forEach((one, number) => {
      const {from, to} = one, room = Math.max(to - from, step);
      const cold = seen.rooms[0] ? this.toScreen(seen.rooms[0].x_mm, seen.rooms[0].y_mm) : {x: from, y: from};
      const start = Math.abs((lies ? cold.x : cold.y) - from) < Math.abs((lies ? cold.x : cold.y) - to);
      const roomy = step * (side.length + 1.1) < room, gap = !lies ? 46 : roomy || !twoRows ? 68 : 36;
      const offset = roomy ? step * (number + 1.6) : room * (number + 1) / (side.length + 0.6);
      one.along = start ? from + offset : to - offset;
      if (last !== null && Math.abs(one.along - last) < gap) one.along = last + (start ? gap : -gap);
      last = one.along;
      one.back = roomy || !twoRows ? 0 : 46 * (number % 2);
    });
    const beyond = Math.max(Math.max(...side.map(({along}) => along)) - most, 0) + Math.min(Math.min(...side.map(({along}) => along)) - 34, 0);
    for (const one of side) one.along -= beyond;
  }

  /** A knob in the room's air, held off the edge it moves by a stem. */
  knob(seen, {handle, from, to, across, along, back}, stems) {
    const lies = handle.axis === "y", {wide, high} = this;
    const away = Math.sign(handle.grows) * (lies ? -1 : 1);
    const reach = lies ? 62 : 74, foot = across(along);
    let off = foot + away * (reach + back);
    off = lies ? Math.min(Math.max(off, 24), high - 24) : Math.min(Math.max(off, 34), wide - 34);
    const held = this.held?.handle.path === handle.path || tape.path === handle.path;
    const [x, y] = lies ? [along, off] : [off, along];
    const [footX, footY] = lies ? [along, foot] : [foot, along];
    const line = `M${x} ${y}L${footX} ${footY}`;
    stems.append(drawn("path", {class: "halo", d: line}), drawn("path", {d: line, class: held ? "on" : ""}),
      drawn("circle", {cx: footX, cy: footY, r: 4, fill: "#fff", stroke: "#191713", "stroke-width": 2}));
    if (held) {
      const [a, b] = [from, to].map((one) => lies ? `${one} ${across(one)}` : `${across(one)} ${one}`), edge = `M${a}L${b}`;
      stems.append(drawn("path", {class: "on", d: edge}));
    }
    const shown = this.held?.handle.path === handle.path ? this.held.value : handle.value;
    const knob = make("button", {
      type: "button", class: held ? "knob on" : "knob", role: "slider", "data-path": handle.path,
      "data-knob": handle.path, "aria-label": words.thickness(handle.material),
      "aria-valuemin": handle.low, "aria-valuemax": handle.high, "aria-valuenow": shown,
      "aria-valuetext": `${bare(shown)} mm`,
      onkeydown: (event) => this.step(event, handle),
    }, bare(shown));
    knob.addEventListener("pointerdown", (event) => this.take(event, knob, seen, handle));
    knob.addEventListener("click", (event) => {
      if (!this.dropped && event.detail === 0) this.acts.choose(handle);  // by key
      event.stopPropagation();
    });
    return this.put(knob, x, y);
  }

  step(event, handle) {
    const sign = {ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1}[event.key];
    if (!sign) return;
    event.preventDefault();
    event.stopPropagation();
    const value = handle.value + sign * (event.shiftKey ? 50 : event.altKey ? 1 : 5);
    this.acts.drop(handle, Math.min(Math.max(value, handle.low), handle.high));
  }

  take(event, knob, seen, handle) {
    if (event.button > 0) return;
    event.preventDefault();
    const start = handle.axis === "x" ? event.clientX : event.clientY;
    const [a, b] = this.ends(seen, handle), along = handle.axis === "x" ? (a.y + b.y) / 2 : (a.x + b.x) / 2;
    const base = {handle, along, across: this.across(seen, handle, along), origin: {...this.fit}, value: handle.value};
    let moved = false;
    const move = (now) => {
      const gone = (handle.axis === "x" ? now.clientX - start : start - now.clientY) * handle.grows;
      if (!moved && Math.abs(gone) < 5) return;
      moved = true;
      this.held = this.held ?? base;
      const exact = handle.value + gone / this.fit.scale, {held} = this;
      const within = (value) => Math.min(Math.max(value, Math.max(handle.low, 1)), handle.high);
      // The picture follows to the millimetre, the value in steps that one builds with.
      const near = within(Math.round(exact)), value = within(Math.round(exact / 5) * 5);
      if (near !== held.near) this.acts.drag(handle, near);
      held.near = near;
      if (value === held.value) return;
      held.value = value;
      if (navigator.userActivation?.hasBeenActive) navigator.vibrate?.(5);  // else the browser complains
      knob.textContent = bare(value);
    };
    const end = async (now) => {
      if (!moved) return this.acts.choose(handle);
      const {value} = this.held;
      this.dropping = true;
      this.dropped = true;
      setTimeout(() => { this.dropped = false; }, 50);
      if (now.type === "pointercancel") this.acts.drop(handle, handle.value);
      else await this.acts.drop(handle, value);
      this.held = null;
      this.dropping = false;
    };
    this.letGo = followPointer(event, move, end);
  }
}

/** A line through (a, at_a) and (b, at_b), at `along`. */
const lineAt = (a, atA, b, atB, along) => atA + (atB - atA) * (along - a) / (b - a);

/** The temperature of the field at a place, degC; null outside the material. */
function temperatureAt(field, {x, y}) {
  const strip = (lines, at) => {
    if (at < lines[0] || at > lines[lines.length - 1]) return -1;
    let low = 0, high = lines.length - 1;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (lines[middle] <= at) low = middle;
      else high = middle;
    }
    return low;
  };
  const i = strip(field.x_mm, x), j = strip(field.y_mm, y), wide = field.x_mm.length;
  if (i < 0 || j < 0) return null;
  const corners = [j * wide + i, j * wide + i + 1, (j + 1) * wide + i, (j + 1) * wide + i + 1]
    .map((node) => field.temperature_C[node]);
  if (corners.some((one) => one === null)) return null;
  const u = (x - field.x_mm[i]) / (field.x_mm[i + 1] - field.x_mm[i]);
  const v = (y - field.y_mm[j]) / (field.y_mm[j + 1] - field.y_mm[j]);
  const [a, b, c, d] = corners;
  return (a * (1 - u) + b * u) * (1 - v) + (c * (1 - u) + d * u) * v;
}

/** The point of inside surfaces nearest to a place: {surface, along, x, y, temperature, away}. */
function nearestOnSurface(surfaces, {x, y}) {
  let best = null;
  surfaces.forEach((surface, number) => {
    const {points} = surface;
    for (let k = 0; k + 1 < points.length; ++k) {
      const [ax, ay, as, at] = points[k], [bx, by, bs, bt] = points[k + 1];
      const dx = bx - ax, dy = by - ay, length = dx * dx + dy * dy;
      const t = length > 0 ? Math.min(Math.max(((x - ax) * dx + (y - ay) * dy) / length, 0), 1) : 0;
      const px = ax + t * dx, py = ay + t * dy, away = Math.hypot(px - x, py - y);
      if (!best || away < best.away)
        best = {surface, number, along: as + t * (bs - as), x: px, y: py, temperature: at + t * (bt - at), away};
    }
  });
  return best;
}

/** The place so far along a surface, mm. */
function placeAlong(surface, along) {
  const {points} = surface, last = points[points.length - 1];
  if (along <= points[0][2]) return {x: points[0][0], y: points[0][1], temperature: points[0][3]};
  for (let k = 0; k + 1 < points.length; ++k) {
    const [ax, ay, as, at] = points[k], [bx, by, bs, bt] = points[k + 1];
    if (along > bs) continue;
    const t = bs > as ? (along - as) / (bs - as) : 0;
    return {x: ax + t * (bx - ax), y: ay + t * (by - ay), temperature: at + t * (bt - at)};
  }
  return {x: last[0], y: last[1], temperature: last[3]};
}

/** The named point of a surface from which a distance is told best: the nearest. */
function originOn(surface, along) {
  const points = surface.places.filter((place) => place.from_mm === place.to_mm);
  return points.reduce((best, place) =>
    !best || Math.abs(place.from_mm - along) < Math.abs(best.from_mm - along) ? place : best, null);
}
