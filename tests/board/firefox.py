# SPDX-License-Identifier: Apache-2.0
"""A headless Firefox driven over its own remote protocol (Marionette): no network, no other package."""

import json
import os
import shutil
import socket
import subprocess
import tempfile
import time


class Firefox:
    """One browser with one page. Use as a context."""

    def __init__(self, program, patience=180):
        self.folder = tempfile.mkdtemp(prefix="quoin-firefox-")
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            port = free.getsockname()[1]
        with open(os.path.join(self.folder, "user.js"), "w", encoding="utf-8") as preferences:
            preferences.write(f'user_pref("marionette.port", {port});\n'
                              'user_pref("datareporting.policy.dataSubmissionEnabled", false);\n'
                              'user_pref("browser.shell.checkDefaultBrowser", false);\n')
        self.process = subprocess.Popen(
            [program, "--headless", "--marionette", "--no-remote", "--profile", self.folder],
            env={**os.environ, "HOME": self.folder}, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        self.buffer, self.number = b"", 0
        end = time.monotonic() + patience
        while True:
            try:
                self.connection = socket.create_connection(("127.0.0.1", port), timeout=patience)
                break
            except OSError:
                if time.monotonic() > end or self.process.poll() is not None:
                    self.__exit__()
                    raise
                time.sleep(0.2)
        self.message()
        self.call("WebDriver:NewSession", {"capabilities": {"alwaysMatch": {"timeouts": {"script": patience * 1000, "pageLoad": patience * 1000}}}})

    def __enter__(self):
        return self

    def __exit__(self, *_):
        if hasattr(self, "connection"):
            self.connection.close()
        self.process.kill()
        self.process.wait()
        shutil.rmtree(self.folder, ignore_errors=True)

    def message(self):
        """The next message: its length in digits, a colon, JSON."""
        while True:
            head, colon, rest = self.buffer.partition(b":")
            if colon and len(rest) >= int(head):
                self.buffer = rest[int(head):]
                return json.loads(rest[:int(head)])
            received = self.connection.recv(1 << 20)
            if not received:
                raise RuntimeError("Firefox has gone")
            self.buffer += received

    def call(self, command, parameters):
        self.number += 1
        text = json.dumps([0, self.number, command, parameters]).encode()
        self.connection.sendall(str(len(text)).encode() + b":" + text)
        _, _, error, result = self.message()
        if error:
            raise RuntimeError(error["message"])
        return result

    def open(self, path):
        self.call("WebDriver:Navigate", {"url": "file://" + os.path.abspath(path)})

    def value(self, script):
        """What an expression comes to, a promise's value too. It sees the page's document and `window.quoin`."""
        told = (f"const done = arguments[arguments.length - 1]; Promise.resolve({script})"
                ".then((made) => done([made ?? null, null]), (error) => done([null, String(error)]));")
        made, error = self.call("WebDriver:ExecuteAsyncScript", {"script": told, "args": []})["value"]
        if error:
            raise RuntimeError(error)
        return made
