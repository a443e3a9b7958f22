"""What the cases share: the program and the salon they try, and how a page is read."""

import sys

FURNISH, SALON, AXE = sys.argv[1:4]
FAULTY = """# Written by hand, on the way home.
[pet]
name   = "Rolf"
coat   = "doubel"   # the reader knows better
weight = "4,7 kg"

[trim]
style = "natural-tidy"

[[alert]]
level = "danger"
text = "Bites at the left hock."
"""

# A sheet is beside the form, and the browser could draw it.
SHOWN = "document.querySelector('.pages img') && [...document.querySelectorAll('.pages img')].every(one => one.complete && one.naturalWidth > 0)"


def open_pet(browser, pet):
    browser.click(f".one-pet[data-id={pet}]")
    browser.wait("document.querySelector('.doc.pet') && " + SHOWN)


def field(path):
    return f"[data-path='{path}'] :is(input, textarea, select)"


def saved(browser, times=1):
    browser.press("Save")
    browser.wait("Number(document.querySelector('.doc').dataset.saved ?? 0) >= arguments[0]", times)
