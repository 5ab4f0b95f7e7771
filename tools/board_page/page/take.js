// SPDX-License-Identifier: Apache-2.0
"use strict";

// What is carried away: nothing of it is sent anywhere.

const mostLink = 8;  // kB, as browsers, mail and chat programs mostly pass on

function download(name, type, content) {
  const link = make("a", {download: name, href: URL.createObjectURL(new Blob([content], {type}))});
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}

const stem = () => (under(board.tree, "title")?.text ?? "case").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 60) || "case";

async function packed(text) {
  const stream = new Blob([text]).stream().pipeThrough(new CompressionStream("gzip"));
  const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
  let signs = "";
  for (const byte of bytes) signs += String.fromCharCode(byte);
  return btoa(signs).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
}

async function unpacked(signs) {
  const bytes = Uint8Array.from(atob(signs.replace(/-/g, "+").replace(/_/g, "/")), (sign) => sign.charCodeAt(0));
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip")).getReader();
  const parts = [];
  for (let size = 0;;) {
    const {done, value} = await reader.read();
    if (done) break;
    size += value.length;
    if (size > mostBytes) throw new Error(words.tooLarge);
    parts.push(value);
  }
  return new Blob(parts).text();
}

/** An SVG text as PNG, two pixels a unit. */
function painted(svg) {
  return new Promise((done, fail) => {
    const image = new Image();
    image.onload = () => {
      const canvas = make("canvas", {width: image.width * 2, height: image.height * 2});
      canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
      canvas.toBlob(done, "image/png");
    };
    image.onerror = () => fail(new Error("png"));
    image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  });
}

const takes = {
  async file() {
    download(board.house ? houseFile(board.house) : `${stem()}.yaml`, "application/yaml", board.text);
    board.saved = board.text;
    board.paintTop();
  },
  async report() { download(`${stem()}-report.html`, "text/html", await head.call("report", board.asked())); },
  async pictures() {
    const {pictures} = await head.call("solve", {...board.asked(), pictures: true});
    for (const [name, svg] of Object.entries(pictures)) download(name, "image/svg+xml", svg);
  },
  async images() {
    const {pictures} = await head.call("solve", {...board.asked(), pictures: true, variant: board.shownName()});
    const [name, svg] = Object.entries(pictures).find(([one]) => one.startsWith("field"));
    download(name.replace(".svg", ".png"), "image/png", await painted(svg));
  },
  async table() { download(`${stem()}-surface.csv`, "text/csv", await head.call("surface_table", board.asked())); },
  async print() { window.print(); },
  async link() {
    const link = `${location.href.split("#")[0]}#case=${await packed(board.text)}`;
    if (link.length > mostLink * 1000) return board.say(words.linkTooLong(mostLink));
    const host = document.querySelector("#link");
    host.replaceChildren(make("label", {}, words.linkHere, make("input", {class: "link", value: link, readonly: true, onfocus: (event) => event.target.select()})));
    try {
      await navigator.clipboard.writeText(link);
      board.say(words.linkCopied);
    } catch {
      host.querySelector("input").select();
    }
  },
};

async function paintTake(host) {
  const rows = Object.entries(words.take).map(([name, [label, about]]) => make("button",
    {type: "button", "data-take": name, onclick: () => takes[name]().catch((error) => board.say(error.message))},
    make("b", {}, label), make("small", {}, about)));
  host.replaceChildren(make("p", {}, note.act(words.backToNote, () => board.turn(""))),
    make("div", {class: "rows"}, ...rows), make("div", {id: "link"}),
    make("h2", {}, words.kept), make("p", {class: "soft"}, words.keptHow),
    make("p", {}, note.act(words.forget, () => board.forget())), make("p", {class: "soft"}, words.iOS),
    make("p", {}, note.act(words.notices, async () => download("licences.txt", "text/plain", await unpackedBlock("notices").text()))));
  const size = (await packed(board.text)).length / 1000;
  const about = host.querySelector("[data-take=link] small");
  if (about) about.textContent = size > mostLink ? words.linkTooLong(mostLink) : words.linkSize(size.toFixed(1), mostLink);
}
