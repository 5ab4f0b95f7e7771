# SPDX-License-Identifier: Apache-2.0
"""Random acts on the board, the same for the same seed: taps, drags, keys, rubbish typed and pasted."""

import json
import random

RUBBISH = ["", " ", "-1", "1e400", "NaN", "33 cm", "0,5", "999999", "lime plaster", "{a: [", "'", '"', "~", "# x", "- -",
           "\u202e\x00x", "\U0001f4a7", "a" * 2000, ": :", "&a *a", "<b>x</b>"]
KEYS = ["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Tab", "Enter", "Escape"]
TARGETS = """[...document.querySelectorAll("button:not(:disabled), input:not([type=file]), [role=slider], .plate, .curve")]
  .map((one) => one.getBoundingClientRect()).filter((box) => box.width && box.bottom > 0 && box.top < innerHeight && box.left < innerWidth)
  .map((box) => [box.x, box.y, box.width, box.height])"""


class Monkey:
    def __init__(self, board, width, height, texts, seed):
        self.board, self.width, self.height, self.texts = board, width, height, texts
        self.dice = random.Random(seed)
        self.done = []
        # Nothing is carried away or printed: both would ask the machine.
        board.value("(() => { HTMLAnchorElement.prototype.click = () => {}; window.print = () => {}; })()")

    def place(self):
        targets = self.board.value(TARGETS)
        if not targets:
            return 1, 1
        x, y, wide, high = self.dice.choice(targets)
        part = self.dice.random()
        return min(max(x + wide * part, 1), self.width - 1), min(max(y + high * part, 1), self.height - 1)

    def tap(self):
        self.board.press(*self.place())

    def drag(self):
        self.board.drag_from(*self.place(), self.dice.randint(-300, 300), self.dice.randint(-200, 200), steps=self.dice.randint(1, 9))

    def typed(self):
        self.board.browser.call("Input.insertText", text=self.dice.choice(RUBBISH))
        self.board.browser.key(self.dice.choice(KEYS))

    def keys(self):
        for _ in range(self.dice.randint(1, 5)):
            self.board.browser.key(self.dice.choice(KEYS), shift=self.dice.random() < 0.3)

    def storm(self):
        self.board.value("(() => { for (let k = 0; k < 20; ++k) k * 7 % 3 ? board.undo() : board.redo(); })()")

    def paste(self):
        text = self.dice.choice(self.texts)
        for _ in range(self.dice.randint(0, 4)):
            at = self.dice.randint(0, len(text))
            text = text[:at] + self.dice.choice("{}[]:-#'\"&*\t\n0x~") + text[at:]
        self.board.value(f"ready.then(() => board.open({json.dumps(text)})).then(() => 0)")

    def begin(self):
        recipe = self.dice.choice(["corner", "reveal", "sill", "wall base", "sheet", "bay corner"])
        self.board.value(f"board.begin({json.dumps(recipe)}).then(() => 0)")

    def turn(self):
        self.board.value(f"(() => {{ if (board.opened) board.turn({json.dumps(self.dice.choice(['', 'text', 'take']))}); }})()")

    def drop(self):
        self.board.value("(() => { const [one] = entries(under(board.tree, 'variants')); if (one) board.dropVariant(one[0]); })()")

    def act(self):
        act = self.dice.choice([self.tap] * 14 + [self.drag] * 6 + [self.typed] * 4 + [self.keys] * 3
                               + [self.storm, self.paste, self.begin, self.turn, self.drop])
        self.done.append(act.__name__)
        act()
