// SPDX-License-Identifier: Apache-2.0
"use strict";

// The program in a worker of the browser, and how the page asks it.

/** Text of the worker: the engine's own script, and one call after the other. */
function workerText() {
  const answer = `
let engine;
const asked = (call) => {
  const text = JSON.stringify(call), size = engine.lengthBytesUTF8(text) + 1;
  const at = engine._malloc(size);
  engine.stringToUTF8(text, at, size);
  const answer = JSON.parse(engine.UTF8ToString(engine._quoin_call(at)));
  engine._free(at);
  return answer;
};
self.onmessage = async ({data}) => {
  if (data.module) {
    engine = await Engine({instantiateWasm(imports, done) {
      WebAssembly.instantiate(data.module, imports).then((instance) => done(instance));
      return {};
    }});
    postMessage({ready: true});
    return;
  }
  try {
    const {edits = [], ...call} = data.call;
    let refused = null;
    for (const [path, value] of edits) {
      const answer = asked({call: "edited", text: call.text, path, value});
      if (!("made" in answer)) refused = refused ?? answer;
      else call.text = answer.made;
    }
    postMessage({id: data.id, ...refused ?? asked(call)});
  } catch (error) {
    postMessage({id: data.id, kind: "numerics", words: String(error), faults: [], broken: true});
  }
};`;
  return document.getElementById("engine-script").textContent + answer;
}

/** What a block of the page holds packed. */
function unpackedBlock(id) {
  const signs = atob(document.getElementById(id).textContent.trim()), bytes = new Uint8Array(signs.length);
  for (let k = 0; k < signs.length; ++k) bytes[k] = signs.charCodeAt(k);
  const {XzReadableStream} = window["xz-decompress"];
  return new Response(new XzReadableStream(new Blob([bytes]).stream()));
}

/** The compiled engine. */
async function engineModule() {
  return WebAssembly.compile(await unpackedBlock("engine-wasm").arrayBuffer());
}

/** The editor of the text pane, let in by its digest. */
async function editorScript() {
  if (window.CodeMirror) return;
  const script = document.createElement("script");
  script.textContent = await unpackedBlock("editor").text();
  document.head.append(script);
}

/** Why a call came to nothing: `faults` as the program tells them. */
class Refusal extends Error {
  constructor({words: said, kind, faults}) {
    super(said);
    this.kind = kind;
    this.faults = faults;
  }
}

const jsonCalls = new Set(["solve", "starts", "schema", "catalogue", "values", "handles", "glance"]);

/** One engine in a worker of its own. A call that runs too long is ended with stop(). */
class Hand {
  constructor(module, source) {
    this.module = module;
    this.source = source;
    this.waiting = new Map();
    this.number = 0;
    this.begin();
  }

  begin() {
    this.worker = new Worker(this.source);
    this.ready = new Promise((done) => {
      this.worker.onmessage = ({data}) => {
        if (data.ready) done();
        else this.hear(data);
      };
    });
    this.worker.postMessage({module: this.module});
  }

  hear(data) {
    const waiting = this.waiting.get(data.id);
    this.waiting.delete(data.id);
    if (data.broken) this.stop();  // its memory may be in any state
    if (!waiting) return;
    if ("made" in data) waiting.done(data.made);
    else waiting.fail(new Refusal(data));
  }

  /** `details.edits`: [path, value] to be written into the text first, on the same way. */
  async call(call, details = {}) {
    await this.ready;
    const id = ++this.number;
    const made = await new Promise((done, fail) => {
      this.waiting.set(id, {done, fail});
      this.worker.postMessage({id, call: {call, ...details}});
    });
    if (!jsonCalls.has(call)) return made;
    const lines = made.trim().split("\n");
    return call === "solve" && lines.length > 1 && lines.every((line) => line.startsWith("{\""))
      ? lines.map((line) => JSON.parse(line)) : JSON.parse(made);
  }

  /** Ends whatever runs; its callers hear a refusal. */
  stop() {
    this.worker.terminate();
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    this.begin();
    for (const {fail} of waiting)
      fail(new Refusal({words: words.stopped, kind: "stopped", faults: []}));
  }
}

/** Runs the newest of what it is given, one at a time: what came between is left out. */
class Newest {
  constructor() {
    this.running = false;
    this.next = null;
  }
  async run(work) {
    this.next = work;
    if (this.running) return;
    this.running = true;
    while (this.next) {
      const now = this.next;
      this.next = null;
      await now();
    }
    this.running = false;
  }
}
