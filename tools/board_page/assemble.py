#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""Makes the board, one page of its parts: engine, scripts, style, demo.

usage: assemble.py [--served] ENGINE.js ENGINE.wasm DEMO.yaml LICENCE.txt... OUTPUT

--served: a page that lies on a web server beside its manifest and the worker that keeps it.
"""

import base64
import hashlib
import lzma
import pathlib
import re
import sys

HERE = pathlib.Path(__file__).resolve().parent / "page"
VENDOR = HERE.parent / "vendor"
# What a later one uses comes first.
SCRIPTS = ["words.js", "engine.js", "case.js", "plate.js", "tape.js", "curve.js", "sheet.js", "note.js", "take.js", "house.js", "complete.js", "text.js", "board.js"]


def digest(text):
    return "'sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode() + "'"


def plain(text):
    """A script without what only its readers need: comments on lines of their own, indentation."""
    text = re.sub(r"^ */\*\*.*?\*/\n", "", text, flags=re.DOTALL | re.MULTILINE)
    return re.sub(r"^ *(//.*\n)?", "", text, flags=re.MULTILINE)


def joined_scripts():
    parts = [(VENDOR / "xz-decompress.js").read_text()]
    for name in SCRIPTS:
        parts.append(plain((HERE / name).read_text().replace('"use strict";\n', "")))
    return '"use strict";\n' + "".join(parts)


def packed(content):
    """What the page unpacks itself; a dictionary of 4 MiB, the whole engine, and the check its reader knows."""
    filters = [{"id": lzma.FILTER_LZMA2, "preset": 9 | lzma.PRESET_EXTREME, "dict_size": 4 << 20}]
    return base64.b64encode(lzma.compress(content, check=lzma.CHECK_CRC32, filters=filters)).decode()


def data(name, text, kind):
    """A block of data in the page: what it holds cannot end it."""
    if "</script" in text.lower():
        raise SystemExit(f"assemble.py: {name} holds the end of a script element")
    return f'<script id="{name}" type="{kind}">{text}</script>\n'


def page(engine, wasm, demo, licences, served):
    script, style = joined_scripts(), (HERE / "style.css").read_text()
    # The editor of the text pane, as its authors made it, runs when it is wanted: by its digest, too.
    editor = (VENDOR / "codemirror.js").read_text()
    own = " 'self'" if served else ""
    policy = (f"default-src 'none'; script-src {digest(script)} {digest(editor)} 'wasm-unsafe-eval'; "
              f"style-src {digest(style)}; worker-src blob:{own}; img-src data:{own}; base-uri 'none'; "
              "form-action 'none'" + ("; manifest-src 'self'" if served else ""))
    licences = [*licences, *((VENDOR / f"{name}.licence.txt").read_text() for name in ("codemirror", "xz-decompress"))]
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{policy}">\n'
        '<meta name="viewport" content="width=device-width,initial-scale=1,viewport-fit=cover">\n'
        "<title>Quoin board</title>\n"
        + ('<link rel="manifest" href="manifest.webmanifest">\n' if served else "") +
        f"<style>{style}</style>\n</head>\n<body>\n{(HERE / 'body.html').read_text()}"
        + data("engine-script", engine, "text/plain") + data("engine-wasm", packed(wasm), "text/plain")
        + data("editor", packed(editor.encode()), "text/plain")
        + data("demo", demo, "text/plain") + data("notices", packed("\n\n".join(licences).encode()), "text/plain")
        + f"<script>{script}</script>\n</body>\n</html>\n")


def main(arguments):
    served = arguments[:1] == ["--served"]
    arguments = arguments[1:] if served else arguments
    if len(arguments) < 4:
        raise SystemExit(__doc__)
    engine, wasm, demo, *licences, output = arguments
    text = page(pathlib.Path(engine).read_text(), pathlib.Path(wasm).read_bytes(),
                pathlib.Path(demo).read_text(), [pathlib.Path(one).read_text() for one in licences], served)
    pathlib.Path(output).write_text(text)


if __name__ == "__main__":
    main(sys.argv[1:])
