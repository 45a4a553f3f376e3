# SPDX-License-Identifier: MIT
"""A small client of the W3C WebDriver protocol (https://www.w3.org/TR/webdriver2/), of what these tests need.

    with Browser() as browser:
        browser.open(path)
        browser.click("#box-s1")
        browser.type("#reading-r1", "4.9")

Selectors are CSS. Clicks and keys go through the browser as a person's would.
"""
import base64
import http.client
import json
import os
import pathlib
import socket
import subprocess
import tempfile
import time
import unittest

ELEMENT = "element-6066-11e4-a52e-4f735466cecf"  # the name that the protocol gives a reference to an element
TAB, ENTER, SPACE, ESCAPE, RIGHT = "\ue004", "\ue007", " ", "\ue00c", "\ue014"
CONTROL, RELEASE, DELETE = "\ue009", "\ue000", "\ue017"


class DriverError(Exception):
    """The browser answered with an error; args[0] is its name in the protocol."""


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


class Browser:
    """A headless Chromium with a profile of its own. `prefs` are those of the profile."""

    def __init__(self, width=1100, height=900, prefs=None):
        self.port = free_port()
        self.folder = tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
        self.driver = subprocess.Popen(["chromedriver", f"--port={self.port}"], stdout=subprocess.DEVNULL,
                                       stderr=subprocess.DEVNULL)
        self.session = None
        arguments = ["--headless=new", f"--window-size={width},{height}", "--disable-gpu", "--no-first-run",
                     "--disable-dev-shm-usage", "--force-device-scale-factor=1", "--hide-scrollbars",
                     "--disable-component-update", "--disable-background-networking", "--lang=en",
                     f"--user-data-dir={self.folder.name}"]
        if os.geteuid() == 0:
            arguments.append("--no-sandbox")
        options = {"args": arguments}
        if prefs:
            options["prefs"] = prefs
        try:
            self.wait_until(self.ready, "chromedriver does not answer")
            capabilities = {"browserName": "chrome", "unhandledPromptBehavior": "ignore", "goog:chromeOptions": options,
                            "goog:loggingPrefs": {"browser": "ALL", "performance": "ALL"}}
            answer = self.ask("POST", "/session", {"capabilities": {"alwaysMatch": capabilities}})
            self.session = answer["sessionId"]
        except BaseException:
            self.close()
            raise

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.close()

    def close(self):
        try:
            if self.session:
                self.ask("DELETE", f"/session/{self.session}")
        finally:
            self.driver.terminate()
            self.driver.wait(timeout=20)
            self.folder.cleanup()

    def ask(self, method, path, body=None):
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=60)
        try:
            payload = None if body is None else json.dumps(body)
            connection.request(method, path, payload, {"Content-Type": "application/json"})
            answer = json.loads(connection.getresponse().read())["value"]
        finally:
            connection.close()
        if isinstance(answer, dict) and "error" in answer:
            raise DriverError(answer["error"], answer.get("message", ""))
        return answer

    def ready(self):
        try:
            return self.ask("GET", "/status")["ready"]
        except OSError:
            return False

    @staticmethod
    def wait_until(true, what, seconds=30):
        end = time.monotonic() + seconds
        while not true():
            if time.monotonic() > end:
                raise AssertionError(what)
            time.sleep(0.02)

    def do(self, command, body=None):
        return self.ask("POST", f"/session/{self.session}/{command}", body or {})

    def tell(self, what):
        return self.ask("GET", f"/session/{self.session}/{what}")

    def devtools(self, command, **parameters):
        """A command of the Chrome DevTools Protocol."""
        return self.do("goog/cdp/execute", {"cmd": command, "params": parameters})

    def open(self, path):
        self.do("url", {"url": pathlib.Path(path).resolve().as_uri()})

    def reload(self):
        self.do("refresh")

    def find(self, selector):
        return self.do("element", {"using": "css selector", "value": selector})[ELEMENT]

    def click(self, selector):
        """Brought to the middle first, as a person would who sees a bar over it."""
        element = self.find(selector)
        self.run("arguments[0].scrollIntoView({block: 'center'})", {ELEMENT: element})
        self.do(f"element/{element}/click")

    def clear(self, selector):
        """By keys: the protocol's own way changes the value without the events of typing."""
        self.type(selector, CONTROL + "a" + RELEASE + DELETE)

    def type(self, selector, text):
        self.do(f"element/{self.find(selector)}/value", {"text": text})

    def keys(self, keys):
        """Pressed and released one after another, wherever the focus is."""
        strokes = [{"type": kind, "value": key} for key in keys for kind in ("keyDown", "keyUp")]
        self.do("actions", {"actions": [{"type": "key", "id": "keys", "actions": strokes}]})

    def text(self, selector):
        """As a person sees it: "" when it is hidden."""
        return self.tell(f"element/{self.find(selector)}/text")

    def value(self, selector):
        return self.tell(f"element/{self.find(selector)}/property/value")

    def checked(self, selector):
        return self.tell(f"element/{self.find(selector)}/selected")

    def seen(self, selector):
        return self.tell(f"element/{self.find(selector)}/displayed")

    def style(self, selector, name):
        return self.tell(f"element/{self.find(selector)}/css/{name}")

    def run(self, script, *arguments):
        return self.do("execute/sync", {"script": script, "args": list(arguments)})

    def run_async(self, script, *arguments):
        return self.do("execute/async", {"script": script, "args": list(arguments)})

    def log(self, kind):
        return self.do("se/log", {"type": kind})

    def screenshot(self):
        """The viewport as PNG."""
        return base64.b64decode(self.tell("screenshot"))

    def whole_page(self):
        """All of the page as PNG, below the viewport too."""
        size = self.devtools("Page.getLayoutMetrics")["cssContentSize"]
        shot = self.devtools("Page.captureScreenshot", format="png", captureBeyondViewport=True,
                             clip={"x": 0, "y": 0, "width": size["width"], "height": size["height"], "scale": 1})
        return base64.b64decode(shot["data"])

    def printed(self):
        """The page on A4 as PDF."""
        return base64.b64decode(self.do("print", {"page": {"width": 21.0, "height": 29.7}}))

    def phone(self, width=360, height=740):
        self.devtools("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=True)

    def media(self, kind="", **features):
        """media("print"), media(prefers_color_scheme="dark")."""
        self.devtools("Emulation.setEmulatedMedia", media=kind,
                      features=[{"name": name.replace("_", "-"), "value": value} for name, value in features.items()])


class BrowserCase(unittest.TestCase):
    """Tests that share one browser."""

    @classmethod
    def setUpClass(cls):
        cls.browser = Browser()

    @classmethod
    def tearDownClass(cls):
        cls.browser.close()
