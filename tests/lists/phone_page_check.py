#!/usr/bin/env python3
"""The phone page in a real browser: phone_page_check.py PROGRAM SOURCE_FOLDER DRIVER"""

import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

from browser import Browser

PROGRAM, SOURCE, DRIVER = sys.argv[1:4]
WIDTH, HEIGHT = 360, 740
DEMO = pathlib.Path(SOURCE) / "demo" / "cookery.json"
HOSTILE = "</script><img src=x onerror=\"document.title='broken'\" '>&amp;"
ENTER = "\ue007"

# Text with too little contrast against what is behind it (WCAG 2.1, 1.4.3: 4.5 to 1).
PALE_TEXTS = """
const channels = (colour) => colour.match(/[0-9.]+/g).map(Number);
const light = (colour) => channels(colour).slice(0, 3)
  .map((c) => c / 255).map((c) => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
  .reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
const behind = (element) => {
  for (let at = element; at; at = at.parentElement) {
    const colour = getComputedStyle(at).backgroundColor;
    if ((channels(colour)[3] ?? 1) > 0) return colour;
  }
  return 'rgb(255, 255, 255)';
};
const pale = [];
for (const element of document.querySelectorAll('body *:not(svg *):not(script)')) {
  const own = [...element.childNodes].some((n) => n.nodeType === 3 && n.data.trim() !== '');
  if (!own || !element.checkVisibility()) continue;
  const [a, b] = [light(getComputedStyle(element).color), light(behind(element))].sort((x, y) => y - x);
  if ((a + 0.05) / (b + 0.05) < 4.5) pale.push(element.textContent.trim().slice(0, 40));
}
return [...new Set(pale)];
"""

TOO_WIDE = """
return [...document.querySelectorAll('body *:not(.floor *):not(.wide *)')]
  .filter((element) => element.checkVisibility() && element.getBoundingClientRect().right > innerWidth + 1)
  .map((element) => element.tagName + ' ' + element.textContent.trim().slice(0, 40));
"""


def everything_hostile(plan):
    """The plan with names and texts that would break out of a careless page."""
    people = {person["id"]: f"{person['id']}{HOSTILE}" for person in plan["people"]}
    text = json.dumps(plan)
    for name, hostile in people.items():
        text = text.replace(json.dumps(name), json.dumps(hostile))
    plan = json.loads(text)
    plan["title"] = f"Supper{HOSTILE}"
    plan["site"]["notes"] = [HOSTILE, "two\nlines"]
    plan["shots"][0]["composition"] = HOSTILE
    plan["shots"][1]["id"] = f"1B{HOSTILE}"
    plan["lamps"][0]["notes"] = [HOSTILE]
    plan["beats"][0]["name"] = HOSTILE
    return plan


class PhonePage(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory(prefix="phone-page-")
        folder = pathlib.Path(cls.folder.name)
        plan = json.loads(DEMO.read_text(encoding="utf-8"))
        cls.shots = [shot["id"] for shot in plan["shots"]]
        (folder / "hostile.json").write_text(json.dumps(everything_hostile(plan)), encoding="utf-8")
        cls.page = cls.made(DEMO, folder / "page.html")
        cls.hostile = cls.made(folder / "hostile.json", folder / "hostile.html")
        cls.scriptless = cls.without_script(folder / "page.html", folder / "scriptless.html")
        cls.browser = Browser(DRIVER, WIDTH, HEIGHT)

    @classmethod
    def made(cls, plan, page):
        subprocess.run([PROGRAM, "page", str(plan), "-o", str(page)], check=True, stdout=subprocess.DEVNULL)
        return page.as_uri()

    @classmethod
    def without_script(cls, page, copy):
        before, rest = page.read_text(encoding="utf-8").split("<script>")
        copy.write_text(before + rest.split("</script>")[1], encoding="utf-8")
        return copy.as_uri()

    @classmethod
    def tearDownClass(cls):
        cls.browser.close()
        cls.folder.cleanup()

    def setUp(self):
        self.browser.open(self.page)
        self.browser.run("localStorage.clear()")
        self.browser.reload()
        self.browser.log()

    def unfold(self):
        self.browser.run("document.querySelectorAll('details').forEach((each) => { each.open = true; })")

    def count(self):
        return self.browser.run("return document.getElementById('done-count').textContent")

    def test_says_nothing_on_the_console_and_asks_for_nothing(self):
        for page in (self.page, self.hostile):
            self.browser.open(page)
            self.assertEqual(self.browser.log(), [])
            self.assertEqual(self.browser.run("return performance.getEntriesByType('resource').length"), 0)

    def test_fits_a_narrow_screen(self):
        for page in (self.page, self.hostile):
            self.browser.open(page)
            self.unfold()
            wide, inner = self.browser.run("return [document.documentElement.scrollWidth, innerWidth]")
            self.assertEqual(inner, WIDTH)
            self.assertLessEqual(wide, inner)
            self.assertEqual(self.browser.run(TOO_WIDE), [])

    def test_holds_every_shot(self):
        shown = self.browser.run(
            "return [...document.querySelectorAll('.shot')].map((shot) => shot.dataset.shot)"
        )
        self.assertEqual(shown, self.shots)

    def test_opens_a_shot_on_a_tap_and_by_key(self):
        opened = "return document.querySelector('.shot details').open"
        self.assertFalse(self.browser.run(opened))
        self.browser.tap(".shot summary")
        self.assertTrue(self.browser.run(opened))
        self.browser.type(".shot summary", ENTER)
        self.assertFalse(self.browser.run(opened))

    def test_keeps_done_marks(self):
        self.assertEqual(self.count(), f"0 of {len(self.shots)} done")
        self.browser.tap(".shot:nth-child(2) input")
        self.assertEqual(self.count(), f"1 of {len(self.shots)} done")
        self.browser.reload()
        self.assertEqual(self.count(), f"1 of {len(self.shots)} done")
        marked = "return [...document.querySelectorAll('.shot.is-done')].map((s) => s.dataset.shot)"
        self.assertEqual(self.browser.run(marked), [self.shots[1]])
        self.browser.tap(".shot:nth-child(2) input")
        self.browser.reload()
        self.assertEqual(self.browser.run(marked), [])

    def test_works_where_nothing_may_be_kept(self):
        refuse = "Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } });"
        added = self.browser.devtools("Page.addScriptToEvaluateOnNewDocument", source=refuse)
        try:
            self.browser.reload()
            self.browser.tap(".shot input")
            self.assertEqual(self.count(), f"1 of {len(self.shots)} done")
            self.assertEqual(self.browser.log(), [])
        finally:
            self.browser.devtools("Page.removeScriptToEvaluateOnNewDocument", **added)

    def test_shows_the_shots_of_one_camera_and_what_is_left(self):
        left = "return [...document.querySelectorAll('.shot')].filter((s) => !s.hidden).map((s) => s.dataset.shot)"
        choose = "const of = document.getElementById('of-camera'); of.value = arguments[0]; of.dispatchEvent(new Event('change'));"
        self.browser.run(choose, "camera 1")
        self.assertEqual(self.browser.run(left), ["1C", "3B", "4B"])
        self.browser.tap(".shot[data-shot='3B'] input")
        self.browser.tap("[for='only-left']")
        self.assertEqual(self.browser.run(left), ["1C", "4B"])

    def test_sizes_the_floor_plan(self):
        width = "return document.querySelector('.floor svg').getBoundingClientRect().width"
        whole = self.browser.run(width)
        self.browser.tap("[for='zoom-3']")
        self.assertAlmostEqual(self.browser.run(width), 5 * whole, delta=2)
        self.browser.tap("[for='zoom-1']")
        self.assertAlmostEqual(self.browser.run(width), whole, delta=2)
        pinch = """
            const floor = document.querySelector('.floor');
            const send = (kind, id, x) => floor.dispatchEvent(
              new PointerEvent(kind, { pointerId: id, clientX: x, clientY: 500, bubbles: true }));
            send('pointerdown', 1, 150); send('pointerdown', 2, 200);
            send('pointermove', 2, 250); send('pointerup', 1, 150); send('pointerup', 2, 250);"""
        self.browser.run(pinch)
        self.assertAlmostEqual(self.browser.run(width), 2 * whole, delta=3)

    def test_hides_layers_of_the_floor_plan(self):
        shown = "return getComputedStyle(document.querySelector('#layer-lamps')).display"
        self.assertNotEqual(self.browser.run(shown), "none")
        self.browser.tap("[for='show-lamps']")
        self.assertEqual(self.browser.run(shown), "none")

    def test_works_without_script(self):
        self.browser.open(self.scriptless)
        self.browser.tap("[for='zoom-3']")
        self.browser.tap(".shot summary")
        width, opened, choices = self.browser.run(
            "return [document.querySelector('.floor svg').getBoundingClientRect().width,"
            " document.querySelector('.shot details').open,"
            " document.getElementById('shot-choices').hidden]"
        )
        self.assertGreater(width, 4 * WIDTH)
        self.assertTrue(opened)
        self.assertTrue(choices)

    def test_names_everything_that_can_be_used(self):
        self.unfold()
        for element in self.browser.find_all("input, select, summary, nav, section, .floor, a"):
            self.assertNotEqual(self.browser.name_of(element).strip(), "")

    def test_is_read_in_light_and_dark(self):
        grounds = []
        for scheme in ("light", "dark"):
            self.browser.devtools(
                "Emulation.setEmulatedMedia",
                features=[{"name": "prefers-color-scheme", "value": scheme}],
            )
            self.browser.reload()
            self.browser.tap(".shot input")
            self.unfold()
            self.assertEqual(self.browser.run(PALE_TEXTS), [], scheme)
            grounds.append(self.browser.run("return getComputedStyle(document.body).backgroundColor"))
        self.browser.devtools("Emulation.setEmulatedMedia", features=[])
        self.assertNotEqual(*grounds)

    def test_shows_hostile_names_as_text(self):
        self.browser.open(self.hostile)
        self.assertEqual(self.browser.run("return document.images.length"), 0)
        self.assertEqual(self.browser.run("return document.scripts.length"), 1)
        self.assertEqual(self.browser.run("return document.querySelector('h1').textContent"), f"Supper{HOSTILE}")
        self.assertNotEqual(self.browser.run("return document.title"), "broken")
        self.browser.tap(".shot:nth-child(2) input")
        self.browser.reload()
        self.assertTrue(self.browser.run("return document.querySelectorAll('.shot')[1].classList.contains('is-done')"))

    def test_lets_no_other_script_run(self):
        self.browser.run(
            "const script = document.createElement('script'); script.textContent = 'window.strange = 1';"
            " document.body.append(script)"
        )
        self.assertIsNone(self.browser.run("return window.strange ?? null"))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
