#!/usr/bin/env python3
"""Installs into a folder of its own and runs what is there: install_check.py CMAKE BUILD_FOLDER SOURCE_FOLDER"""

import os
import pathlib
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import unittest

CMAKE, BUILD, SOURCE = sys.argv[1:4]
ID = "org.throwline.Throwline"
# Far above what it takes on a loaded machine: it tells hanging from slow.
DEADLINE_S = 60

PLACES = {
    "bin/throwline",
    "share/man/man1/throwline.1",
    "share/bash-completion/completions/throwline",
    f"share/applications/{ID}.desktop",
    f"share/mime/packages/{ID}.xml",
    f"share/metainfo/{ID}.metainfo.xml",
    f"share/icons/hicolor/scalable/apps/{ID}.svg",
    "share/doc/throwline/copyright",
}


class Installed(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        cls.prefix = pathlib.Path(cls.folder.name) / "prefix"
        cls.home = pathlib.Path(cls.folder.name) / "home"
        cls.home.mkdir(mode=0o700)
        subprocess.run([CMAKE, "--install", BUILD, "--prefix", cls.prefix], check=True,
                       stdout=subprocess.DEVNULL)
        cls.program = cls.prefix / "bin" / "throwline"
        # Nothing of the tree, nor of whoever runs the tests.
        cls.environment = {"PATH": os.environ["PATH"], "HOME": str(cls.home),
                           "TMPDIR": str(cls.home), "XDG_RUNTIME_DIR": str(cls.home),
                           "LC_ALL": "C.UTF-8", "QT_QPA_PLATFORM": "offscreen"}

    @classmethod
    def tearDownClass(cls):
        cls.folder.cleanup()

    def run_it(self, *arguments):
        return subprocess.run([self.program, *arguments], env=self.environment, cwd=self.home,
                              text=True, capture_output=True, timeout=DEADLINE_S, check=False)

    def demo(self, name):
        return str(self.prefix / "share" / "throwline" / "demo" / name)

    def test_puts_each_file_where_it_belongs(self):
        files = {str(path.relative_to(self.prefix))
                 for path in self.prefix.rglob("*") if path.is_file()}
        carried = {f"share/throwline/{part}/{path.name}" for part in ("lensdata", "demo")
                   for path in (pathlib.Path(SOURCE) / part).iterdir()
                   if path.suffix in (".json", ".txt")}
        self.assertEqual(files, PLACES | carried)

    def test_finds_its_tables(self):
        shown = self.run_it("catalogue", "papers")
        self.assertEqual((shown.returncode, shown.stderr), (0, ""))
        self.assertIn("tabloid", shown.stdout)

    def test_checks_an_installed_demo(self):
        checked = self.run_it("check", self.demo("cookery.json"))
        self.assertEqual((checked.returncode, checked.stderr), (1, ""))
        self.assertIn("[way-out]", checked.stdout)

    def test_reads_an_installed_recce(self):
        read = self.run_it("survey", self.demo("harbour_kitchen.recce.txt"), "-o", "kitchen.json")
        self.assertEqual(read.stderr, "")
        self.assertTrue((self.home / "kitchen.json").exists())

    def test_opens_its_window(self):
        """A second call hands over to the window that is there, and ends at once."""
        plan = shutil.copy(self.demo("cookery.json"), self.home)
        with subprocess.Popen([self.program, "open", plan],
                              env=self.environment, cwd=self.home, text=True,
                              stderr=subprocess.PIPE) as window:
            try:
                socket = self.home / f"throwline-{os.getuid()}"
                end = time.monotonic() + DEADLINE_S
                while not socket.exists() and window.poll() is None:
                    self.assertLess(time.monotonic(), end, "no window came")
                    time.sleep(0.05)
                self.assertIsNone(window.poll(), "the window is gone")
                second = self.run_it("open")
                self.assertEqual((second.returncode, second.stderr), (0, ""))
                self.assertIsNone(window.poll(), "the window is gone")
            finally:
                window.send_signal(signal.SIGTERM)
                _, said = window.communicate(timeout=DEADLINE_S)
        # What Qt says of a screen that nobody sees.
        said = [line for line in said.splitlines() if not line.startswith("This plugin")]
        self.assertEqual(said, [])


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
