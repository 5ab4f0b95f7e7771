// SPDX-License-Identifier: Apache-2.0
"use strict";

// What could be written at a place of the text, by the engine's own schema and catalogue.

const bareKey = /^("(?:[^"\\]|\\.)*"|'[^']*'|[^\s#:[\]{},&*!|>'"%@`-][^:#]*?)\s*:(?=\s|$)/;
const unquoted = (key) => /^["']/.test(key) ? key.slice(1, -1) : key.trim();

/** Where a text ends: the path of keys and positions that leads there, whether a key or a value is
    being written, and what of it stands already. */
function endOf(text) {
  const stack = [], flow = [];
  let typed = "", key = true;
  const lines = text.split("\n");
  lines.forEach((line, number) => {
    const last = number === lines.length - 1;
    let rest = line;
    if (flow.length === 0) {
      if (!last && /^\s*(#.*)?$/.test(line)) return;
      let column = /^ */.exec(line)[0].length;
      rest = line.slice(column);
      for (let item = /^-(\s+|$)/.exec(rest); item; item = /^-(\s+|$)/.exec(rest)) {
        while (stack.length && stack.at(-1).indent > column) stack.pop();
        const top = stack.at(-1);
        if (top?.list && top.indent === column) ++top.step;
        else stack.push({indent: column, list: true, step: 0});
        column += item[0].length;
        rest = rest.slice(item[0].length);
      }
      while (stack.length && stack.at(-1).indent >= column) stack.pop();
      const found = bareKey.exec(rest);
      key = !found;
      if (found) {
        stack.push({indent: column, list: false, step: unquoted(found[1])});
        rest = rest.slice(found[0].length);
      }
      typed = rest.trimStart();
    }
    let quote = "";
    for (let k = 0; k < rest.length; ++k) {
      const sign = rest[k], inside = flow.length > 0;
      if (quote) {
        if (sign === quote) quote = "";
        typed += inside ? sign : "";
        continue;
      }
      if (sign === "#" && (k === 0 || /\s/.test(rest[k - 1]))) { typed = ""; key = false; break; }
      if (sign === "{" || sign === "[") { flow.push({list: sign === "[", step: sign === "[" ? 0 : null}); typed = ""; continue; }
      if (!inside) continue;
      const top = flow.at(-1);
      if (sign === "}" || sign === "]") { flow.pop(); typed = ""; key = false; continue; }
      if (sign === ",") { if (top.list) ++top.step; else top.step = null; typed = ""; continue; }
      if (sign === ":" && !top.list && top.step === null && /^(\s|$)/.test(rest.slice(k + 1))) { top.step = unquoted(typed); typed = ""; continue; }
      if (sign === '"' || sign === "'") quote = sign;
      typed += sign;
    }
    if (flow.length) typed = typed.trimStart();
  });
  const top = flow.at(-1);
  const steps = [...stack.map(({step}) => String(step)), ...flow.filter(({step}) => step !== null).map(({step}) => String(step))];
  return {steps, key: top ? !top.list && top.step === null : key, typed};
}

/** The parts of a schema that may hold at a path; a variant is the case once more. */
function schemasAt(schema, steps) {
  const alternatives = (one) => [one, ...(one.anyOf ?? []).flatMap(alternatives)];
  let now = alternatives(schema), trail = steps;
  if (trail[0] === "variants" && trail.length >= 2) trail = trail.slice(2);
  for (const step of trail) {
    now = now.flatMap((one) => [one.properties?.[step] ?? (typeof one.additionalProperties === "object" ? one.additionalProperties : null),
      /^\d+$/.test(step) ? one.items : null]).filter(Boolean).flatMap(alternatives);
  }
  return now;
}

/** Names that a value of this key may have, beyond what the schema lists. */
function namesFor(steps, tree, catalogue) {
  const key = steps.at(-1), own = (kind) => entries(under(tree, kind)).map(([name]) => [name, kind]);
  const materials = () => [...own("materials"), ...catalogue.materials.map(({name, about}) => [name, about ?? ""])];
  if (key === "material" || key === "fill") return materials();
  if (key === "like") return steps.includes("spaces") ? own("spaces") : materials();
  if (["inside", "outside", "touches", "space"].includes(key)) return own("spaces");
  if (key === "moisture") {
    const seen = new Map(catalogue.materials.flatMap(({moistures}) => moistures ?? []).map(({state}) => [state, ""]));
    return [...seen];
  }
  if (key === "coat") return catalogue.coats.map(({name, sd_m}) => [name, `sd ${sd_m} m`]);
  return [];
}

/** What could be written where a text ends: {from, offers: [{label, detail, apply}]}, or null. */
function offersAt(text, schema, tree, catalogue) {
  const {steps, key, typed} = endOf(text);
  const parts = schemasAt(schema, steps), offers = new Map();
  if (key) {
    for (const part of parts)
      for (const [name, {description}] of Object.entries(part.properties ?? {})) offers.set(name, {label: name, detail: description ?? "", apply: `${name}: `});
  } else {
    for (const part of parts)
      for (const value of part.enum ?? ("const" in part ? [part.const] : [])) offers.set(String(value), {label: String(value), detail: part.description ?? ""});
    for (const [name, detail] of namesFor(steps, tree, catalogue)) offers.set(name, {label: name, detail, apply: yamlWord(name)});
  }
  return offers.size ? {from: text.length - typed.length, offers: [...offers.values()]} : null;
}
