// SPDX-License-Identifier: Apache-2.0
"use strict";

// The temperature along an inside surface, as it is and as the variant shown would have it.

const curveHigh = 160, curveFoot = 36;

/** A path through the points of a surface, in view units. */
function curvePath(surface, across, up) {
  return surface.points.map(([, , along, temperature], k) => `${k ? "L" : "M"}${across(along).toFixed(1)} ${up(temperature).toFixed(1)}`).join("");
}

/** The stretch of a surface worth showing: where its temperature still changes, and all named places. */
function stretchOf(surface) {
  const last = surface.points[surface.points.length - 1][2];
  const points = surface.places.filter((place) => place.from_mm === place.to_mm).map((place) => place.from_mm);
  if (points.length === 0) return [surface.points[0][2], last];
  return [Math.max(Math.min(...points) - 600, surface.points[0][2]), Math.min(Math.max(...points) + 600, last)];
}

/** The curve of the first surface of the case, its limits, its places; a finger on it reads off. */
function curveOf(base, seen) {
  const surface = base?.surfaces?.[0];
  if (!surface || surface.points.length < 2) return [];
  const other = seen?.surfaces?.[0], wide = 400, [from, to] = stretchOf(surface), room = base.rooms[0];
  const limits = [[room?.mould_C, words.mould], [room?.dew_point_C, words.wet]].filter(([t]) => Number.isFinite(t));
  const shown = [surface, other].filter(Boolean).flatMap(({points}) => points.filter(([, , s]) => s >= from && s <= to).map(([, , , t]) => t));
  const all = [...shown, ...limits.map(([t]) => t)];
  const low = Math.floor(Math.min(...all) - 0.5), high = Math.ceil(Math.max(...all) + 0.5);
  const across = (along) => 34 + (wide - 44) * (along - from) / (to - from), up = (t) => curveHigh - curveFoot - (curveHigh - curveFoot - 10) * (t - low) / (high - low);
  const label = (text, x, y, anchor = "start") => drawn("text", {x, y, "text-anchor": anchor}, document.createTextNode(text));
  const svg = drawn("svg", {class: "curve", viewBox: `0 0 ${wide} ${curveHigh}`, role: "img",
    "aria-label": words.curveSays(degrees(Math.min(...shown)), degrees(Math.max(...shown)))});
  const clip = drawn("clipPath", {id: "curve-stretch"}, drawn("rect", {x: 34, y: 0, width: wide - 44, height: curveHigh - curveFoot + 1}));
  svg.append(clip, drawn("path", {class: "axis", d: `M34 6V${curveHigh - curveFoot}H${wide - 10}`}), label(`${high}°`, 30, up(high) + 8, "end"), label(`${low}°`, 30, up(low), "end"));
  for (const [t, word] of limits) {
    svg.append(drawn("path", {class: "limit", d: `M34 ${up(t)}H${wide - 10}`}), label(`${word} ${degrees(t)}`, wide - 12, up(t) - 3, "end"));
  }
  let free = 0;  // up to where the upper row of names is taken
  for (const place of surface.places.filter((one) => one.from_mm === one.to_mm && one.from_mm >= from && one.from_mm <= to).slice(0, 4)) {
    const half = place.name.length * 2.9, at = Math.min(Math.max(across(place.from_mm), half), wide - half), below = at - half < free;
    if (!below) free = at + half + 6;
    svg.append(drawn("path", {class: "axis", d: `M${across(place.from_mm)} ${curveHigh - curveFoot - 4}v8`}), label(place.name, at, curveHigh - (below ? 3 : 15), "middle"));
  }
  const lines = drawn("g", {"clip-path": "url(#curve-stretch)"}, drawn("path", {d: curvePath(surface, across, up)}));
  if (other) lines.append(drawn("path", {class: "other", d: curvePath(other, across, up)}));
  svg.append(lines);
  const read = (event) => {
    const box = svg.getBoundingClientRect(), x = (event.clientX - box.left) * wide / box.width;
    board.along = Math.min(Math.max(from + (x - 34) * (to - from) / (wide - 44), from), to);
    board.pointAlong();
  };
  svg.addEventListener("pointermove", (event) => { if (event.pointerType !== "touch") read(event); });
  svg.addEventListener("click", read);
  const legend = other ? make("p", {class: "soft"}, `━ ${words.asWritten}   ╌ ${seen.variant}`) : null;
  return [make("h2", {}, words.curve), svg, ...(legend ? [legend] : [])];
}
