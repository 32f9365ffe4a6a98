#!/usr/bin/env python3
"""A picture of the demo production's phone page: phone_page_picture.py PROGRAM SOURCE_FOLDER DRIVER FILE.png"""

import base64
import pathlib
import subprocess
import sys
import tempfile
import time

from browser import Browser

program, source, driver, picture = sys.argv[1:5]
with tempfile.TemporaryDirectory(prefix="phone-page-") as folder:
    page = pathlib.Path(folder) / "page.html"
    plan = pathlib.Path(source) / "demo" / "cookery.json"
    subprocess.run([program, "page", str(plan), "-o", str(page)], check=True)
    browser = Browser(driver, 360, 740)
    try:
        browser.open(page.as_uri())
        browser.tap(".shot:nth-child(1) input")
        browser.run(
            "document.querySelectorAll('.shot details')[1].open = true; document.activeElement.blur();"
            " document.querySelector('#shots').scrollIntoView()"
        )
        time.sleep(1)  # until the bar beside a scrolled page fades
        pathlib.Path(picture).write_bytes(base64.b64decode(browser.picture()))
    finally:
        browser.close()
