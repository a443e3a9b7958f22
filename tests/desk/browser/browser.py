"""A headless Chromium by chromedriver's plain HTTP (Debian: chromium, chromium-driver), and a desk."""

import base64
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import tempfile
import time
import urllib.error
import urllib.request

ELEMENT = "element-6066-11e4-a52e-4f735466cecf"
KEYS = {"Tab": "\ue004", "Enter": "\ue007", "Control": "\ue009", "Shift": "\ue008", "Escape": "\ue00c",
        "Right": "\ue014", "Down": "\ue015", "End": "\ue010", "Space": " "}


# So long a case waits for what comes at once: only a page that hangs needs it, however slow the computer.
WAITS = 60


def until(asked, what, seconds=WAITS):
    """Waits for a condition, never for a time."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        got = asked()
        if got:
            return got
        time.sleep(0.02)
    raise AssertionError(f"waited in vain for {what}")


class Browser:
    def __init__(self, width=1280, height=800):
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            port = free.getsockname()[1]
        self.base = f"http://127.0.0.1:{port}"
        self.driver = subprocess.Popen(["chromedriver", f"--port={port}"], stdout=subprocess.DEVNULL,
                                       stderr=subprocess.DEVNULL, start_new_session=True)
        until(self._answers, "chromedriver")
        arguments = ["--headless", "--disable-gpu", "--disable-dev-shm-usage", f"--window-size={width},{height}"]
        if os.geteuid() == 0:
            arguments.append("--no-sandbox")  # its sandbox does not start for root
        options = {"args": arguments}
        made = self._call("POST", "/session", {"capabilities": {"alwaysMatch": {
            "goog:chromeOptions": options, "goog:loggingPrefs": {"browser": "ALL"}}}})
        self.session = made["sessionId"]
        self.windows = [self.do("GET", "/window")]
        self.do("POST", "/timeouts", {"script": 2000 * WAITS})

    def _answers(self):
        try:
            return urllib.request.urlopen(self.base + "/status", timeout=5)
        except OSError:
            return None

    def _call(self, method, path, body=None):
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self.base + path, method=method, data=data)
        try:
            return json.load(urllib.request.urlopen(request, timeout=4 * WAITS))["value"]
        except urllib.error.HTTPError as error:
            raise RuntimeError(json.load(error)["value"]["message"].split("\n")[0]) from error

    def do(self, method, path, body=None):
        return self._call(method, f"/session/{self.session}{path}", body)

    def size(self, width, height):
        self.do("POST", "/goog/cdp/execute", {"cmd": "Emulation.setDeviceMetricsOverride", "params": {
            "width": width, "height": height, "deviceScaleFactor": 1, "mobile": False}})

    def go(self, url):
        self.do("POST", "/url", {"url": url})
        self.wait("document.body.dataset.ready && document.querySelector('.found[aria-busy=false]')")

    def js(self, script, *arguments):
        return self.do("POST", "/execute/sync", {"script": script, "args": list(arguments)})

    def wait(self, condition, *arguments, seconds=WAITS):
        def asked():
            try:
                return self.js("return " + condition, *arguments)
            except RuntimeError as error:
                if "Cannot read properties" in str(error) or "of null" in str(error):
                    return None
                raise
        return until(asked, condition, seconds)

    def find(self, css):
        return self.wait("document.querySelector(arguments[0])", css)[ELEMENT]

    def click(self, css):
        self._click(lambda: self.find(css), css)

    def _click(self, find, what):
        """What is drawn anew between finding and clicking is found again."""
        def asked():
            try:
                self.do("POST", f"/element/{find()}/click", {})
                return True
            except RuntimeError as error:
                if "stale element" in str(error) or "not found in the current frame" in str(error):
                    return False
                # The driver scrolls no further than to the window's edge, where the page's head stays.
                if "intercepted" in str(error):
                    self.js("arguments[0].scrollIntoView({block: 'center'})", {ELEMENT: find()})
                    return False
                raise
        until(asked, f"a click on {what}")

    def press(self, name, within="main"):
        """Clicks the button or summary with that text."""
        self._click(lambda: self.wait("[...document.querySelectorAll(arguments[1] + ' :is(button, summary)')].find("
                                      "one => one.textContent.trim() === arguments[0] && !one.disabled && one.checkVisibility())",
                                      name, within)[ELEMENT], name)

    def fill(self, css, text):
        """What is drawn anew when it is emptied is found again."""
        self.do("POST", f"/element/{self.find(css)}/clear", {})
        self.do("POST", f"/element/{self.find(css)}/value", {"text": text})

    def keys(self, *pressed, held=None):
        """Presses keys on whatever has the focus; a longer text is typed letter by letter."""
        actions = []
        if held:
            actions.append({"type": "keyDown", "value": KEYS[held]})
        for one in pressed:
            for letter in [KEYS[one]] if one in KEYS else one:
                actions += [{"type": "keyDown", "value": letter}, {"type": "keyUp", "value": letter}]
        if held:
            actions.append({"type": "keyUp", "value": KEYS[held]})
        self.do("POST", "/actions", {"actions": [{"type": "key", "id": "keys", "actions": actions}]})

    def drag(self, css, up):
        """Pulls what is in the middle of an element up by so many pixels."""
        element = {ELEMENT: self.find(css)}
        self.do("POST", "/actions", {"actions": [{"type": "pointer", "id": "mouse", "parameters": {"pointerType": "mouse"}, "actions": [
            {"type": "pointerMove", "origin": element, "x": 0, "y": 0}, {"type": "pointerDown", "button": 0},
            *[{"type": "pointerMove", "origin": "pointer", "x": 0, "y": -up // 6, "duration": 20} for _ in range(6)],
            {"type": "pointerUp", "button": 0}]}]})

    def another(self):
        handle = self.do("POST", "/window/new", {"type": "tab"})["handle"]
        self.windows.append(handle)
        self.to(-1)

    def to(self, window):
        self.do("POST", "/window", {"handle": self.windows[window]})

    def complaints(self):
        """What the browser logged as wrong, but for answers that are refusals on purpose."""
        return [one["message"] for one in self.do("POST", "/se/log", {"type": "browser"})
                if one["level"] == "SEVERE" and "status of 4" not in one["message"] and "ERR_" not in one["message"]]

    def picture(self, path):
        with open(path, "wb") as out:
            out.write(base64.b64decode(self.do("GET", "/screenshot")))

    def close(self):
        try:
            self.do("DELETE", "")
        finally:
            # With every process it started: a page that hangs would else run on for ever.
            os.killpg(self.driver.pid, signal.SIGKILL)
            self.driver.wait()


class Desk:
    """`furnish desk` on a copy of a salon; its drafts are kept beside the copy."""

    def __init__(self, furnish, source, *options, files=None, folder=None):
        self.furnish, self.options = furnish, options
        self.home = folder or tempfile.mkdtemp(prefix="desk-test-")
        self.salon = os.path.join(self.home, "salon")
        if folder is None:
            shutil.copytree(source, self.salon)
        for name, text in (files or {}).items():
            os.makedirs(os.path.dirname(self.path(name)), exist_ok=True)
            with open(self.path(name), "w", encoding="utf-8") as out:
                out.write(text)
        self.start()

    def start(self):
        environment = dict(os.environ, XDG_STATE_HOME=os.path.join(self.home, "state"))
        self.process = subprocess.Popen([self.furnish, "desk", self.salon, "--no-browser", "--on", "2026-11-24", *self.options],
                                        stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True, env=environment)
        self.start_page = self.process.stdout.readline().strip()
        with open(self.start_page, encoding="utf-8") as page:
            self.url = re.search(r"url=([^\"]+)\"", page.read())[1]

    def path(self, name):
        return os.path.join(self.salon, name)

    def read(self, name):
        with open(self.path(name), encoding="utf-8") as text:
            return text.read()

    def kill(self):
        self.process.kill()
        self.process.wait()

    def end(self):
        self.process.terminate()
        self.process.wait()
        shutil.rmtree(self.home, ignore_errors=True)
