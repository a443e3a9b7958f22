"""The jobs of a salon, from the first click to what stands in the files."""

import glob
import os
import time
import tomllib

from browser import Desk, until
from page import FAULTY, FURNISH, SALON, SHOWN, field, open_pet, saved


def caution_accepted(browser):
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        open_pet(browser, "marlow")
        browser.press("Accept with a reason")
        browser.press("Accept")
        browser.wait("document.querySelector('.accept [aria-invalid]')")  # not without one
        browser.fill(".accept input[type=text]", "The vet has seen it, and let it be cut round.")
        browser.press("Accept")
        browser.wait("!document.querySelector('.form .accept') && document.querySelector(arguments[0])", '[data-path=\'["accept",0]\']')
        saved(browser)
        text = desk.read("pets/marlow.toml")
        for wanted in ["[[accept]]", '"found-there"', "The vet has seen it, and let it be cut round.", "signed = 2026-11-24"]:
            assert wanted in text.replace("  ", " "), (wanted, text)
    finally:
        desk.end()


def new_pet_to_a_card(browser):
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        browser.fill(".new-pet input", "Wren")
        browser.press("Add this pet")
        browser.wait("document.querySelector('h1')?.textContent === 'Wren' && document.querySelector('.doc.pet')")
        browser.js("document.querySelector(arguments[0]).value = 'curly'; document.querySelector(arguments[0]).dispatchEvent(new Event('change'))", field('["pet","coat"]'))
        browser.fill(field('["pet","weight"]'), "6.2")
        browser.press("Trim")
        browser.js("const s = document.querySelector(arguments[0]); s.value = 'curly-short'; s.dispatchEvent(new Event('change'))", field('["trim","style"]'))
        browser.press("Alerts")
        browser.fill(field('["alert",0,"text"]'), "Afraid of the dryer.")
        browser.js("document.querySelectorAll(arguments[0])[2].click()", field('["alert",0,"level"]'))
        browser.wait(SHOWN + " && !document.querySelector('.pages.stale') && !document.querySelector('.fault.error')")
        before = len(browser.do("GET", "/window/handles"))
        browser.press("Print")
        until(lambda: len(browser.do("GET", "/window/handles")) > before, "the PDF's tab")
        browser.wait("document.querySelector('#state a')?.href.endsWith('.pdf')")
        assert browser.js("return fetch(document.querySelector('#state a').href).then(r => r.blob()).then(b => b.slice(0, 5).text())") == "%PDF-"
        text = desk.read("pets/wren.toml")
        for wanted in ['coat', '"curly"', '"6.2 kg"', '"curly-short"', "Afraid of the dryer.", '"caution"']:
            assert wanted in text, (wanted, text)
        for handle in set(browser.do("GET", "/window/handles")) - set(browser.windows):
            browser.do("POST", "/window", {"handle": handle})
            browser.do("DELETE", "/window")
        browser.to(0)
        assert "wren" not in browser.js("return location.href").lower(), "a name in the address"
    finally:
        desk.end()


def day_changed(browser):
    desk = Desk(FURNISH, SALON)
    try:
        before = desk.read("days/2026-11-24.toml")
        browser.go(desk.url)
        browser.press("The day", "nav")
        browser.wait("document.querySelectorAll('.bookings tbody tr').length >= 8")
        browser.js("document.querySelectorAll('.radios input')[1].click()")
        browser.wait("document.querySelectorAll('.bookings').length === 2")  # one for each groomer
        browser.press("Change bookings")
        browser.wait("document.querySelector('.doc.day') && " + SHOWN)
        browser.fill(field('["booking",0,"note"]'), "ask about the other hip")
        saved(browser)
        assert desk.read("days/2026-11-24.toml") == before.replace("ask about the hip", "ask about the other hip")
    finally:
        desk.end()


def visit_to_an_owners_note(browser):
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        open_pet(browser, "gao")
        browser.click(".menu summary")
        browser.press("Begin today's visit")
        browser.wait("document.querySelector('.doc.visit')")
        name = until(lambda: glob.glob(desk.path("visits/gao/2026-11-24*.toml")), "the visit's file")[0]
        photo = browser.find(".hidden-file")
        browser.do("POST", f"/element/{photo}/value", {"text": os.path.abspath(os.path.join(SALON, "photos", "juniper.jpg"))})
        browser.wait("document.querySelector(arguments[0])", '[data-path=\'["photo",0]\']')
        browser.fill(field('["told"]'), "Comb the ears every day.")
        browser.click(".figure [data-place=belly]")
        browser.press("Something found here")
        browser.fill(".part-lines " + field('["finding",0,"what"]'), "scab")
        browser.js("document.querySelectorAll(arguments[0])[1].click()", ".part-lines " + field('["finding",0,"for"]'))
        browser.wait(SHOWN + " && !document.querySelector('.pages.stale') && !document.querySelector('.fault.error')")
        saved(browser)
        text = desk.read(os.path.relpath(name, desk.salon))
        for wanted in ["photos/", "Comb the ears every day.", '"belly"', '"scab"', '"everyone"']:
            assert wanted in text, (wanted, text)
        visit = os.path.relpath(name, desk.path("visits")).removesuffix(".toml")
        shown = browser.js("""const ask = (name, what) => fetch(`api/${name}`, {method: 'POST', headers: {'Content-Type': 'application/json'}, body: JSON.stringify(what)}).then(r => r.json());
            return ask('open', {kind: 'visit', id: arguments[0]}).then(({mark}) => ask('preview', {kind: 'visit', id: arguments[0], mark, edits: [], sheet: 'note-owner'})).then(({pages}) => pages.map(page => page.svg ?? page))""", visit)
        assert any("<image" in page for page in shown), "no photo on the note"
    finally:
        desk.end()


def faulty_file_mended(browser):
    desk = Desk(FURNISH, SALON, files={"pets/rolf.toml": FAULTY, "pets/broken.toml": '[pet\nname = "Broken"\n'})
    try:
        browser.go(desk.url)
        browser.click(".one-pet[data-id=rolf]")
        browser.wait("document.querySelector(arguments[0])?.closest('.row').querySelector('.fault.error')", field('["pet","weight"]'))
        assert browser.js("return document.querySelector(arguments[0]).getAttribute('aria-invalid')", field('["pet","weight"]')) == "true"
        browser.fill(field('["pet","weight"]'), "4.7 kg")
        browser.wait("!document.querySelector(arguments[0]).closest('.row').querySelector('.fault')", field('["pet","weight"]'))
        browser.press("Write it so: double")
        browser.wait(SHOWN + " && !document.querySelector('.fault.error')")
        saved(browser)
        assert desk.read("pets/rolf.toml") == FAULTY.replace("doubel", "double").replace("4,7 kg", "4.7 kg")
        # A file that is no TOML has its text alone, with the fault marked, until it can be read.
        browser.press("Find", "nav")
        browser.click(".one-pet[data-id=broken]")
        browser.wait("document.querySelector('.text-view mark') && document.querySelector('#text-faults li')")
        browser.fill(".file", '[pet]\nname = "Mended"\n')
        browser.wait("!document.querySelector('#text-faults li.error')")
        browser.press("Save")
        browser.wait("document.querySelector('.form') && document.querySelector('h1').textContent === 'Mended'")
        assert desk.read("pets/broken.toml") == '[pet]\nname = "Mended"\n'
    finally:
        desk.end()


def two_windows(browser):
    desk = Desk(FURNISH, SALON)
    try:
        before = desk.read("pets/marlow.toml")
        browser.go(desk.url)
        open_pet(browser, "marlow")
        browser.another()
        browser.go(desk.url)
        open_pet(browser, "marlow")
        browser.fill(field('["pet","colour"]'), "sable")
        browser.to(0)
        browser.fill(field('["pet","weight"]'), "4.8")
        saved(browser)
        browser.to(1)
        browser.wait("document.querySelector('.notice-line')")
        saved(browser)
        after = desk.read("pets/marlow.toml")
        assert after == before.replace('"orange sable"', '"sable"').replace('"4.6 kg"', '"4.8 kg"'), after
        # Now both change one value.
        browser.fill(field('["pet","weight"]'), "4.9")
        browser.to(0)
        browser.wait("document.querySelector(arguments[0]).value === 'sable'", field('["pet","colour"]'))
        browser.fill(field('["pet","weight"]'), "5.1")
        saved(browser, 2)
        browser.to(1)
        browser.press("Save")
        browser.wait("document.querySelector('.conflict')")
        said = browser.js("return document.querySelector('.conflict').textContent")
        assert all(one in said for one in ["4.8 kg", "4.9 kg", "5.1 kg"]), said
        browser.click(".conflict input[value=theirs]")
        browser.press("Save with these")
        browser.wait("!document.querySelector('.conflict') && document.querySelector(arguments[0]).value === '5.1'", field('["pet","weight"]'))
        assert '"5.1 kg"' in desk.read("pets/marlow.toml")
    finally:
        browser.to(0)
        for handle in browser.windows[1:]:
            browser.do("POST", "/window", {"handle": handle})
            browser.do("DELETE", "/window")
        del browser.windows[1:]
        browser.to(0)
        desk.end()


def killed_and_back(browser):
    desk = Desk(FURNISH, SALON)
    try:
        before = desk.read("pets/marlow.toml")
        browser.go(desk.url)
        open_pet(browser, "marlow")
        browser.fill(field('["pet","colour"]'), "fox red")
        state = os.path.join(desk.home, "state")
        typed = time.monotonic()
        browser.js("return 1")
        slow = time.monotonic() - typed  # one question to a browser that has nothing else to do takes 10 ms
        until(lambda: any("fox red" in open(name, encoding="utf-8", errors="replace").read()
                          for name in glob.glob(state + "/**/*.json", recursive=True)), "the draft")
        assert time.monotonic() - typed < 2 + 100 * slow, "a draft is kept within two seconds"
        desk.kill()
        browser.wait("document.querySelector('#state.wrong')")
        desk.start()
        browser.go(desk.url)
        browser.press("Throw away", ".drafts")  # one slip destroys nothing
        browser.press("Undo", ".drafts")
        browser.press("marlow", ".drafts")
        browser.wait("document.querySelector(arguments[0])?.value === 'fox red'", field('["pet","colour"]'))
        assert desk.read("pets/marlow.toml") == before
        saved(browser)
        assert desk.read("pets/marlow.toml") == before.replace("orange sable", "fox red")
    finally:
        desk.end()


def length_pulled_on_the_dog(browser):
    desk = Desk(FURNISH, SALON)
    try:
        before = desk.read("pets/marlow.toml")
        browser.go(desk.url)
        open_pet(browser, "marlow")
        browser.click(".figure [data-place=chest]")
        browser.wait("document.querySelector('.part-lines .drag .short')?.value === '30 mm'")
        shape = browser.js("return document.querySelector('.figure [data-place=chest] path').getAttribute('d')")
        browser.drag(".figure [data-place=chest]", 60)
        browser.wait("document.querySelector('.part-lines .drag .short').value === '50 mm'")
        browser.wait("document.querySelector('.figure [data-place=chest] path').getAttribute('d') !== arguments[0]", shape)
        saved(browser)
        assert desk.read("pets/marlow.toml") == before.replace('leave = "30 mm"', 'leave = "50 mm"')
        browser.press("Right side")
        browser.wait("document.querySelector('.figure').getAttribute('aria-label').includes('right')")
        # What comes from the style becomes a line of this file, whole, and one step back takes it out.
        between = desk.read("pets/marlow.toml")
        browser.click(".figure [data-place=ears]")
        browser.wait("document.querySelector('.part-lines h2')?.textContent === 'ears' && document.querySelector('.part-lines .drag .short')")
        begun = browser.js("return document.querySelector('.part-lines .drag .short').value")
        assert begun == "20 mm", begun
        browser.drag(".figure [data-place=ears]", 18)
        browser.wait("document.querySelector('.part-lines .drag .short').value === '26 mm' && document.querySelector('.part-lines .differs')")
        saved(browser, 2)
        trim = tomllib.loads(desk.read("pets/marlow.toml"))["trim"]["ears"]
        assert trim["leave"] == "26 mm" and trim["shears"], trim
        browser.js("document.querySelector('.part-lines .how > span:last-child input').click()")
        saved(browser, 3)
        assert desk.read("pets/marlow.toml") == between
    finally:
        desk.end()
