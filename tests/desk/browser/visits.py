"""A visit that was not done, bites in findings, and what was not saved."""

import glob
import os
import tomllib

from browser import Desk, until
from front_desk import begin_visit
from page import FURNISH, SALON, SHOWN, field, open_pet, saved

STATE = "(document.querySelector('.visit-state')?.textContent ?? '')"


def not_done_with_its_reason(browser):
    """Beside done and not done yet stands that the dog was not done, with the reason its owner reads."""
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        begin_visit(browser, "gao")
        name = os.path.relpath(until(lambda: glob.glob(desk.path("visits/gao/2026-11-24*.toml")), "the visit's file")[0], desk.salon)
        assert not browser.js("return document.querySelector(arguments[0])", field('["not_done"]')), "asked before anybody said so"
        browser.press("It was not done")
        browser.wait("document.activeElement?.closest('[data-path]')?.dataset.path === '[\"not_done\"]' && " + STATE + ".includes('Write the reason below.')")
        browser.keys("came in coughing")
        browser.wait(STATE + ".startsWith('It was not done.') && " + STATE + ".includes('ask for a vet')")
        assert browser.js("return document.activeElement.value") == "came in coughing", "the cursor stays where one writes"
        browser.wait("document.querySelector('.owner-reads')?.textContent.includes('came in coughing')")
        browser.js("document.querySelector(arguments[0]).click()", "[data-path='[\"did\"]'] input")
        browser.wait(SHOWN + " && !document.querySelector('.pages.stale, .fault.error')")
        saved(browser)
        visit = tomllib.loads(desk.read(name))
        assert visit["not_done"] == "came in coughing" and visit["did"] == ["bath"], visit
        # It is done after all: the reason goes, and nothing says that it was not.
        browser.press("The visit is done")
        browser.wait(STATE + ".startsWith('The visit is done.')")
        saved(browser, 2)
        visit = tomllib.loads(desk.read(name))
        assert not {"not_done", "did", "unfinished"} & set(visit), visit
        browser.press("It is not done yet after all")
        saved(browser, 3)
        assert tomllib.loads(desk.read(name))["unfinished"] is True
        # Of the states of a coat those are offered that fit the skin.
        ready = browser.js("return [...document.querySelectorAll(arguments[0])].map(one => one.value).filter(Boolean)", "[data-path='[\"came_in\",\"skin\"]'] .tools > select option")
        assert ready == ["sound", "dry", "red", "sore", "greasy"], ready
    finally:
        desk.end()


def bite_in_a_finding(browser):
    """A bite is asked about wherever it is written; what else was found is not."""
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        begin_visit(browser, "gao")
        browser.click(".figure [data-place=ears]")
        browser.press("Something found here")
        what = ".part-lines " + field('["finding",0,"what"]')
        browser.fill(what, "ear red")
        offer = ".part-lines .alert-offer"
        browser.wait("document.querySelector('.owner-reads')?.textContent.includes('ear red')")
        assert not browser.js("return document.querySelector(arguments[0])?.checkVisibility() ?? false", offer), "a red ear is no bite"
        browser.fill(what, "bit when the ear was held")
        browser.wait("document.querySelector(arguments[0])?.textContent.includes('Put this on the card as an alert?')", offer + ".ask")
        browser.press("Put it on the card", offer)
        browser.wait("document.querySelector('.safety')?.textContent.includes('bit when the ear was held')")
        alert = tomllib.loads(desk.read("pets/gao.toml"))["alert"][-1]
        assert alert["level"] == "warning" and alert["text"].endswith("ear: bit when the ear was held"), alert
        # Which ear it is about stands over the finding, not a chooser of another.
        title = browser.js("return document.querySelector('.part-lines .item .title')?.textContent")
        assert title and "ear" in title, title
    finally:
        desk.end()


def told_what_was_not_saved(browser):
    """Who typed a pet that there is none of is told so, whatever else was saved; and that a day has passed."""
    desk = Desk(FURNISH, SALON)
    try:
        browser.go(desk.url)
        open_pet(browser, "marlow")
        browser.press("Book in")
        browser.js("const one = document.querySelector('.booking-day input'); one.value = '2026-11-20'; one.dispatchEvent(new Event('input'))")
        browser.wait("document.querySelector('.booking-day').textContent.includes('This day has passed.')")
        browser.press("To that day's bookings")
        browser.wait("document.querySelector('.doc.day .past')?.textContent === 'This day has passed.'")
        at, pet = field('["booking",0,"at"]'), field('["booking",0,"pet"]')
        browser.js("const one = document.querySelector(arguments[0]); one.value = '10:00'; one.dispatchEvent(new Event('input'))", at)
        browser.js("const one = document.querySelector(arguments[0]); one.focus(); one.value = 'Marlowe'; one.dispatchEvent(new Event('input'))", pet)
        browser.press("Save")
        browser.wait("document.querySelector('#state').textContent === 'Saved, but not this: Pet: Marlowe'")
        assert "Marlowe" not in desk.read("days/2026-11-20.toml")
    finally:
        desk.end()


CASES = [not_done_with_its_reason, bite_in_a_finding, told_what_was_not_saved]
