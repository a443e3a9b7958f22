"""What a page asks from opening a pet to printing it, on a copy of a sample, with the program itself.
Usage: page_asks_test.py PROGRAM SALON"""
import base64
import json
import os
import socket
import sys

from served import WAITS, Desk

desk = Desk(*sys.argv[1:3])


def must(true, what):
    if not true:
        desk.close()
        sys.exit(f"not so: {what}")


def ask(name, question, wanted=200):
    code, answer = desk.ask(name, question)
    must(code == wanted, f"{name} gives {wanted}; it gave {code} {str(answer)[:300]}")
    return answer


def file(name):
    with open(os.path.join(desk.salon, name), encoding="utf-8") as opened:
        return opened.read()


def put(name, text):
    with open(os.path.join(desk.salon, name), "w", encoding="utf-8") as opened:
        opened.write(text)


start = ask("start", {})
must(start["salon"]["today"] == "2026-11-24" and start["words"] and len(start["places"]) > 25, "who the salon is")

# Found: those booked today first, by their hour; then by any part of a name, accents aside.
booked = [pet["booked"] for pet in ask("find", {"words": ""})["pets"]]
hours = [hour for hour in booked if hour]
must(hours == sorted(hours) and booked[:len(hours)] == hours and hours, "bookings come first, by the hour")
must(ask("find", {"words": "gao"})["pets"][0]["name"] == "Gạo", "a name is found without its accents")
must(ask("find", {"words": "0101"})["pets"][0]["id"] == "marlow", "a number is found")

# Changed: the sheet and the dog follow, the file does not until it is saved.
marlow = {"kind": "pet", "id": "marlow"}
opened = ask("open", marlow)
before = file("pets/marlow.toml")
ears = [{"op": "set", "path": ["trim", "ears"], "value": {"shears": "straight", "leave": "25 mm"}}]
changed = {**marlow, "mark": opened["mark"], "edits": ears}
seen = ask("preview", {**changed, "sheet": "style"})
part = next(p for p in seen["figure"]["left"]["parts"] if p["place"] == "ears")
must(seen["pages"] and seen["pages"][0].startswith("<?xml"), "a sheet as SVG")
must(part["length_mm"] == 25 and part["own"] == ["trim", "ears"], "the dog's ears are 25 mm")
must(seen["figure"]["right"], "it has a sore left hock, so that both sides are shown")
must(file("pets/marlow.toml") == before, "a preview writes nothing")

# Kept over a crash.
ask("draft", changed)
desk.process.kill()
desk.process.wait()
desk.process.stdout.close()
desk.start()
must([d["edits"] for d in ask("start", {})["drafts"]] == [ears], "the draft is there after a crash")

# Changed by another meanwhile: both survive, unless both changed one value.
put("pets/marlow.toml", before.replace('"spitz cross"', '"spitz"'))
opened = ask("open", marlow)
stream = socket.create_connection(("127.0.0.1", desk.port), WAITS)
stream.sendall(f"GET /{desk.token}/api/events HTTP/1.1\r\nHost: {desk.host}\r\n\r\n".encode())
stream.recv(4096)
put("pets/marlow.toml", before)
told = b""
while b'"id":"marlow"' not in told:  # what else is told may come first
    piece = stream.recv(4096)
    must(piece, "the stream stays open")
    told += piece
must(b'"id":"marlow"' in told, "a change by another program is told")
saved = ask("save", {**marlow, "mark": opened["mark"], "edits": ears})
text = file("pets/marlow.toml")
must(saved["text"] == text and '"spitz cross"' in text and "25 mm" in text, "both changes are in the file")
must(all(line in text for line in before.splitlines()), "every other line is as it was")
must(not ask("start", {})["drafts"], "what is saved is no draft any more")
both = {**marlow, "mark": saved["mark"], "edits": [{"op": "set", "path": ["pet", "breed"], "value": "mine"}]}
put("pets/marlow.toml", text.replace('"spitz cross"', '"theirs"'))
conflict = ask("save", both, 409)["conflicts"][0]
must((conflict["theirs"], conflict["yours"]) == ("theirs", "mine"), "both are shown")
must('"theirs"' in file("pets/marlow.toml"), "and nothing is written")

# Faults at their place, and what to write instead.
wrong = ask("preview", {**marlow, "text": before.replace('"double"', '"duble"'), "sheet": "card"})
fault = wrong["faults"][0]
must(fault["path"] == ["pet", "coat"] and fault["level"] == "error" and not wrong["pages"], "a fault at its field")
must(fault["fix"] == [{"op": "set", "path": ["pet", "coat"], "value": "double"}], "write it so")

# New, from nothing to a printed card.
new = ask("create", {"kind": "pet", "name": "Rex the Second",
                     "edits": [{"op": "set", "path": ["pet", "coat"], "value": "curly"}]})
must(new["id"] == "rex-the-second" and not new["faults"], "a new pet")
ask("create", {"kind": "pet", "name": "Rex the Second", "edits": []}, 409)
url = ask("print", {"what": [{"kind": "pet", "id": new["id"], "sheet": "card"}]})["url"]
must(b"%PDF-" in desk.send("GET", "/" + url), "its card is printed")

# A visit of today as planned, with a photo, to the owner's note.
visit = ask("create", {"kind": "visit", "id": "bjarne"})
with open(os.path.join(desk.salon, "photos", "marlow-after.jpg"), "rb") as photo:
    sent = desk.send("POST", "/api/photo", body=photo.read(), Origin=desk.own, Content_Type="image/jpeg",
                     X_Furnish_For=base64.urlsafe_b64encode(visit["id"].encode()).decode().rstrip("="))
path = json.loads(sent.split(b"\r\n\r\n", 1)[1])["path"]
must(os.path.exists(os.path.join(desk.salon, path)), "the photo is in the salon's folder")
note = ask("preview", {"kind": "visit", "id": visit["id"], "mark": visit["mark"], "sheet": "note-owner",
                       "edits": [{"op": "append", "path": ["photo"], "value": {"file": path, "when": "after"}}]})
must(len(note["pages"]) >= 1 and not note["faults"], "the owner's note")

# The day.
day = ask("day", {"date": "2026-11-24"})
must(day["exists"] and len(day["bookings"]) >= 8 and day["mix"], "the day as it is booked")
must(ask("day", {"date": "2030-01-01"})["exists"] is False, "a day of which nothing is written")
for sheet in ["card", "day"]:
    must("url" in ask("print", {"what": {"day": "2026-11-24", "sheet": sheet}}), f"{sheet} of the day")

stream.close()
must(desk.close() == 130, "it ends by a signal")
print("all is so")
