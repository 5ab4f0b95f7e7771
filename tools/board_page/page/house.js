// SPDX-License-Identifier: Apache-2.0
"use strict";

// A house: one file that names case files, its sections. All texts lie in `board.beside` by their
// names; the section shown is `board.text`, too, and is put back there at each change.

/** {name: file of the house, title, parts: [[section, file]], part: the one shown, left: {section: how
    it was left}}; throws where the house names what is not there. */
async function houseIn(texts, name) {
  const tree = treeOf(await hand.call("values", {text: texts[name]}));
  const parts = entries(under(tree, "house")).map(([part, file]) => [part, file.text]);
  const missing = parts.find(([, file]) => !Object.hasOwn(texts, file));
  if (missing || parts.length === 0) throw new Error(words.besideMissing(missing ? missing[1] : words.sections));
  return {name, title: under(tree, "title")?.text ?? words.sections, parts, part: null, left: new Map()};
}

const houseFile = (house) => house.parts.find(([part]) => part === house.part)[1];

/** The findings of all sections as they are written now. */
const houseSolved = async (house) => [].concat(await head.call("solve", {text: board.beside[house.name], beside: board.beside}));

/** Those of the section shown: with what the readings of the whole house tell. A fault elsewhere in the
    house leaves it judged by itself. */
async function foundInHouse(house) {
  const k = house.parts.findIndex(([part]) => part === house.part), asked = board.asked();
  try {
    return (await houseSolved(house))[k];
  } catch (error) {
    if (error.kind === "stopped") throw error;
    return head.call("solve", asked);
  }
}

/** Shows a section as it was left: with its own undo, variant and assumed words. */
async function showSection(house, part) {
  const {side} = board;
  house.part = part;
  const text = board.beside[houseFile(house)];
  await board.open(text, {beside: board.beside, saved: text, ...house.left.get(part), house});
  if (side === "text") board.turn(side);
  $("#side").querySelector(`[data-act="section/${CSS.escape(part)}"]`)?.focus({preventScroll: true});
}

/** Keeps how the section shown is left. */
function leaveSection() {
  const {house, variant, assumed, past, future, saved} = board;
  if (house) house.left.set(house.part, {variant, assumed: [...assumed], past, future, saved});
}

/** The sections to choose from, above the note. */
function sectionsOf(house) {
  return make("p", {role: "group", "aria-label": words.sections}, ...house.parts.flatMap(([part]) => {
    const on = part === house.part, act = note.act(part, () => on || board.leave(() => showSection(house, part)), on, `section/${part}`);
    act.setAttribute("aria-pressed", on);
    return [act, " · "];
  }), note.act(words.wholeHouse, () => board.leave(() => paintHouse(house))));
}

/** The sections, each with its outcome, and what the readings of all of them say together. */
async function paintHouse(house) {
  const start = $("#start");
  start.replaceChildren(make("h1", {}, house.title), make("p", {}, words.sections),
    ...house.parts.map(([part]) => make("p", {}, note.act(part, () => showSection(house, part)), " ", make("span", {"data-part": part}, words.solving))),
    make("div", {class: "note-survey"}), make("p", {}, note.act(words.takeHouse, () => takeHouse(house)), " · ", note.act(words.another, () => paintStart())));
  start.hidden = false;
  const spans = [...start.querySelectorAll("[data-part]")];
  try {
    const found = await houseSolved(house);
    found.forEach((one, k) => { spans[k].textContent = one.variants[0].outcomes?.[0]?.words ?? one.variants[0].summary; });
    start.querySelector(".note-survey").replaceChildren(...[].concat(found[0].survey?.words ?? []).map((said) => make("p", {}, said)));
  } catch (error) {
    spans.forEach((span) => { span.textContent = ""; });
    const {what = error.message, file = "", line = 0} = error.faults?.[0] ?? {};
    start.querySelector(".note-survey").replaceChildren(make("p", {class: "bad", role: "status"}, [file, line ? words.faultLine(line) : "", what].filter(Boolean).join(", ")));
  }
}

async function openHouse(texts, name) {
  try {
    const house = await houseIn(texts, name);
    await board.leave(() => {
      Object.assign(board, {house: null, beside: texts, text: ""});
      return paintHouse(house);
    });
  } catch (error) {
    board.say(error.faults?.[0]?.what ?? error.message);
  }
}

/** Every file of the house as it stands now. */
function takeHouse(house) {
  for (const file of new Set([house.name, ...house.parts.map(([, one]) => one)])) download(file, "application/yaml", board.beside[file]);
  for (const [part, file] of house.parts) {
    const saved = board.beside[file];
    if (part === board.house?.part) board.saved = saved;
    else if (house.left.has(part)) house.left.get(part).saved = saved;
  }
}
