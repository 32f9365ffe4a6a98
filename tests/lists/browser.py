"""A web browser without a screen, driven through the WebDriver protocol (W3C) with nothing but
Python's own library."""

import json
import os
import shutil
import signal
import socket
import subprocess
import tempfile
import time
import urllib.error
import urllib.request

ELEMENT = "element-6066-11e4-a52e-4f735466cecf"  # the key that the protocol gives elements


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


class Browser:
    """A telephone of a width and height in CSS pixels that reaches no network."""

    def __init__(self, driver, width, height):
        self.folder = tempfile.mkdtemp(prefix="phone-page-")
        self.port = free_port()
        self.process = subprocess.Popen(
            [driver, f"--port={self.port}"],
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            start_new_session=True,
        )
        self.session = None
        try:
            self.wait_for_driver()
            self.session = self.call("/session", self.wishes(width, height))["sessionId"]
        except BaseException:
            self.close()
            raise

    def wishes(self, width, height):
        arguments = [
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-dev-shm-usage",
            f"--user-data-dir={self.folder}",
            "--host-resolver-rules=MAP * ~NOTFOUND",
        ]
        metrics = {"width": width, "height": height, "pixelRatio": 2, "mobile": True, "touch": True}
        options = {"args": arguments, "mobileEmulation": {"deviceMetrics": metrics}}
        always = {"goog:chromeOptions": options, "goog:loggingPrefs": {"browser": "ALL"}}
        return {"capabilities": {"alwaysMatch": always}}

    def wait_for_driver(self):
        for _ in range(200):
            try:
                self.call("/status")
                return
            except (urllib.error.URLError, ConnectionError):
                time.sleep(0.05)
        raise RuntimeError("the browser's driver does not answer")

    def call(self, path, body=None, method=None):
        request = urllib.request.Request(
            f"http://127.0.0.1:{self.port}{path}",
            data=None if body is None else json.dumps(body).encode(),
            method=method or ("GET" if body is None else "POST"),
        )
        try:
            with urllib.request.urlopen(request, timeout=60) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as error:
            raise RuntimeError(f"{path}: {error.read().decode(errors='replace')}") from error

    def ask(self, path, body=None, method=None):
        return self.call(f"/session/{self.session}{path}", body, method)

    def open(self, url):
        self.ask("/url", {"url": url})

    def reload(self):
        self.ask("/refresh", {})

    def run(self, script, *arguments):
        return self.ask("/execute/sync", {"script": script, "args": list(arguments)})

    def find(self, selector):
        found = self.ask("/element", {"using": "css selector", "value": selector})
        return found[ELEMENT]

    def find_all(self, selector):
        found = self.ask("/elements", {"using": "css selector", "value": selector})
        return [each[ELEMENT] for each in found]

    def tap(self, selector):
        """In the middle of the screen, where no bar lies over it."""
        middle = "document.querySelector(arguments[0]).scrollIntoView({ block: 'center' })"
        self.run(middle, selector)
        self.ask(f"/element/{self.find(selector)}/click", {})

    def type(self, selector, keys):
        self.ask(f"/element/{self.find(selector)}/value", {"text": keys})

    def name_of(self, element):
        """What a screen reader says."""
        return self.ask(f"/element/{element}/computedlabel")

    def log(self):
        return self.ask("/se/log", {"type": "browser"})

    def devtools(self, command, **parameters):
        return self.ask("/goog/cdp/execute", {"cmd": command, "params": parameters})

    def picture(self):
        """PNG in base 64."""
        return self.ask("/screenshot")

    def close(self):
        try:
            if self.session is not None:
                self.ask("", method="DELETE")
        finally:
            # With whatever it started and could not end.
            os.killpg(self.process.pid, signal.SIGTERM)
            self.process.wait(timeout=20)
            shutil.rmtree(self.folder, ignore_errors=True)
