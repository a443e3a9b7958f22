"""What people of a salon tripped over, each mended: bites, bookings, values that nobody chose."""

import glob
import os
import tomllib

from browser import Desk, until
from page import FAULTY, FURNISH, SALON, SHOWN, field, open_pet, saved

BEHAVIOUR = field('["came_in","behaviour"]')


def catalogues():
    root = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "..")
    out = {}
    for name in glob.glob(os.path.join(root, "styles", "words", "*.toml")):
        with open(name, "rb") as text:
            out[os.path.basename(name)[:-5]] = tomllib.load(text)
    return out


def begin_visit(browser, pet):
    open_pet(browser, pet)
    browser.click(".menu summary")
    browser.press("Begin today's visit")
    browser.wait("document.querySelector('.doc.visit .visit-state.open')")


def bite_goes_on_the_card(browser):
    """Who writes of a bite is asked, and one click puts it where the next one to hold the dog reads it."""
    desk = Desk(FURNISH, SALON)
    try:
        before = desk.read("pets/gao.toml")
        browser.go(desk.url)
        begin_visit(browser, "gao")
        browser.fill(BEHAVIOUR, "a bit worried at the dryer")
        browser.wait("document.querySelector('.alert-offer:not([hidden], .ask) button')?.textContent === 'Put it on the card'")
        browser.fill(BEHAVIOUR, "Bit Ines when the left hock was held")
        browser.wait("document.querySelector('.alert-offer.ask')?.textContent.includes('Put this on the card as an alert?')")
        assert desk.read("pets/gao.toml") == before, "nothing is written before somebody says so"
        browser.press("Put it on the card", ".alert-offer")
        browser.wait("document.querySelector('.safety')?.textContent.includes('Bit Ines when the left hock was held')")
        alert = tomllib.loads(desk.read("pets/gao.toml"))["alert"][-1]
        assert alert == {"level": "warning", "text": "Bit Ines when the left hock was held"}, alert
        assert "for" not in alert, "what staff wrote stays theirs"
        browser.press("Undo", ".alert-offer")
        browser.wait("document.querySelector('.alert-offer.ask')")
        assert desk.read("pets/gao.toml") == before, "and one click takes it back"
        browser.press("Put it on the card", ".alert-offer")
        browser.wait("document.querySelector('.alert-offer')?.textContent.includes('an alert on')")
        saved(browser)
        browser.press("To the pet")
        browser.wait("document.querySelector('.doc.pet') && document.querySelector(arguments[0])?.value.startsWith('Bit Ines') && " + SHOWN, field(f'["alert",{before.count("[[alert]]")},"text"]'))
        # In each language what stands ready for it is a bite, and what was no bite is none.
        none = {"en": ["never bites", "was a bit shy", "did not snap once", "bitter spray", "bit his lead", "bit the brush"], "de": ["ein bisschen scheu", "hat nicht gebissen", "beißt nie", "hat in die Bürste gebissen"],
                "es": ["no mordió", "nunca muerde"], "fr": ["n’a pas mordu", "ne mord jamais"], "pt": ["não mordeu"], "vi": ["không cắn"], "ar": ["لم يعض", "عضلة"]}
        some = {"en": ["He bit me.", "tried to nip", "bites at feet", "Snapped twice", "went for my hand", "drew blood", "mordió"], "de": ["hat gebissen", "biss zu", "zwickt"], "es": ["me mordió", "muerde"],
                "fr": ["il a mordu", "pince"], "pt": ["mordeu a mão"], "vi": ["nó cắn tay"], "ar": ["عض يدي", "يعض"]}
        for language, words in catalogues().items():
            texts = [words["stock"]["snaps"], *some[language], *none[language]]
            told = browser.js("""return Promise.all([import(location.href.replace(/[^/]*$/, '') + 'words.js'), import(location.href.replace(/[^/]*$/, '') + 'told_words.js')])
                .then(([words, offer]) => { words.speak(arguments[0], arguments[1]); return arguments[2].map(offer.tellsOfBite); })""", words["desk"], language, texts)
            assert told == [True] * (len(texts) - len(none[language])) + [False] * len(none[language]), (language, list(zip(texts, told)))
    finally:
        desk.end()


def said_alike_at_both_places(browser):
    """A finding stands in the dog's panel and in the form; what is typed at one is read at the other."""
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        begin_visit(browser, "gao")
        browser.click(".figure [data-place=belly]")
        browser.press("Something found here")
        number = browser.js("return JSON.parse(document.querySelector('.part-lines .block:last-child [data-path]').dataset.path)[1]")
        what, whom = f'["finding",{number},"what"]', f'["finding",{number},"for"]'
        read = "return [...document.querySelectorAll(arguments[0])].map(one => one.value)"
        browser.fill(".part-lines " + field(what), "scab")
        browser.wait("[...document.querySelectorAll(arguments[0])].filter(one => one.value === 'scab').length === 2", field(what))
        browser.fill(".form " + field(what), "scab, two days old")
        browser.wait("[...document.querySelectorAll(arguments[0])].filter(one => one.value === 'scab, two days old').length === 2", field(what))
        browser.js("document.querySelector(arguments[0]).click()", ".form " + field(whom))
        browser.wait("[...document.querySelectorAll(arguments[0])].filter(one => one.checked).length === 2", f"[data-path='{whom}'] input")
        # Another ready phrase takes the place of the one before it; words of one's own stay.
        pick = "const s = document.querySelector(arguments[0]); s.value = [...s.options].map(one => one.value).filter(Boolean)[arguments[1]]; s.dispatchEvent(new Event('change')); return s.options[arguments[1] + 1].value"
        phrases = f".part-lines [data-path='{what}'] .tools select"
        browser.fill(".part-lines " + field(what), "By the teat")
        first = browser.js(pick, phrases, 5)
        second = browser.js(pick, phrases, 8)
        now = browser.js(read, ".part-lines " + field(what))[0]
        assert now.startswith("By the teat.") and second.lower() in now.lower() and first.lower() not in now.lower(), now
        # What a press on a language does is said.
        browser.fill(field('["told"]'), "Comb the ears every day.")
        browser.wait("document.querySelector(arguments[0])?.textContent.includes('nothing is translated')", "[data-path='[\"told\"]'] .fault")
    finally:
        desk.end()


def nothing_taken_for_granted(browser):
    """No blade, no length, no day of a vaccination that nobody chose."""
    desk = Desk(FURNISH, SALON)
    try:
        before = desk.read("pets/marlow.toml")
        browser.go(desk.url)
        open_pet(browser, "marlow")
        browser.click(".figure [data-place=belly]")
        browser.wait("document.querySelector('.part-lines h2')?.textContent === 'belly'")
        tool = "[...document.querySelectorAll('.part-lines .how label')].find(one => one.textContent === arguments[0]).click()"
        browser.js(tool, "Blade")
        chosen = ".part-lines [data-path$='\"blade\"]'] select"
        browser.wait("document.querySelector(arguments[0])?.value === '' && document.querySelector('.part-lines').textContent.includes('Nothing is changed until you choose.')", chosen)
        browser.js(tool, "Shears")
        browser.wait("document.querySelector('.part-lines .drag .short')?.value === '' && document.querySelector('.part-lines .length.unset')")
        assert not browser.js("return document.querySelector('.part-lines [data-path$=\"\\\\\"shears\\\\\"]\"] input:checked')")
        assert browser.js("return document.querySelector('#state').textContent") == "", "nothing is written yet"
        browser.js("document.querySelectorAll(arguments[0])[1].click()", ".part-lines [data-path$='\"shears\"]'] input")
        assert browser.js("return document.querySelector('#state').textContent") == "", "half a line is none"
        browser.js("const one = document.querySelector('.part-lines .drag .short'); one.value = '32'; one.dispatchEvent(new Event('input')); one.dispatchEvent(new Event('change', {bubbles: true}))")
        browser.wait("document.querySelector('#state').textContent !== ''")
        saved(browser)
        line = tomllib.loads(desk.read("pets/marlow.toml"))["trim"]["belly"]
        assert line["leave"] == "32 mm" and line["shears"] == "curved", line
        browser.press("Vaccinations") if not browser.js("return document.querySelector('[data-path=\\'[\"vaccinations\"]\\']')") else None
        browser.js("document.querySelector('[data-path=\\'[\"vaccinations\"]\\']').open = true; const one = document.querySelector('[data-path=\\'[\"vaccinations\"]\\'] .adding input'); one.value = 'leptospirosis'; one.dispatchEvent(new Event('change'))")
        browser.wait("document.querySelector(arguments[0])?.value === ''", "[data-path='[\"vaccinations\",\"leptospirosis\"]'] input[type=date]")
        assert "leptospirosis" not in browser.js("return document.querySelector('.doc').dataset.answered && JSON.stringify([...document.querySelectorAll('.fault')].map(one => one.textContent))")
        # A dog without a style differs from none.
        browser.js("const s = document.querySelector(arguments[0]); s.value = ''; s.dispatchEvent(new Event('change'))", field('["trim","style"]'))
        browser.click(".figure [data-place=chest]")
        browser.wait("document.querySelector('.part-lines h2')?.textContent === 'chest'")
        assert not browser.js("return document.querySelector('.part-lines .differs')"), "differs from no style"
        assert not browser.js("return document.querySelector('.marks .ink')"), "a diamond for no style"
        assert before.count("belly") == 0
    finally:
        desk.end()


def booked_in_with_who_has_room(browser):
    desk = Desk(FURNISH, SALON, files={"pets/wren.toml": '[pet]\nname = "Wren"\ncoat = "curly"\nweight = "6 kg"\n\n[trim]\nstyle = "curly-short"\n',
                                       "days/2026-11-26.toml": 'date = 2026-11-26\n\n[[booking]]\nat = 09:00:00\ncollect = 12:00:00\npet = "bjarne"\ngroomer = "Bo"\n'})
    try:
        browser.go(desk.url)
        browser.wait("document.querySelector('.one-pet[data-id=wren] .due')?.textContent === 'no groom on file'")
        open_pet(browser, "wren")
        browser.press("Book in")
        browser.js("const one = document.querySelector('.booking-day input'); one.value = '2026-11-26'; one.dispatchEvent(new Event('input'))")
        browser.press("To that day's bookings")
        at, groomer = field('["booking",1,"at"]'), field('["booking",1,"groomer"]')
        browser.wait("document.querySelector('.doc.day') && document.querySelector(arguments[0]) === document.activeElement", at)
        assert browser.js("return document.querySelector(arguments[0]).value", field('["booking",1,"pet"]')) == "Wren"
        browser.js("const one = document.querySelector(arguments[0]); one.value = '10:00'; one.dispatchEvent(new Event('input'))", at)
        rooms = "[...document.querySelectorAll(arguments[0])].map(one => one.textContent)"
        mine = "[data-path='[\"booking\",1,\"groomer\"]'] .room li"
        browser.wait(f"{rooms}.some(one => one.startsWith('Bo busy until')) && document.querySelector(arguments[0]).textContent === 'Ines free from 10:00'", mine)
        browser.click(mine + " button")
        browser.wait("document.querySelector(arguments[0]).value === 'Ines'", groomer)
        browser.wait(SHOWN + " && !document.querySelector('.fault.error, .pages.stale')")
        saved(browser)
        booking = tomllib.loads(desk.read("days/2026-11-26.toml"))["booking"][1]
        assert booking["pet"] == "wren" and booking["groomer"] == "Ines", booking
    finally:
        desk.end()


def no_words_of_files(browser):
    """But where its text is asked for, nobody is spoken to in names of files and their keys."""
    faults = FAULTY + 'born = 2018-01-01\n\n[owner]\nphone = 5550101\nvet = { tel = "5" }\n\n[vaccinations]\nrabies = 2010-01-01\n\n[bath]\nshampoo = "nosuch"\n'
    german = open(os.path.join(SALON, "salon.toml"), encoding="utf-8").read().replace('language = "en-GB"', 'language = "de"')
    looks = r"""const bad = /\.toml|\b[a-z]+_[a-z]+\b|\bTOML\b|\[\[|\[[a-z]+\]|`/;
        return [...document.querySelectorAll('main *')].filter(one => !one.closest('.text-view') && one.checkVisibility()).flatMap(one => [one.title, one.placeholder, ...[...one.childNodes].filter(n => n.nodeType === 3).map(n => n.data)])
            .filter(text => text && bad.test(text))"""
    for files in [{"pets/rolf.toml": faults}, {"pets/rolf.toml": faults, "salon.toml": german}]:
        desk = Desk(FURNISH, SALON, files=files)
        try:
            browser.go(desk.url)
            for pet in ["marlow", "rolf"]:
                browser.click(f".one-pet[data-id={pet}]")
                browser.wait("Number(document.querySelector('.doc.pet')?.dataset.answered) > 0")
                browser.js("document.querySelectorAll('main details:not(.picker, .menu)').forEach(one => { one.open = true }); document.querySelectorAll('.form .more .add').forEach(one => one.click())")
                browser.wait("document.querySelector('.form')")
                said = browser.js(looks)
                assert said == [], said
                if pet == "rolf":
                    browser.press("Drucken" if "salon.toml" in files else "Print")
                    browser.wait("document.querySelector('#state.wrong')?.textContent.endsWith(arguments[0])", "Erst ist etwas zu berichtigen." if "salon.toml" in files else "there is something to mend first.")
                browser.js("document.querySelector('nav [data-view=find]').click()")
                browser.wait("document.querySelector('.one-pet')")
            # A refusal too is in the page's words.
            browser.js("const name = document.querySelector('.new-pet input'); name.value = 'Marlow'; name.form.requestSubmit()")
            browser.wait("document.querySelector('.new-pet .fault:not([hidden])')")
            refused = browser.js("return document.querySelector('.new-pet .fault').textContent")
            assert refused.startswith("Es gibt schon eines" if "salon.toml" in files else "There is one of that name already."), refused
            # Who ends a visit took no remark of ours along.
            if "salon.toml" not in files:
                begin_visit(browser, "gao")
                browser.press("The visit is done")
                saved(browser)
                assert browser.js("return document.querySelector('#state').textContent") == "Saved."
        finally:
            desk.end()


def what_can_be_done_stays(browser):
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        open_pet(browser, "marlow")
        for width, height in [(1280, 800), (768, 1024), (390, 844)]:
            browser.size(width, height)
            browser.js("scrollTo(0, 3000)")
            browser.wait("scrollY > 500")
            seen = browser.js("""return ['Save', 'Print'].map(name => { const box = [...document.querySelectorAll('.doc-head button')].find(one => one.textContent === name).getBoundingClientRect();
                return box.top >= 0 && box.bottom < innerHeight / 4 && box.right <= innerWidth; })""")
            assert seen == [True, True], (width, seen)
            # And so does what came of it.
            browser.js("const one = document.querySelector(arguments[0]); one.value += '!'; one.dispatchEvent(new Event('input'))", field('["pet","colour"]'))
            browser.wait("document.querySelector('#state').textContent === 'Not saved yet.'")
            said = browser.js("const box = document.querySelector('#state').getBoundingClientRect(); return box.top > 0 && box.bottom <= innerHeight && box.right <= innerWidth")
            assert said, (width, "the page's answer is out of sight")
        # Help is never a word a line.
        browser.size(1280, 800)
        narrow = browser.js("""document.querySelectorAll('main details:not(.picker, .menu)').forEach(one => { one.open = true });
            return [...document.querySelectorAll('.help')].filter(one => one.checkVisibility() && one.textContent.length > 20 && one.getBoundingClientRect().width < 110).map(one => one.textContent)""")
        assert narrow == [], narrow
    finally:
        browser.size(1280, 800)
        desk.end()


def birth_as_well_as_it_is_known(browser):
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        open_pet(browser, "marlow")
        browser.js("document.querySelectorAll(arguments[0])[2].click()", "[data-path='[\"pet\",\"born\"]'] .radios input")
        browser.wait("document.activeElement.value === '2021'")
        saved(browser)
        assert "\nborn    = 2021\n" in desk.read("pets/marlow.toml"), desk.read("pets/marlow.toml")
        browser.js("document.querySelectorAll(arguments[0])[1].click()", "[data-path='[\"pet\",\"born\"]'] .radios input")
        browser.js("const s = document.querySelector(arguments[0]); s.value = '04'; s.dispatchEvent(new Event('change'))", "[data-path='[\"pet\",\"born\"]'] select")
        saved(browser, 2)
        assert '\nborn    = "2021-04"\n' in desk.read("pets/marlow.toml"), desk.read("pets/marlow.toml")
        browser.wait(SHOWN + " && !document.querySelector('.fault.error')")
    finally:
        desk.end()


def salon_from_nothing(browser):
    """Who has only a name makes a style, the first pet, and prints its card."""
    home = {"salon.toml": '[salon]\nname = "Corner Dogs"\n'}
    desk = Desk(FURNISH, SALON, files={})
    try:
        for name in glob.glob(desk.salon + "/**/*.toml", recursive=True):
            os.remove(name)
        for name, text in home.items():
            with open(desk.path(name), "w", encoding="utf-8") as out:
                out.write(text)
        desk.kill()
        desk.start()
        browser.go(desk.url)
        browser.wait("document.querySelector('.found .none')?.textContent.includes('There are no pets yet')")
        browser.press("The salon", "nav")
        browser.wait("document.querySelector('.styles')")
        browser.fill(".new-style input", "Corner trim")
        browser.press("Add this style")
        browser.wait("document.querySelector('.doc.style') && document.querySelector('h1').textContent === 'Corner trim'")
        browser.js("if (!document.querySelector(arguments[0])) [...document.querySelectorAll('.more.sections button')].find(one => one.textContent === 'Trim').click()", "[data-path='[\"trim\"]']")
        browser.js("const s = [...document.querySelectorAll('.form select')].find(one => one.ariaLabel?.startsWith('Add a place')); s.value = 'chest'; s.dispatchEvent(new Event('change'))")
        browser.wait("document.querySelector('.part-lines h2')?.textContent === 'chest'")
        browser.js("[...document.querySelectorAll('.part-lines .how label')].find(one => one.textContent === 'Blade').click()")
        browser.js("const s = document.querySelector(arguments[0]); s.value = '7F'; s.dispatchEvent(new Event('change'))", ".part-lines [data-path$='\"blade\"]'] select")
        saved(browser)
        assert tomllib.loads(desk.read("styles/corner-trim.toml"))["trim"]["chest"] == {"blade": "7F"}, desk.read("styles/corner-trim.toml")
        browser.press("Find", "nav")
        browser.fill(".new-pet input", "Rolf")
        browser.press("Add this pet")
        browser.wait("document.querySelector('.doc.pet')")
        browser.press("Trim")
        browser.js("const s = document.querySelector(arguments[0]); s.value = 'corner-trim'; s.dispatchEvent(new Event('change'))", field('["trim","style"]'))
        browser.wait(SHOWN + " && !document.querySelector('.fault.error, .pages.stale')")
        browser.press("Print")
        browser.wait("document.querySelector('#state a')?.href.endsWith('.pdf')")
        for handle in set(browser.do("GET", "/window/handles")) - set(browser.windows):
            browser.do("POST", "/window", {"handle": handle})
            browser.do("DELETE", "/window")
        browser.to(0)
    finally:
        desk.end()


CASES = [bite_goes_on_the_card, said_alike_at_both_places, nothing_taken_for_granted, booked_in_with_who_has_room, no_words_of_files, what_can_be_done_stays,
         birth_as_well_as_it_is_known, salon_from_nothing]
