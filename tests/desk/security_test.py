"""Every line of what keeps a desk to its own page and computer, from raw sockets: what is sent, and what
must come back. Usage: security_test.py PROGRAM SALON"""
import json
import os
import socket
import stat
import sys
import time

from served import WAITS, Desk, status

failed = []


def expect(what, wanted, got):
    if got not in (wanted if isinstance(wanted, tuple) else (wanted,)):
        failed.append(f"{what}: {got}, wanted {wanted}")


desk = Desk(*sys.argv[1:3])
token, host, own = desk.token, desk.host, desk.own
JSON = "application/json"
pet = json.dumps({"kind": "pet", "id": "marlow"}).encode()


def get(path="/", **more):
    return status(desk.send("GET", path, **more))


def post(name="open", body=pet, **more):
    return status(desk.send("POST", "/api/" + name, body=body, **{"Origin": own, "Content_Type": JSON, **more}))


# Its own page.
expect("own page", 200, get())
expect("own question", 200, post())
expect("opened by the person", 200, get(Sec_Fetch_Site="none", Sec_Fetch_Mode="navigate"))

# A name that was bent to this address.
for name in ["evil.example", f"evil.example:{desk.port}", "127.0.0.1", "127.0.0.1:1", f"localhost:{desk.port}",
             f"{host}.evil.example", f"[::1]:{desk.port}"]:
    expect(f"Host {name}", 403, get(host=name))
expect("two Hosts", (400, 403), get(extra=["Host: evil.example"]))
expect("no Host", (400, 403), status(desk.raw(f"GET /{token}/ HTTP/1.1\r\nConnection: close\r\n\r\n".encode())))
expect("HTTP/1.0", (400, 403), status(desk.raw(f"GET /{token}/ HTTP/1.0\r\n\r\n".encode())))

# A token that is guessed.
for guess in ["", "0" * 32, token[:-1], token + "0", token.upper() if token.upper() != token else "A" * 32,
              token[:-1] + "%00", "%2e%2e/" + token]:
    expect(f"token {guess}", 404, get(token=guess))

# Other origins, frames, forms.
expect("a picture of another site", 403, get(Sec_Fetch_Site="cross-site", Sec_Fetch_Mode="no-cors"))
expect("another port of this computer", 403, get("/desk.css", Sec_Fetch_Site="same-site"))
expect("in a frame", 403, get(Sec_Fetch_Site="cross-site", Sec_Fetch_Mode="navigate", Sec_Fetch_Dest="iframe"))
for origin in ["http://evil.example", "null", f"https://{host}", f"http://localhost:{desk.port}"]:
    expect(f"GET of {origin}", 403, get(Origin=origin))
    expect(f"POST of {origin}", 403, post(Origin=origin))
expect("two Origins", 400, post(extra=[f"Origin: {own}"]))
expect("POST without Origin", 403, status(desk.send("POST", "/api/open", body=pet, Content_Type=JSON)))
for kind in ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data"]:
    expect(f"a form of {kind}", 415, post(Content_Type=kind))
for method in ["OPTIONS", "PUT", "DELETE", "TRACE", "PATCH", "HEAD"]:
    expect(method, 405, status(desk.send(method, "/", Origin=own)))

# Bodies of no, two, false or too great lengths.
# Whoever is refused may still be sending: the answer comes nevertheless.
expect("larger than it may be", 413, post(body=b"x" * (512 * 1024 + 1)))
expect("much larger", 413, post(body=b"x" * (4 * 1024 * 1024)))
large = b"x" * (2 * 1024 * 1024)
expect("a large body of another page", 403, post(body=large, Origin="http://evil.example"))
expect("a large body for another token", 404, post(body=large, token="0" * 32))
expect("a large body of another kind", 415, post(body=large, Content_Type="text/plain"))
expect("a large body with GET", 400, status(desk.send("GET", "/", body=large)))
expect("a photo larger than it may be", 413, post("photo", b"x" * (33 * 1024 * 1024), Content_Type="image/jpeg"))
line = f"POST /{token}/api/open HTTP/1.1\r\nHost: {host}\r\nOrigin: {own}\r\nContent-Type: {JSON}\r\nConnection: close\r\n"
for more, wanted in [("Transfer-Encoding: chunked\r\n\r\n2\r\n{}\r\n0\r\n\r\n", (400, 411)),
                     ("Content-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n{}", 400),
                     ("Content-Length: 2\r\nContent-Length: 3\r\n\r\n{}", 400),
                     ("Content-Length: -1\r\n\r\n", (400, 413)),
                     ("Content-Length: 99999999999999999999\r\n\r\n", (400, 413)),
                     ("Content-Length: 999999999999\r\n\r\n", 413),  # nobody hears that out
                     ("\r\n", 411)]:
    expect(f"a body of {more.strip()!r}", wanted, status(desk.raw((line + more).encode())))
expect("a header of 40 KB", (413, 431, 414, 0), get(X="y" * 40000))
expect("a path of 40 KB", (413, 431, 414, 0), get("/" + "y" * 40000))

# Paths, and ids that would be paths.
for path in ["/../../../etc/passwd", "/..%2f..%2fetc/passwd", "/%2e%2e/salon.toml", "//etc/passwd", "/index.html%00",
             "/index.html%00.css", "/desk.css%0d%0aX-Evil:1", "/.hidden", "/out/../index.html", "/out/1.pdf",
             "/fonts/../salon.ttf", "/fonts/%2e%2e%2fsalon.ttf", "/pets/marlow.toml", "/api/start", "/%", "/%zz"]:
    expect(f"path {path}", 404, get(path))
expect("no header of theirs", False, b"X-Evil" in desk.send("GET", "/x%0d%0aX-Evil:%201"))
for kind, name in [("pet", "../salon"), ("pet", "marlow/../../salon"), ("pet", "/etc/passwd"), ("pet", "marlow\0"),
                   ("pet", ".."), ("pet", ""), ("visit", "../pets/marlow"), ("visit", "marlow/../../salon"),
                   ("visit", "marlow/"), ("day", "../salon"), ("style", "../salon"), ("salon", "x"), ("etc", "passwd")]:
    expect(f"{kind} {name!r}", 404, post(body=json.dumps({"kind": kind, "id": name}).encode()))

# No question at all.
for body in [b"", b"{", b"[1]", b"null", b"\xff\xfe", b'{"kind": 7}', b"[" * 100000, b'{"a":' * 30000]:
    expect(f"a body {body[:12]!r}", 400, post(body=body))
expect("nothing of that name", 404, post("nothing"))

# What an answer says besides.
head = desk.send("GET", "/").split(b"\r\n\r\n")[0].decode().lower()
for wanted in ["content-security-policy: default-src 'none';", "frame-ancestors 'none'", "form-action 'none'",
               "x-content-type-options: nosniff", "referrer-policy: no-referrer", "cache-control: no-store",
               "cross-origin-resource-policy: same-origin", "cross-origin-opener-policy: same-origin"]:
    expect(f"header {wanted}", True, wanted in head)
expect("a header that lets others in", False, "access-control" in head)
expect("nothing evaluated", False, "unsafe" in head)

# Nothing of the salon in an address; the address in no list of processes, and its file the owner's alone.
code, printed = desk.ask("print", {"what": [{"kind": "pet", "id": "marlow", "sheet": "card"}]})
expect("print", 200, code)
expect("its address", False, "marlow" in printed["url"])
pdf = desk.send("GET", "/" + printed["url"])
expect("the PDF", 200, status(pdf))
expect("its name", False, b"marlow" in pdf.split(b"\r\n\r\n")[0].lower())
with open(f"/proc/{desk.process.pid}/cmdline", "rb") as line_of_process:
    expect("the token among the processes", False, token.encode() in line_of_process.read())
expect("who may read the start page", 0o600, stat.S_IMODE(os.stat(desk.page).st_mode))

# Only this computer: what listens at the port, by the kernel's own list. 0100007F is 127.0.0.1.
listening = set()
for table in ["/proc/net/tcp", "/proc/net/tcp6"]:
    if os.path.exists(table):
        with open(table, encoding="ascii") as rows:
            for row in list(rows)[1:]:
                where, state = row.split()[1], row.split()[3]
                if state == "0A" and int(where.split(":")[1], 16) == desk.port:
                    listening.add(where.split(":")[0])
expect("where it listens", {"0100007F"}, listening)

# A link is never written through, in the salon or out of it.
outside = os.path.join(desk.folder, "outside.toml")
with open(outside, "w", encoding="utf-8") as file:
    file.write('[pet]\nname = "Outside"\n')
os.symlink(outside, os.path.join(desk.salon, "pets", "linked.toml"))
code, opened = desk.ask("open", {"kind": "pet", "id": "linked"})
if code == 200:
    code, _ = desk.ask("save", {"kind": "pet", "id": "linked", "mark": opened["mark"],
                                "edits": [{"op": "set", "path": ["pet", "name"], "value": "Evil"}]})
expect("a save through a link", False, code == 200)
with open(outside, encoding="utf-8") as file:
    expect("what lies outside", True, "Outside" in file.read())

# Who keeps connections, streams and halves of requests open keeps nobody out.
held = []
for _ in range(20):
    half = socket.create_connection(("127.0.0.1", desk.port))
    half.sendall(f"POST /{token}/api/open HTTP/1.1\r\nHost: {host}\r\n".encode())
    held.append(half)
codes = []
for _ in range(12):
    stream = socket.create_connection(("127.0.0.1", desk.port), WAITS)
    stream.sendall(f"GET /{token}/api/events HTTP/1.1\r\nHost: {host}\r\n\r\n".encode())
    codes.append(status(stream.recv(4096)))
    held.append(stream)
expect("streams", [200] * 8 + [429] * 4, codes)
begun = time.monotonic()
expect("an answer beside them", 200, get())
expect("in time", True, time.monotonic() - begun < 9)  # not only once those are given up, after 10 s
for one in held:
    one.close()
expect("after them", 200, get())

expect("ended by a signal", 130, desk.close())
expect("the start page is gone", False, os.path.exists(desk.page))

# Looking only.
desk = Desk(*sys.argv[1:3], "--look")
token, host, own = desk.token, desk.host, desk.own
_, opened = desk.ask("open", {"kind": "pet", "id": "marlow"})
edit = {"kind": "pet", "id": "marlow", "mark": opened["mark"],
        "edits": [{"op": "set", "path": ["pet", "name"], "value": "Evil"}]}
for name in ["save", "draft", "create"]:
    expect(f"{name} while looking", 403, desk.ask(name, edit)[0])
expect("photo while looking", 403, post("photo", b"x", Content_Type="image/jpeg"))
expect("nothing was changed", opened["text"], desk.ask("open", {"kind": "pet", "id": "marlow"})[1]["text"])
desk.close()

print("\n".join(failed) or "nothing was let in")
sys.exit(bool(failed))
