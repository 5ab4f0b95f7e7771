// SPDX-License-Identifier: Apache-2.0
"use strict";

// The note: the case in sentences whose words can be changed.

/** The index of the layer list's thickest layer: the masonry. */
function thickest(layers) {
  let best = -1, most = 0;
  layers.forEach(([, node], k) => {
    const mm = millimetres(layerOf(node).thickness?.text);
    if (mm > most) [best, most] = [k, mm];
  });
  return best;
}

/** As wide as a word comes out in the lettering of the note, and a little air. */
const widthOf = (text) => {
  const pen = widthOf.pen ??= document.createElement("canvas").getContext("2d"), {fontSize, fontFamily} = getComputedStyle(document.body);
  pen.font = `600 ${fontSize} ${fontFamily}`;
  return `${Math.max(pen.measureText(text).width / parseFloat(fontSize) + 0.7, 1.8)}em`;
};

const note = {
  host: null,

  paint() {
    const {tree} = board, typed = document.activeElement;
    if (board.side !== "") return;
    if (!tree) return this.host.replaceChildren();
    if (typed?.classList.contains("word") && typed.value !== typed.defaultValue) return;  // half a word
    const recipe = recipeOf(tree), pieces = board.house ? [sectionsOf(board.house)] : [];
    pieces.push(make("h2", {}, words.asItIs));
    if (recipe?.name === "sheet") pieces.push(this.sheet(recipe.node));
    else if (recipe) pieces.push(...this.recipe(recipe));
    pieces.push(this.airs(tree));
    if (board.assumed.size) pieces.push(make("p", {class: "soft"}, words.assumed));
    pieces.push(make("h2", {}, words.measured), ...this.readings(tree));
    pieces.push(...curveOf(board.base, board.seen));
    pieces.push(make("h2", {}, words.whatIf), ...this.remedies(tree, recipe));
    if (board.variant) pieces.push(...this.changes(tree));
    pieces.push(make("h2", {}, words.then), make("p", {},
      this.act(words.takeAway, () => board.turn("take")), " · ",
      this.act(words.turnOver, () => board.turn("text")), " · ",
      this.act(words.another, () => board.leave())));
    const held = document.activeElement?.closest?.(".note") && document.activeElement.dataset.path;
    this.host.replaceChildren(...pieces);
    if (held) this.host.querySelector(`.word[data-path="${CSS.escape(held)}"]`)?.focus({preventScroll: true});
  },

  act(label, act, on = false, path = null) {
    return make("button", {type: "button", class: on ? "act on" : "act", onclick: act, "data-act": path ?? label}, label);
  },

  /** An editable word with its unit behind it. */
  word(details) {
    const {path, text, kind} = details;
    const field = make("input", {
      class: board.assumed.has(path) ? "word assumed" : "word", "data-path": path, value: text ?? "",
      "aria-label": details.label, autocomplete: "off", spellcheck: "false",
      inputmode: matchMedia("(pointer: coarse)").matches ? "none"
        : ["length", "temperature", "humidity"].includes(kind) ? "decimal" : "text",
    });
    const fit = () => { field.style.width = widthOf(field.value); };
    fit();
    field.addEventListener("focus", () => {
      if (matchMedia("(pointer: fine)").matches) field.select();
      if (tape.path !== path) board.choose(details);
    });
    field.addEventListener("click", () => board.choose(details));
    field.addEventListener("input", fit);
    const commit = () => {
      field.defaultValue = field.value;  // no half word any more
      details.put(field.value.trim());
    };
    field.addEventListener("change", commit);
    field.addEventListener("keydown", (event) => {
      if (event.key === "Enter") { event.preventDefault(); commit(); details.next?.(); }
      else if (event.key === "Escape") tape.close();
      else if ((event.key === "ArrowUp" || event.key === "ArrowDown") && details.step) {
        event.preventDefault();
        const length = kind === "length", value = length ? millimetres(field.value) : Number(field.value);
        const to = value + (event.key === "ArrowUp" ? 1 : -1) * details.step * (event.shiftKey ? 10 : 1);
        if (Number.isFinite(to)) details.put(length ? lengthText(to) : bare(to));
      }
    });
    if (!details.unit || !/^-?[0-9.]+$/.test(text ?? "")) return field;
    return make("span", {class: "unit"}, field, ` ${details.unit}`);
  },

  /** The thickness of a layer. */
  thickness(layer) {
    const {path, text} = layer.thickness;
    return this.word(board.details({path, text, kind: "length", unit: words.mm, step: 5, low: 1, high: 5000,
      label: words.thickness(layer.material.text), value: millimetres(text)}));
  },

  layerWords(list, layers, wetAt) {
    const pieces = [];
    layers.forEach(([, node], k) => {
      const layer = layerOf(node);
      if (k > 0) pieces.push(` ${words.on} `);
      if (layer.membrane || !layer.thickness) {
        const path = layer.membrane?.path ?? node.path, text = layer.membrane?.text ?? "";
        pieces.push(this.word(board.details({path, text, kind: "text", label: path})));
        return;
      }
      pieces.push(this.thickness(layer), " ", this.word(board.details({path: layer.material.path, text: layer.material.text,
        kind: "material", label: words.material, acts: this.layerActs(list, k, layers)})));
      const wet = this.moisture(layer, k === wetAt);
      if (wet) pieces.push(", ", wet);
    });
    return pieces;
  },

  /** How wet a layer is: where it is written, or for the masonry where it would be. */
  moisture(layer, wanted) {
    const own = under(board.tree, "materials", layer.material.text);
    const written = layer.moisture ?? under(own, "moisture");
    if (!written && !wanted) return null;
    const path = written?.path ?? (own ? joined("materials", stepped(layer.material.text), "moisture")
      : joined(layer.node.path, isList(layer.node) ? "2" : "moisture"));
    const text = written?.text ?? "dry";
    const like = under(own, "like")?.text ?? layer.material.text;
    return this.word(board.details({path, text, kind: "moisture", label: words.moisture(layer.material.text),
      material: like, absent: !written}));
  },

  layerActs(list, k, layers) {
    const at = (index) => joined(list, String(index));
    const acts = [[words.remove, () => board.change((text) => hand.call("removed", {text, path: at(k)}))]];
    const moved = (to) => board.change(async (text) => {
      const out = await hand.call("removed", {text, path: at(k)});
      return hand.call("inserted", {text: out, path: at(to), value: yamlOf(layers[k][1])});
    });
    if (k > 0) acts.push([words.earlier, () => moved(k - 1)]);
    if (k + 1 < layers.length) acts.push([words.outer, () => moved(k + 1)]);
    return layers.length > 1 ? acts : [];
  },

  recipe({name, node}) {
    const pieces = [], rest = [];
    for (const [key, value] of entries(node)) {
      if (isList(value)) {
        const layers = entries(value), path = value.path;
        const lead = key === "layers" ? words.subject[name] ?? key : words.lists[key] ?? key;
        const add = this.act(words.addLayer, () => board.change((text) => hand.call("inserted",
          {text, path: joined(path, "0"), value: `{material: ${words.newLayer}, thickness: 15}`})), false, `${path}/+`);
        const sentence = make("p", {}, `${lead} `, ...this.layerWords(path, layers, key === "layers" ? thickest(layers) : -1), ". ", add);
        if (key === "layers") pieces.unshift(sentence);
        else pieces.push(sentence);
      } else if (value.text !== undefined && !["inside", "outside"].includes(key)) {
        const length = /^-?[0-9.]+$/.test(value.text);
        rest.push(make("span", {class: length && "unit"}, `${key} `, this.word(board.details(length
          ? {path: value.path, text: value.text, kind: "length", unit: words.mm, step: 5, low: -5000, high: 50000, label: key, value: Number(value.text)}
          : {path: value.path, text: value.text, kind: under(board.tree, "materials", value.text) || board.material(value.text) ? "material" : "text", label: key}))));
      }
    }
    if (rest.length) pieces.push(make("p", {}, `${words.furthermore} `, ...rest.flatMap((one, k) => k ? [" · ", one] : [one])));
    return pieces;
  },

  sheet(node) {
    const areas = entries(node).map(([k, area]) => {
      const row = make("p", {}, `${Number(k) + 1}. `, this.word(board.details({path: under(area, "fill")?.path ?? area.path,
        text: under(area, "fill")?.text ?? "", kind: "material", label: words.material,
        acts: [[words.remove, () => { board.area = null; board.change((text) => hand.call("removed", {text, path: area.path})); }],
          ...(under(area, "x") && under(area, "y") ? [[words.slopes, () => board.slope(Number(k))]] : [])]})));
      const number = (value) => this.word(board.details({path: value.path, text: value.text, kind: "length", step: 5, low: -50000, high: 50000,
        label: words.areaNumber(Number(k) + 1), value: millimetres(value.text)}));
      for (const side of ["x", "y"]) {
        for (const end of ["0", "1"]) {
          const value = under(area, side, end);
          if (value?.text) row.append(end === "0" ? ` ${side} ` : " – ", number(value));
        }
      }
      for (const [, corner] of entries(under(area, "outline"))) {
        const [x, y] = ["0", "1"].map((one) => under(corner, one));
        if (x?.text && y?.text) row.append(" (", number(x), ", ", number(y), ")");
      }
      return row;
    });
    return make("div", {}, ...areas, make("p", {}, this.act(words.addArea, () => board.drawing(true))));
  },

  airs(tree) {
    const sentence = make("p", {});
    for (const [name, space] of entries(under(tree, "spaces"))) {
      const kind = under(space, "is")?.text;
      const temperature = under(space, "temperature"), humidity = under(space, "humidity");
      if (!temperature) continue;
      sentence.append(sentence.childNodes.length ? " " : "", kind === "inside" ? words.room(name) : words.outdoors(name), " ",
        this.word(board.details({path: temperature.path, text: temperature.text, kind: "temperature", unit: words.degrees,
          step: 0.5, low: -40, high: 45, label: words.temperature(name), value: Number(temperature.text)})));
      if (humidity?.text && kind === "inside") {
        sentence.append(` ${words.and} `, this.word(board.details({path: humidity.path, text: humidity.text, kind: "humidity",
          unit: words.percent, step: 1, low: 1, high: 100, label: words.humidity(name), value: Number(humidity.text)})));
      }
      if (kind === "inside") {
        const behind = under(space, "behind");
        sentence.append(", ", this.word(board.details({path: behind?.path ?? joined(space.path, "behind"), text: behind?.text ?? words.free,
          kind: "choice", label: words.surfaces, absent: !behind, choices: [[words.free, null], [words.furniture, "furniture"], [words.curtain, "curtain"]]})));
      }
      sentence.append(".");
    }
    return sentence;
  },

  readings(tree) {
    const pieces = [], found = board.found?.variants?.[0]?.readings ?? [];
    for (const [name, reading] of entries(under(tree, "readings"))) {
      const temperature = under(reading, "temperature");
      if (!temperature) continue;
      const index = found.findIndex?.((one) => one.probe === name) ?? -1, seen = found[index];
      const low = seen && Math.min(seen.computed_with_surface_resistances_C, seen.computed_with_heat_resistances_C);
      const high = seen && Math.max(seen.computed_with_surface_resistances_C, seen.computed_with_heat_resistances_C);
      const row = make("p", {}, `${name} `, this.word(board.details({path: temperature.path, text: temperature.text, kind: "temperature",
        unit: words.degrees, step: 0.1, low: -40, high: 45, label: name, value: Number(temperature.text),
        acts: [[words.remove, () => board.removeReading(name)]]})), " ");
      if (seen) {
        row.append(make("span", {"data-finding": `/variants/0/readings/${index}/explained`,
          class: seen.explained ? "good" : "bad"}, (seen.explained ? words.fits : words.misses)(degrees(low), degrees(high))));
      }
      pieces.push(row);
    }
    if (pieces.length === 0) pieces.push(make("p", {class: "soft"}, words.nothingMeasured));
    pieces.push(make("p", {}, this.act(words.addReading, () => board.pinning(true))));
    const survey = board.found?.survey;
    if (survey) {
      for (const [k, said] of [].concat(survey.words ?? []).entries())
        pieces.push(make("p", {class: "say", "data-finding": Array.isArray(survey.words) ? `/survey/words/${k}` : "/survey/words"}, said));
    } else if (entries(under(tree, "readings")).length >= 2 && !under(tree, "survey") && !board.house) {
      pieces.push(make("p", {}, this.act(words.explain, () => board.explain())));
    }
    return pieces;
  },

  remedies(tree, recipe) {
    const line = make("p", {}), made = remediesFor(tree, recipe);
    for (const [name] of entries(under(tree, "variants"))) {
      if (made.some((one) => one.name === name)) continue;
      line.append(line.childNodes.length ? " · " : "", this.act(name, () => board.show(board.variant === name ? "" : name), board.variant === name));
    }
    for (const remedy of made) {
      const there = under(tree, "variants", remedy.name);
      line.append(line.childNodes.length ? " · " : "", this.act(remedy.name, () => there
        ? board.show(board.variant === remedy.name ? "" : remedy.name) : board.addVariant(remedy), board.variant === remedy.name));
    }
    const pieces = [line];
    if (made.some((one) => one.wet && under(tree, "variants", one.name)))
      pieces.push(make("p", {class: "say"}, words.dryFirst));
    return pieces;
  },

  /** What the variant shown has of its own. */
  changes(tree) {
    const variant = under(tree, "variants", board.variant);
    if (!variant) return [];
    const pieces = [make("h2", {}, words.beside(board.variant))], sentence = make("p", {});
    const walk = (node, trail) => {
      for (const [key, value] of entries(node)) {
        if (isList(value) && ["layers", "lining", "board", "floor", "foundation", "return"].includes(key)) {
          const layers = entries(value), path = value.path;
          pieces.push(make("p", {}, `${words.lists[key] ?? ""} `, ...this.layerWords(path, layers, -1), ". ",
            this.act(words.addLayer, () => board.change((text) => hand.call("inserted",
              {text, path: joined(path, "0"), value: `{material: ${words.newLayer}, thickness: 15}`})), false, `${path}/+`)));
        } else if (value.inner) {
          walk(value, [...trail, key]);
        } else if (value.text !== null) {
          const kind = key === "moisture" ? "moisture" : key === "temperature" || key === "humidity" ? key : "text";
          const own = under(tree, "materials", trail[trail.length - 1]);
          sentence.append(sentence.childNodes.length ? " · " : "", `${[...trail.slice(-1), key].join(" ")} `,
            this.word(board.details({path: value.path, text: value.text, kind, label: [...trail, key].join(" "),
              unit: {temperature: words.degrees, humidity: words.percent}[key], step: key === "temperature" ? 0.5 : 1,
              low: -40, high: 100, value: Number(value.text), material: under(own, "like")?.text ?? trail[trail.length - 1]})));
        }
      }
    };
    walk(variant, []);
    pieces.push(sentence, make("p", {}, this.act(words.drop, () => board.dropVariant(board.variant))));
    pieces.push(make("p", {class: "say"}, words.heatOnly));
    return pieces;
  },
};

/** What could be done here, water first: {name, yaml, wet}. */
function remediesFor(tree, recipe) {
  const all = [];
  if (!recipe || recipe.name === "sheet") return all;
  const layersOf = (key) => entries(under(recipe.node, key)).map(([, node]) => node);
  const layers = layersOf("layers");
  const wetNames = entries(under(tree, "materials")).filter(([, node]) => {
    const state = under(node, "moisture")?.text;
    return state && !["dry", "sheltered"].includes(state);
  }).map(([name]) => name);
  const wetLayers = layers.some((node) => { const {moisture} = layerOf(node); return moisture && !["dry", "sheltered"].includes(moisture.text); });
  const drier = (node) => {
    const layer = layerOf(node);
    return layer.membrane || !layer.thickness ? yamlOf(node)
      : `{material: ${yamlWord(layer.material.text)}, thickness: ${yamlWord(layer.thickness.text)}`
        + (layer.moisture ? ", moisture: sheltered}" : "}");
  };
  const dryMaterials = wetNames.length
    ? `materials: {${wetNames.map((name) => `${yamlWord(name)}: {moisture: sheltered}`).join(", ")}}` : "";
  const section = (key, list) => `section: {${recipe.name}: {${key}: [${list.join(", ")}]}}`;
  const lining = (list) => ["{material: lime plaster, thickness: 10}", "{material: wood fibre board, thickness: 40}", ...list];
  const asIs = layers.map(yamlOf), dried = layers.map(drier);
  const wet = wetNames.length > 0 || wetLayers;
  if (wet) {
    const parts = [dryMaterials, wetLayers ? section("layers", dried) : ""].filter(Boolean);
    all.push({name: words.remedies.dried, yaml: `{${parts.join(", ")}}`, wet});
  }
  if (layers.length && recipe.name !== "partition") {
    if (wet) all.push({name: words.remedies.driedLined, wet,
      yaml: `{${[dryMaterials, section("layers", lining(dried))].filter(Boolean).join(", ")}}`});
    all.push({name: words.remedies.lined, yaml: `{${section("layers", lining(asIs))}}`, wet});
  }
  if (["reveal", "sill", "head"].includes(recipe.name)) {
    const key = recipe.name === "sill" ? "board" : "lining", now = layersOf(key).map(yamlOf);
    const thin = key === "board" ? [...now, "{material: wood fibre board, thickness: 20}"]
      : ["{material: lime plaster, thickness: 8}", "{material: wood fibre board, thickness: 20}", ...now];
    all.push({name: words.remedies.revealLined, yaml: `{${section(key, thin)}}`});
  }
  const rooms = entries(under(tree, "spaces")).filter(([, space]) => under(space, "is")?.text === "inside");
  if (rooms.length) {
    const spaces = (change) => `{spaces: {${rooms.map(([name, space]) => `${yamlWord(name)}: ${change(space)}`).join(", ")}}}`;
    if (rooms.every(([, space]) => Number(under(space, "humidity")?.text) > 50))
      all.push({name: words.remedies.aired, yaml: spaces(() => "{humidity: 50}")});
    all.push({name: words.remedies.warmer, yaml: spaces((space) => `{temperature: ${bare(Number(under(space, "temperature")?.text) + 2)}}`)});
  }
  return all;
}
