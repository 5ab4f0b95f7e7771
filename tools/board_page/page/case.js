// SPDX-License-Identifier: Apache-2.0
"use strict";

// A case as a tree of the values that the engine lists, and pieces of YAML for what is placed in it.

const stepped = (step) => String(step).replace(/~/g, "~0").replace(/\//g, "~1");
const joined = (...steps) => steps.filter((step) => step !== "").join("/");
const steps = (path) => path.split("/").map((step) => step.replace(/~1/g, "/").replace(/~0/g, "~"));

/** Nested maps: {text, path} at the ends, {inner: Map} between. */
function treeOf(values) {
  const root = {inner: new Map(), path: ""};
  for (const value of values) {
    let node = root, path = "";
    for (const step of steps(value.path)) {
      path = joined(path, stepped(step));
      node.inner ??= new Map();
      if (!node.inner.has(step)) node.inner.set(step, {path});
      node = node.inner.get(step);
    }
    node.text = value.text;
    if (value.at) node.path = value.at;
  }
  return root;
}

const under = (node, ...keys) => keys.reduce((inner, key) => inner?.inner?.get(String(key)), node);
const entries = (node) => node?.inner ? [...node.inner] : [];
const isList = (node) => Boolean(node?.inner) && [...node.inner.keys()][0] === "0";

/** What a variant makes of a case: as the program merges them. */
function mergedTree(base, by) {
  if (!by?.inner) return by ?? base;
  if (!base?.inner || isList(by) || isList(base)) return by;
  const inner = new Map(base.inner);
  for (const [key, node] of by.inner) {
    if (node.text === null) inner.delete(key);
    else inner.set(key, mergedTree(base.inner.get(key), node));
  }
  return {inner, path: base.path};
}

/** A word as YAML that reads as that text whatever it holds. */
const yamlWord = (text) => /^[A-Za-z][A-Za-z0-9 _-]*$/.test(text) && !/ $|^null$/i.test(text)
  ? text : /^-?[0-9]+(\.[0-9]+)?( [A-Za-z°%/0-9-]+)?$/.test(text) ? text : JSON.stringify(text);

/** A node as YAML in one line. */
function yamlOf(node) {
  if (!node.inner) return node.text === null ? "~" : yamlWord(node.text);
  const parts = entries(node).map(([key, value]) =>
    isList(node) ? yamlOf(value) : `${yamlWord(key)}: ${yamlOf(value)}`);
  return isList(node) ? `[${parts.join(", ")}]` : `{${parts.join(", ")}}`;
}

/** The recipe of a section: its name and its node; a sheet has the name "sheet". */
function recipeOf(tree) {
  const found = entries(under(tree, "section")).find(([key]) => key !== "bands");
  return found ? {name: found[0], node: found[1]} : null;
}

/** The parts of a layer, brief or in full; a membrane has no thickness. */
function layerOf(node) {
  if (isList(node)) {
    const [material, thickness, moisture] = [0, 1, 2].map((k) => under(node, k));
    return {material, thickness, moisture, node};
  }
  return {material: under(node, "material"), thickness: under(node, "thickness"),
    moisture: under(node, "moisture"), membrane: under(node, "membrane"), node};
}

/** A length as written in mm; NaN where it is none. */
function millimetres(text) {
  const read = /^\s*(-?[0-9.]+)\s*(mm|cm|m)?\s*$/.exec(text ?? "");
  return read ? Number(read[1]) * ({cm: 10, m: 1000}[read[2]] ?? 1) : NaN;
}

const bare = (value) => String(Math.round(value * 100) / 100);

/** A length as it is written into a case: what is under 1 mm has its unit, else it would be taken for metres. */
const lengthText = (mm) => bare(mm) === "0" || Math.abs(mm) >= 0.995 ? bare(mm) : `${bare(mm)} mm`;
