"""The jobs of a salon, from the first click to what stands in the files."""

import glob
import os
import re
import time
import tomllib

from axe import findings, source
from browser import Desk, until
from page import AXE, FAULTY, FURNISH, SALON, SHOWN, field, open_pet, saved


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
        browser.fill(".find", "Wren")
        browser.press("Add “Wren” as a new pet")
        browser.wait("document.querySelector('h1')?.textContent === 'Wren' && document.querySelector('.doc.pet')")
        browser.js("document.querySelector(arguments[0]).value = 'curly'; document.querySelector(arguments[0]).dispatchEvent(new Event('change'))", field('["pet","coat"]'))
        browser.fill(field('["pet","weight"]'), "6.2")
        browser.press("Trim")
        browser.js("const s = document.querySelector(arguments[0]); s.value = 'curly-short'; s.dispatchEvent(new Event('change'))", field('["trim","style"]'))
        browser.press("One more: alert")
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
        changed = before.replace("ask about the hip", "ask about the other hip")
        assert desk.read("days/2026-11-24.toml") == changed
        # A pet is asked for by its name or its owner's; what was only just begun is no fault.
        assert browser.js("return document.querySelector(arguments[0]).value", field('["booking",0,"pet"]')) == "Juniper"
        answered = browser.js("return Number(document.querySelector('.doc').dataset.answered)")
        browser.press("One more: booking")
        browser.wait("Number(document.querySelector('.doc').dataset.answered) > arguments[0]", answered)
        scolded = browser.js("return [...document.querySelectorAll('.fault')].map(one => one.textContent)")
        assert scolded == [], scolded
        browser.js("document.querySelector(arguments[0]).focus()", field('["booking",8,"pet"]'))
        browser.keys("adeyemi")
        browser.wait("[...document.querySelectorAll('.pets:not([hidden]) li')].some(one => one.textContent.startsWith('Marlow'))")
        browser.keys("Enter")
        browser.wait("document.querySelector(arguments[0]).value === 'Marlow'", field('["booking",8,"pet"]'))
        browser.js("const at = document.querySelector(arguments[0]); at.focus(); at.value = '09:30'; at.dispatchEvent(new Event('input'))", field('["booking",8,"at"]'))
        browser.wait(SHOWN + " && !document.querySelector('.fault.error, .pages.stale')")
        browser.wait("[...document.querySelectorAll('.fault')].some(one => one.textContent.includes('Marlow is booked twice'))")
        saved(browser, 2)
        assert desk.read("days/2026-11-24.toml").endswith('\n[[booking]]\nat = 09:30:00\npet = "marlow"\n'), desk.read("days/2026-11-24.toml")
        # The day's page has clashes by names, and whom to ring by number.
        browser.press("The day", "nav")
        browser.wait("document.querySelector('.clash')")
        said = browser.js("return [document.querySelector('.bookings').textContent, document.querySelector('.lists')?.textContent ?? '']")
        assert "Booked twice at the same time" in said[0] and "17:01" not in said[0] and "Juniper and" not in said[0], said
        assert browser.js("return document.querySelectorAll('.phone').length") > 0, said
        # A day of which nothing is written is begun, and a date that is none is not shown.
        browser.press("Day after")
        browser.wait("document.querySelector('.day-body').dataset.day === '2026-11-25'")
        browser.js("const at = document.querySelector('.day-view input[type=date]'); at.value = '25026-11-25'; at.dispatchEvent(new Event('change'))")
        assert browser.js("return document.querySelector('.day-view input[type=date]').value") == "2026-11-25"
        browser.press("Begin this day's bookings")
        browser.wait("document.querySelector('.doc.day') && document.querySelector('.doc.day').textContent.includes('25 November')")
        assert "\ndate = 2026-11-25" in desk.read("days/2026-11-25.toml"), desk.read("days/2026-11-25.toml")
    finally:
        desk.end()


def visit_to_an_owners_note(browser):
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        open_pet(browser, "gao")
        browser.click(".menu summary")
        browser.press("Begin today's visit")
        browser.wait("document.querySelector('.doc.visit .visit-state.open')")
        name = until(lambda: glob.glob(desk.path("visits/gao/2026-11-24*.toml")), "the visit's file")[0]
        photo = browser.find(".hidden-file")
        browser.do("POST", f"/element/{photo}/value", {"text": os.path.abspath(os.path.join(SALON, "photos", "juniper.jpg"))})
        browser.wait("document.querySelector(arguments[0])", '[data-path=\'["photo",0]\']')
        browser.fill(field('["told"]'), "Comb the ears every day.")
        browser.click(".figure [data-place=belly]")
        browser.press("Something found here")
        browser.fill(".part-lines " + field('["finding",0,"what"]'), "scab")
        # Whether the owner reads it is asked, and until then said.
        browser.wait("document.querySelector('.owner-reads')?.textContent.includes('kept from the owner')")
        browser.click(".part-lines .ask")
        browser.js("document.querySelector(arguments[0]).click()", ".part-lines " + field('["finding",0,"for"]'))
        browser.wait("document.querySelector('.owner-reads h3').nextSibling.textContent.includes('belly: scab')")
        # A text in one more language is one more field, with the cursor in it.
        told = "[data-path='[\"told\"]'] "
        browser.wait("document.querySelector(arguments[0]).textContent.includes('The owner reads Tiếng Việt; this is only in English.')", told)
        browser.click(told + ".picker summary")
        browser.click(told + ".picks [data-value=es]")
        browser.wait("document.activeElement.dataset.language === 'es' && document.querySelectorAll(arguments[0]).length === 2", told + "textarea")
        browser.keys("Peine las orejas.")
        browser.wait(SHOWN + " && !document.querySelector('.pages.stale') && !document.querySelector('.fault.error')")
        saved(browser)
        text = desk.read(os.path.relpath(name, desk.salon))
        for wanted in ["photos/", "Comb the ears every day.", 'es = "Peine las orejas."', '"belly"', '"scab"', '"everyone"', "unfinished = true"]:
            assert wanted in text.replace("  ", " ").replace("  ", " ").replace("  ", " "), (wanted, text)
        assert not re.search(r"\n\s*(de|fr|ar|pt|vi) +=", text), text
        browser.press("The visit is done")
        saved(browser, 2)
        assert "\nunfinished" not in desk.read(os.path.relpath(name, desk.salon))
        visit = os.path.relpath(name, desk.path("visits")).removesuffix(".toml")
        shown = browser.js("""const ask = (name, what) => fetch(`api/${name}`, {method: 'POST', headers: {'Content-Type': 'application/json'}, body: JSON.stringify(what)}).then(r => r.json());
            return ask('open', {kind: 'visit', id: arguments[0]}).then(({mark}) => ask('preview', {kind: 'visit', id: arguments[0], mark, edits: [], sheet: 'note-owner'})).then(({pages}) => pages.map(page => page.svg ?? page))""", visit)
        assert any("<image" in page for page in shown), "no photo on the note"
        # Who takes the pet home may read another language than its owner.
        drawn = browser.js("return document.querySelector('.pages img').src")
        browser.js("const one = document.querySelector('.sheet-language select'); one.value = 'es'; one.dispatchEvent(new Event('change'))")
        browser.wait("document.querySelector('.pages img').src !== arguments[0] && " + SHOWN, drawn)
        french = browser.js("""const ask = (name, what) => fetch(`api/${name}`, {method: 'POST', headers: {'Content-Type': 'application/json'}, body: JSON.stringify(what)}).then(r => r.json());
            return ask('open', {kind: 'visit', id: arguments[0]}).then(({mark}) => ask('preview', {kind: 'visit', id: arguments[0], mark, edits: [], sheet: 'note-owner', language: 'fr'})).then(({pages, cautions}) => [pages.map(page => page.svg ?? page), cautions.map(one => one.text)])""", visit)
        assert french[0] != shown and not any("é" in text for text in french[1]), "only the sheet speaks French"
        # Put away, the visit is out of its pet's history; nothing that was written is lost.
        before = desk.read(os.path.relpath(name, desk.salon))
        browser.press("Put this visit away")
        browser.wait("document.querySelector('.doc.pet')")
        assert not os.path.exists(name)
        browser.click(".menu summary")
        browser.press("Put back", ".menu")
        until(lambda: os.path.exists(name), "the visit's file")
        assert desk.read(os.path.relpath(name, desk.salon)) == before
    finally:
        desk.end()


def faulty_file_mended(browser):
    desk = Desk(FURNISH, SALON, files={"pets/rolf.toml": FAULTY, "pets/broken.toml": '[pet]\nname = "Broken\n\n[[alert]]\nlevel = "warning"\ntext = "Deaf."\n'})
    try:
        browser.go(desk.url)
        browser.wait("document.querySelector('.one-pet[data-id=rolf] .mark')?.textContent.includes('DANGER')")
        browser.click(".one-pet[data-id=rolf]")
        browser.wait("document.querySelector(arguments[0])?.closest('.row').querySelector('.fault.error')", field('["pet","weight"]'))
        assert browser.js("return document.querySelector(arguments[0]).getAttribute('aria-invalid')", field('["pet","weight"]')) == "true"
        # What can hurt is told, whatever else cannot be read; also where nobody ever read it.
        assert browser.js("return document.querySelector('.safety').textContent").count("Bites at the left hock.") == 1
        assert "cannot be read" in browser.js("return document.querySelector('.safety .from').textContent")
        fault = browser.js("return document.querySelector(arguments[0]).closest('.row').querySelector('.fault').textContent", field('["pet","weight"]'))
        assert "a number and a unit" in fault and "4,7 kg" in fault, fault
        browser.fill(field('["pet","weight"]'), "4.7 kg")
        browser.wait("!document.querySelector(arguments[0]).closest('.row').querySelector('.fault')", field('["pet","weight"]'))
        # What one types at stays where it is, whatever is told above it.
        field_top = "return document.querySelector(arguments[0]).getBoundingClientRect().top"
        browser.js("document.querySelector(arguments[0]).scrollIntoView({block: 'center'}); document.querySelector(arguments[0]).focus()", field('["trim","visit_every"]'))
        before, told = browser.js(field_top, field('["trim","visit_every"]')), browser.js("return document.querySelector('.doc').dataset.answered")
        browser.js("const name = document.querySelector(arguments[0]); name.value = ''; name.dispatchEvent(new Event('input'))", field('["pet","name"]'))
        browser.wait("document.querySelector(arguments[0]).closest('.row').querySelector('.fault')", field('["pet","name"]'))
        assert abs(browser.js(field_top, field('["trim","visit_every"]')) - before) < 2, "the page jumps"
        browser.press("Undo")
        browser.wait("document.querySelector(arguments[0]).value === 'Rolf'", field('["pet","name"]'))
        browser.press("Write it so: double")
        browser.wait(SHOWN + " && !document.querySelector('.fault.error')")
        saved(browser)
        assert desk.read("pets/rolf.toml") == FAULTY.replace("doubel", "double").replace("4,7 kg", "4.7 kg")
        # A file that is no TOML has its text alone, with the fault marked, until it can be read.
        browser.press("Find", "nav")
        browser.click(".one-pet[data-id=broken]")
        browser.wait("document.querySelector('.text-view mark') && document.querySelector('#text-faults li')")
        browser.wait("document.querySelector('.safety:not([hidden])')?.textContent.includes('Deaf.')")
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
        script = source(AXE)
        assert not script or findings(browser, script) == [], "the conflict is not for everyone"
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
        # A length that is none is told at its field, in plain words, and kept as it was typed.
        browser.fill(".part-lines .drag .short", "20 25mm")
        browser.wait("document.querySelector('.part-lines .drag').closest('.row').querySelector('.fault')?.textContent.includes('“20 25mm”')")
        assert browser.js("return document.querySelector('.part-lines .drag .short').value") == "20 25mm"
        safety = browser.js("return document.querySelector('.safety').textContent")
        assert "Snaps when a rear foot is held." in safety and "This is how it was before." in safety, safety
        browser.js("const one = document.querySelector('.part-lines .drag .short'); one.value = '50 mm'; one.dispatchEvent(new Event('input'))")
        browser.wait("!document.querySelector('.part-lines .fault')")
        # A number alone is in the unit that stood there.
        browser.js("const one = document.querySelector('.part-lines .drag .short'); one.value = '45'; one.dispatchEvent(new Event('input'))")
        browser.wait("document.querySelector('.part-lines .drag .length').value === '45'")
        saved(browser, 2)
        assert 'leave = "45 mm"' in desk.read("pets/marlow.toml"), desk.read("pets/marlow.toml")
        browser.js("const one = document.querySelector('.part-lines .drag .short'); one.value = '50 mm'; one.dispatchEvent(new Event('input'))")
        saved(browser, 3)
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
        saved(browser, 4)
        trim = tomllib.loads(desk.read("pets/marlow.toml"))["trim"]["ears"]
        assert trim["leave"] == "26 mm" and trim["shears"], trim
        browser.js("document.querySelector('.part-lines .how > span:last-child input').click()")
        saved(browser, 5)
        assert desk.read("pets/marlow.toml") == between, desk.read("pets/marlow.toml")
    finally:
        desk.end()
