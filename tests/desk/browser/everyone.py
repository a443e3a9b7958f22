"""The desk for everyone: by keys alone, from right to left, only to look at, with a screen reader, large."""

import glob
import os
import re
import tomllib

from axe import findings, source
from browser import WAITS, Desk, until
from page import AXE, FAULTY, FURNISH, SALON, field, open_pet, saved


closed = []  # a desk whose page is closed while other cases run: it ends ten seconds later


def last_page_closed(browser):
    desk = Desk(FURNISH, SALON)
    browser.go(desk.url)
    open_pet(browser, "marlow")
    browser.fill(field('["pet","colour"]'), "fox red")
    until(lambda: glob.glob(desk.home + "/state/**/*.json", recursive=True), "the draft")
    browser.do("POST", "/url", {"url": "about:blank"})
    closed.append(desk)


def desk_has_ended(browser):
    """With the last page goes the desk, and leaves its drafts and nothing else."""
    if not closed:
        last_page_closed(browser)
    desk = closed.pop()
    assert desk.process.wait(WAITS) == 0
    assert not os.path.exists(desk.start_page)
    assert len(glob.glob(desk.home + "/state/**/*.json", recursive=True)) == 1, "the draft is kept"
    assert not glob.glob(desk.home + "/**/.furnish-*", recursive=True)
    desk.end()


def by_keyboard_alone(browser):
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        browser.wait("document.activeElement.matches('.find')")
        browser.keys("adeyemi")
        browser.wait("document.querySelectorAll('.one-pet').length === 1")
        browser.keys("Enter")
        browser.wait("document.querySelector('.doc.pet .figure')")

        def tab_to(css, most=80):
            for _ in range(most):
                if browser.js("return document.activeElement.matches(arguments[0])", css):
                    return
                browser.keys("Tab")
            raise AssertionError(f"no way by Tab to {css}")

        tab_to(".figure [data-place]")
        for _ in range(30):
            if browser.js("return document.activeElement.dataset.place") == "chest":
                break
            browser.keys("Right")
        outline = browser.js("return getComputedStyle(document.activeElement.firstChild).strokeOpacity")
        assert outline == "1", "the focus on the dog cannot be seen"
        browser.keys("Enter")
        browser.wait("document.querySelector('.part-lines h2')?.textContent === 'chest'")
        tab_to(".part-lines .length")
        browser.keys("Right", "Right")
        browser.wait("document.querySelector('.part-lines .drag .short').value === '32 mm'")
        browser.wait("document.querySelector('.dog .hint').textContent.includes('32')")  # and not of before
        browser.keys("s", held="Control")
        browser.wait("document.querySelector('.doc').dataset.saved === '1'")
        assert 'leave = "32 mm"' in desk.read("pets/marlow.toml")
        tab_to(field('["pet","colour"]'))
        browser.keys("End", "!")
        browser.wait("document.querySelector(arguments[0]).value.endsWith('!')", field('["pet","colour"]'))
        browser.keys("z", held="Control")
        browser.wait("document.querySelector(arguments[0]).value === 'orange sable'", field('["pet","colour"]'))
        browser.keys("y", held="Control")
        browser.wait("document.querySelector(arguments[0]).value === 'orange sable!'", field('["pet","colour"]'))
        browser.keys("z", held="Control")
        browser.wait("document.querySelector('#state').textContent === ''")
    finally:
        desk.end()


def in_arabic(browser):
    with open(os.path.join(SALON, "salon.toml"), encoding="utf-8") as text:
        arabic = text.read().replace('language = "en-GB"', 'language = "ar"')
    desk = Desk(FURNISH, SALON, files={"salon.toml": arabic})
    try:
        browser.go(desk.url)
        assert browser.js("return [document.documentElement.lang, document.documentElement.dir]") == ["ar", "rtl"]
        open_pet(browser, "marlow")
        form, sheet = browser.js("return ['.left', '.beside'].map(css => document.querySelector(css).getBoundingClientRect().left)")
        assert form > sheet, "the page is not turned over"
        latin = browser.js("""return [...document.querySelectorAll('main :is(button, label, h2, h3, .name)')]
            .filter(one => one.checkVisibility() && !one.closest('[lang=en], .one-pet, .place, .other, .doc-head .name-line'))
            .map(one => one.childNodes[0]?.textContent ?? '').filter(text => /[A-Za-z]{3,}/.test(text) && !/^Ctrl/.test(text))""")
        assert latin == [], f"not in the catalogue: {latin}"
    finally:
        desk.end()


def only_to_look_at(browser):
    desk = Desk(FURNISH, SALON, "--look")
    try:
        before = {name: open(name, "rb").read() for name in glob.glob(desk.salon + "/**/*.toml", recursive=True)}
        browser.go(desk.url)
        assert not browser.js("return document.querySelector('.new-pet')")
        open_pet(browser, "marlow")
        assert browser.js("return [...document.querySelectorAll('.form :is(input, select, textarea)')].every(one => one.matches(':disabled'))")
        assert not browser.js("return [...document.querySelectorAll('.doc-head button')].some(one => /^(Save|Undo|Redo|Text)/.test(one.textContent))")
        # Said once, and how to reach an owner not at all.
        page = browser.js("return document.body.textContent + [...document.querySelectorAll('input, textarea')].map(one => one.value).join(' ')")
        with open(desk.path("pets/marlow.toml"), "rb") as text:
            owner = tomllib.load(text)["owner"]
        assert page.count("Only to look at") == 1 and owner["phone"] not in page, page.count("Only to look at")
        browser.click(".figure [data-place=chest]")
        browser.wait("document.querySelector('.part-lines .length:disabled')")
        refused = browser.js("return fetch('api/save', {method: 'POST', headers: {'Content-Type': 'application/json'}, body: JSON.stringify({kind: 'pet', id: 'marlow', mark: '', edits: []})}).then(r => r.status)")
        assert 400 <= refused < 500, refused
        assert before == {name: open(name, "rb").read() for name in glob.glob(desk.salon + "/**/*.toml", recursive=True)}
    finally:
        desk.end()


def words_in_all_languages(browser):
    """Every catalogue has the desk's keys, in English's order, with the same parts; the page asks for
    no other."""
    root = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "..")
    catalogues = {}
    for name in glob.glob(os.path.join(root, "styles", "words", "*.toml")):
        with open(name, "rb") as text:
            catalogues[os.path.basename(name)[:-5]] = tomllib.load(text)["desk"]
    english = catalogues["en"]
    assert len(catalogues) == 7, sorted(catalogues)
    for language, words in catalogues.items():
        assert list(words) == list(english), (language, set(words) ^ set(english))
        for key, text in words.items():
            assert set(re.findall(r"\{\d", text)) == set(re.findall(r"\{\d", english[key])), (language, key)
            assert text.count("{") == text.count("}"), (language, key)
    asked = set()
    for name in glob.glob(os.path.join(root, "src", "desk", "page", "*.js")):
        with open(name, encoding="utf-8") as script:
            asked |= set(re.findall(r"""\bsay\('([a-z0-9-]+)'""", script.read()))
    assert len(asked) > 100 and asked <= set(english), asked - set(english)


def usable_by_all(browser):
    """axe on every view; at 400 % nothing has to be scrolled sideways."""
    script = source(AXE)
    desk = Desk(FURNISH, SALON, files={"pets/rolf.toml": FAULTY})
    try:
        views = [("find", ""), ("pet", "document.querySelector('.one-pet[data-id=marlow]').click()"),
                 ("book in", "document.querySelectorAll('.menu')[1].open = true"),
                 ("sections", "document.querySelectorAll('.menu')[1].open = false; document.querySelector('.figure [data-place=ears]').dispatchEvent(new MouseEvent('click', {bubbles: true})); document.querySelectorAll('.part-lines .how input')[1].click(); document.querySelectorAll('main details:not(.picker)').forEach(one => { one.open = true })"),
                 ("languages", "document.querySelector('.form .picker').open = true"),
                 ("text", "[...document.querySelectorAll('.doc-head button')].find(one => one.textContent === 'Text').click()"),
                 ("visit", "document.querySelector('.menu').open = true; document.querySelectorAll('.menu button')[1].click()"),
                 ("bite", "const one = document.querySelector(`[data-path='[\"came_in\",\"behaviour\"]'] textarea`); one.value = 'He bit.'; one.dispatchEvent(new Event('input'))"),
                 ("day", "document.querySelector('nav [data-view=day]').click()"),
                 ("faults", "document.querySelector('nav [data-view=find]').click()"),
                 ("draft", "const one = document.querySelector('.form input[type=text]'); one.value = 'x'; one.dispatchEvent(new Event('input')); document.querySelector('nav [data-view=find]').click()"),
                 ("nothing", "const one = document.querySelector('.find'); one.value = 'zzz'; one.dispatchEvent(new Event('input'))"),
                 ("new pet", "document.querySelector('.add-found').click()"),
                 ("salon", "document.querySelector('[data-view=salon]').click()"),
                 ("style", "document.querySelector('.styles button').click()"),
                 ("booking", "document.querySelector('nav [data-view=day]').click()")]
        ready = {"find": ".one-pet", "book in": ".menu[open] .booking-day", "bite": ".alert-offer.ask", "pet": ".doc.pet .pages img", "sections": ".part-lines details[open]", "languages": ".picks button", "text": ".text-view .file",
                 "visit": ".doc.visit .pages img", "day": ".bookings", "faults": ".one-pet[data-id=rolf]",
                 "draft": ".one-pet", "nothing": ".add-found", "new pet": ".doc.pet .form", "salon": ".doc.salon .styles button", "style": ".doc.style .form", "booking": ".bookings"}
        browser.go(desk.url)
        wrong = []
        for name, step in views:
            browser.js(step)
            browser.wait("document.querySelector(arguments[0])", ready[name])
            if name == "faults":
                browser.click(".one-pet[data-id=rolf]")
                browser.wait("document.querySelector('.fault.error')")
            if name == "booking":
                browser.press("Change bookings")
                browser.press("One more: booking")
                browser.js("document.querySelector(arguments[0]).focus()", field('["booking",8,"pet"]'))
                browser.keys("mar")
                browser.wait("document.querySelector('.pets:not([hidden]) li')")
            if script:
                wrong += [f"{name}: {one}" for one in findings(browser, script)]
            browser.size(320, 200)
            wide = browser.js("return document.documentElement.scrollWidth")
            if wide > 320:
                wrong.append(f"{name}: {wide} px wide at 400 %")
            browser.size(1280, 800)
        assert wrong == [], "\n".join(wrong)
        if not script:
            print("     axe-core cannot be had from npm: not run")
            assert not os.environ.get("FURNISH_LONG"), "axe-core cannot be had from npm"
    finally:
        browser.size(1280, 800)
        desk.end()
