# SPDX-License-Identifier: Apache-2.0
"""A headless Chromium driven over a pipe by its debugging protocol: no network, no other package."""

import base64
import collections
import json
import os
import select
import shutil
import subprocess
import tempfile
import time

FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-extensions",
         "--disable-background-networking", "--disable-component-update", "--disable-sync",
         "--disable-dev-shm-usage", "--hide-scrollbars", "--remote-debugging-pipe"]


class Chromium:
    """One browser with one page. Use as a context."""

    def __init__(self, program="chromium", patience=60):
        self.patience = patience
        self.events = collections.deque()
        self.folder = tempfile.mkdtemp(prefix="quoin-browser-")
        read_commands, self.commands = os.pipe()
        self.answers, write_answers = os.pipe()

        def hand_over():  # the protocol wants descriptors 3 and 4
            commands, answers = os.dup(read_commands), os.dup(write_answers)
            os.dup2(commands, 3)
            os.dup2(answers, 4)

        self.process = subprocess.Popen(
            [program, *FLAGS, f"--user-data-dir={self.folder}", "about:blank"],
            preexec_fn=hand_over, close_fds=False, stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True)
        os.close(read_commands)
        os.close(write_answers)
        self.buffer = b""
        self.number = 0
        self.session = None
        targets = self.call("Target.getTargets")["targetInfos"]
        page = next(target for target in targets if target["type"] == "page")
        self.session = self.call("Target.attachToTarget", targetId=page["targetId"],
                                 flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.call(f"{domain}.enable")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        try:
            self.session = None
            self.call("Browser.close")
            self.process.wait(10)
        except (OSError, RuntimeError, subprocess.TimeoutExpired):
            self.process.kill()
            self.process.wait()
        os.close(self.commands)
        os.close(self.answers)
        shutil.rmtree(self.folder, ignore_errors=True)

    def message(self):
        """The next message of the browser."""
        deadline = time.monotonic() + self.patience
        while b"\0" not in self.buffer:
            ready, _, _ = select.select([self.answers], [], [], max(0, deadline - time.monotonic()))
            part = os.read(self.answers, 1 << 20) if ready else b""
            if not part:
                raise RuntimeError("the browser does not answer")
            self.buffer += part
        text, self.buffer = self.buffer.split(b"\0", 1)
        return json.loads(text)

    def send(self, method, **parameters):
        """Gives a command; its number."""
        self.number += 1
        command = {"id": self.number, "method": method, "params": parameters}
        if self.session:
            command["sessionId"] = self.session
        data = json.dumps(command).encode() + b"\0"
        while data:
            data = data[os.write(self.commands, data):]
        return self.number

    def answer(self, number, method):
        """The answer to a command that was given; events that come before it are kept."""
        while True:
            message = self.message()
            if message.get("id") == number:
                if "error" in message:
                    raise RuntimeError(f"{method}: {message['error']['message']}")
                return message["result"]
            self.events.append(message)

    def call(self, method, **parameters):
        return self.answer(self.send(method, **parameters), method)

    def open(self, path, scripted=True):
        """Loads a file and waits until it is there, and drawn where scripts run."""
        self.events.clear()
        self.call("Page.navigate", url="file://" + os.path.abspath(path))
        while not any(event["method"] == "Page.loadEventFired" for event in self.events):
            self.events.append(self.message())
        if scripted:
            self.frame()

    def value(self, script):
        """What a script says in the page; a promise is waited for."""
        answer = self.call("Runtime.evaluate", expression=script, returnByValue=True,
                           awaitPromise=True)
        if "exceptionDetails" in answer:
            details = answer["exceptionDetails"]
            raise RuntimeError(details.get("exception", {}).get("description", details["text"]))
        return answer["result"].get("value")

    def frame(self):
        """Waits until what was asked for is drawn."""
        self.value("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")

    def size(self, width, height, scale=1):
        self.call("Emulation.setDeviceMetricsOverride", width=width, height=height,
                  deviceScaleFactor=scale, mobile=False)
        self.frame()

    def key(self, name, shift=False):
        for kind in ("keyDown", "keyUp"):
            self.call("Input.dispatchKeyEvent", type=kind, key=name, code=name,
                      modifiers=8 if shift else 0)
        self.frame()

    def point(self, x, y):
        self.call("Input.dispatchMouseEvent", type="mouseMoved", x=x, y=y)
        self.frame()

    def touch(self, x, y):
        # Both at once: on a busy machine they may else lie so far apart that they are a long press.
        method = "Input.dispatchTouchEvent"
        numbers = [self.send(method, type="touchStart", touchPoints=[{"x": x, "y": y}]), self.send(method, type="touchEnd", touchPoints=[])]
        for number in numbers:
            self.answer(number, method)
        self.frame()

    def picture(self, path, whole=False):
        shot = self.call("Page.captureScreenshot", captureBeyondViewport=whole)
        with open(path, "wb") as file:
            file.write(base64.b64decode(shot["data"]))

    def print(self, path):
        paper = self.call("Page.printToPDF", preferCSSPageSize=True, printBackground=False)
        with open(path, "wb") as file:
            file.write(base64.b64decode(paper["data"]))

    def complaints(self):
        """Errors and warnings of the console since the page was opened."""
        found = []
        for event in self.events:
            if event["method"] == "Runtime.exceptionThrown":
                details = event["params"]["exceptionDetails"]
                found.append(details.get("exception", {}).get("description", details["text"]))
            if event["method"] == "Runtime.consoleAPICalled":
                found.append(str(event["params"]["args"]))
            if event["method"] == "Log.entryAdded":
                found.append(event["params"]["entry"]["text"])
        return found

    def requests(self):
        """Addresses asked for since the page was opened, but for what is within it."""
        return [event["params"]["request"]["url"] for event in self.events
                if event["method"] == "Network.requestWillBeSent"
                and not event["params"]["request"]["url"].startswith("data:")]
