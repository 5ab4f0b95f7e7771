# SPDX-License-Identifier: Apache-2.0
"""The board in a headless Chromium, worked by pointer as a person would, every act counted."""

import json
import os
import sys
import time

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "browser"))
from chromium import Chromium  # noqa: E402

SEEN = """(() => {
  const all = [...document.querySelectorAll(%s)].filter((one) => one.getClientRects().length);
  const wanted = %s;
  const node = wanted === null ? all[0] : all.find((one) => one.textContent.trim() === wanted) ?? all.find((one) => one.textContent.includes(wanted));
  if (!node) return null;
  node.scrollIntoView({block: "nearest"});
  let box = node.getBoundingClientRect();
  const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
  if (!(top === node || node.contains(top))) { node.scrollIntoView({block: "center"}); box = node.getBoundingClientRect(); }
  const now = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
  return {x: box.x + box.width / 2, y: box.y + box.height / 2, free: now === node || node.contains(now) || Boolean(now && now.contains(node) && now.closest("button, a, input") === null),
          over: now ? now.outerHTML.slice(0, 120) : "nothing"};
})()"""


class Board:
    def __init__(self, program, page, width=1280, height=800, touch=False):
        self.browser = Chromium(program, patience=180).__enter__()
        self.page, self.touch_first = page, touch
        self.actions = []
        self.browser.call("Emulation.setDeviceMetricsOverride", width=width, height=height,
                          deviceScaleFactor=1, mobile=touch)
        if touch:
            self.browser.call("Emulation.setTouchEmulationEnabled", enabled=True, maxTouchPoints=1)

    def close(self):
        self.browser.__exit__()

    def value(self, script):
        return self.browser.value(script)

    def open(self, path=None):
        self.browser.open(path or self.page)

    def fresh(self):
        """The start page with nothing kept."""
        self.browser.open(self.page)
        self.value("localStorage.clear()")
        self.browser.open(self.page)

    def until(self, script, patience=120):
        end = time.monotonic() + patience
        while time.monotonic() < end:
            if self.value(f"Boolean({script})"):
                return
            self.browser.frame()
        state = self.value("typeof board === 'undefined' ? '' : JSON.stringify({word: tape.word, said: $('#live').textContent, assumed: [...board.assumed], "
                           "faults: board.faults, focus: document.activeElement.outerHTML.slice(0, 120), ticket: board.ticket})")
        raise AssertionError(f"did not come to be: {script}; {state}; {self.browser.complaints()}")

    def rest(self, patience=120):
        """Until nothing is being worked out."""
        self.until("Boolean(board.faults || (board.found && board.foundFor === board.text && !document.body.classList.contains('busy')))", patience)
        self.browser.frame()

    def place(self, selector, words=None):
        for _ in range(100):
            at = self.value(SEEN % (json.dumps(selector), json.dumps(words)))
            if at:
                break
            self.browser.frame()
        assert at, f"nothing to tap: {selector} {words}"
        self.browser.frame()
        at = self.value(SEEN % (json.dumps(selector), json.dumps(words)))
        assert at["free"], f"{selector} {words} lies under {at['over']}"
        return at["x"], at["y"]

    def press(self, x, y):
        if self.touch_first:
            # The browser lets go of a touch that a busy page does not take up soon enough.
            self.value("new Promise((done) => requestIdleCallback(() => done(0), {timeout: 5000}))")
            self.browser.touch(x, y)
        else:
            self.browser.call("Input.dispatchMouseEvent", type="mouseMoved", x=x, y=y)
            for kind in ("mousePressed", "mouseReleased"):
                self.browser.call("Input.dispatchMouseEvent", type=kind, x=x, y=y, button="left", clickCount=1)
        self.browser.frame()

    def tap(self, selector, words=None):
        self.press(*self.place(selector, words))
        self.actions.append(f"tap {words or selector}")
        self.browser.frame()

    def tap_at(self, x, y, name):
        self.press(x, y)
        self.actions.append(f"tap {name}")

    def type(self, text):
        self.browser.call("Input.insertText", text=text)
        self.actions.append(f"type {text}")

    def drag(self, selector, dx, dy, steps=12, words=None, seconds=0.0):
        x, y = self.place(selector, words)
        self.drag_from(x, y, dx, dy, steps, seconds)
        self.actions[-1] = f"drag {words or selector}"

    def drag_from(self, x, y, dx, dy, steps=12, seconds=0.0):
        touch = self.touch_first

        def event(kind, px, py):
            if touch:
                name = {"down": "touchStart", "move": "touchMove", "up": "touchEnd"}[kind]
                points = [] if kind == "up" else [{"x": px, "y": py}]
                self.browser.call("Input.dispatchTouchEvent", type=name, touchPoints=points)
            else:
                name = {"down": "mousePressed", "move": "mouseMoved", "up": "mouseReleased"}[kind]
                self.browser.call("Input.dispatchMouseEvent", type=name, x=px, y=py, button="left",
                                  buttons=0 if kind == "up" else 1, clickCount=1)

        event("down", x, y)
        start = time.monotonic()
        for k in range(1, steps + 1):
            event("move", x + dx * k / steps, y + dy * k / steps)
            if seconds:
                time.sleep(max(0.0, start + seconds * k / steps - time.monotonic()))
        if touch:  # a finger that lifts while it moves throws, and the next touch only ends that
            for _ in range(4):
                time.sleep(0.05)
                event("move", x + dx, y + dy)
        event("up", x + dx, y + dy)
        self.browser.frame()
        self.actions.append("drag")

    def ruler(self, value, unit):
        """Moves the tape to a value, as far as it is away; `unit`: pixels a unit."""
        now = float(self.value("tape.word.value"))
        if now != value:
            self.drag(".strip", (now - value) * unit, 0)
            # The last step by the button where the finger was not exact.
            for _ in range(6):
                now = float(self.value("Number(tape.word.value)"))
                if abs(now - value) < 1e-9:
                    break
                self.tap(".run > button", "+" if now < value else "−")
