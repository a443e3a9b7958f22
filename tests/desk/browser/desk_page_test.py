"""The desk's page in a real browser: desk_page_test.py FURNISH SALON AXE-FOLDER [CASE...]"""

import os
import sys
import time
import traceback

import everyone
import front_desk
import jobs
import visits
from browser import Browser

CASES = [everyone.last_page_closed, jobs.new_pet_to_a_card, jobs.visit_to_an_owners_note, jobs.faulty_file_mended, jobs.caution_accepted, jobs.day_changed, jobs.two_windows,
         jobs.killed_and_back, jobs.length_pulled_on_the_dog, *front_desk.CASES, *visits.CASES, everyone.by_keyboard_alone, everyone.in_arabic,
         everyone.only_to_look_at, everyone.words_in_all_languages, everyone.usable_by_all, everyone.desk_has_ended]


def main():
    wanted = sys.argv[4:]
    failed = 0
    browser = Browser()
    try:
        for case in CASES:
            if wanted and case.__name__ not in wanted:
                continue
            began = time.monotonic()
            try:
                case(browser)
                said = browser.complaints()
                assert said == [], said
                print(f"ok   {case.__name__} {time.monotonic() - began:.1f} s")
            except Exception:
                failed += 1
                print(f"FAIL {case.__name__} {time.monotonic() - began:.1f} s")
                traceback.print_exc(file=sys.stdout)
                if os.environ.get("FURNISH_PICTURES"):
                    browser.picture(os.path.join(os.environ["FURNISH_PICTURES"], case.__name__ + ".png"))
            sys.stdout.flush()
    finally:
        browser.close()
    print(f"{failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
