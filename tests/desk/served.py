"""A desk of the program on a copy of a salon, asked from raw sockets."""
import json
import os
import re
import shutil
import socket
import subprocess
import tempfile


# So long a test waits for what comes at once: only a desk that hangs needs it, however slow the computer.
WAITS = 120


class Desk:
    """`furnish desk` while it runs; ends with its folder at close()."""

    def __init__(self, program, salon, *options):
        self.folder = tempfile.mkdtemp(prefix="furnish-desk-test-")
        self.salon = os.path.join(self.folder, "salon")
        shutil.copytree(salon, self.salon)
        runtime = os.path.join(self.folder, "run")
        os.mkdir(runtime, 0o700)
        self.state = os.path.join(self.folder, "state")
        self.command = [program, "desk", self.salon, "--no-browser", "--on", "2026-11-24", *options]
        self.environment = {**os.environ, "XDG_RUNTIME_DIR": runtime, "XDG_STATE_HOME": self.state}
        self.start()

    def start(self):
        self.process = subprocess.Popen(self.command, stdout=subprocess.PIPE, text=True, env=self.environment)
        self.page = self.process.stdout.readline().strip()
        with open(self.page, encoding="utf-8") as page:
            found = re.search(r"url=http://127\.0\.0\.1:(\d+)/([0-9a-f]{32})/\"", page.read())
        self.port, self.token = int(found[1]), found[2]
        self.host = f"127.0.0.1:{self.port}"
        self.own = f"http://{self.host}"

    def raw(self, request, seconds=WAITS):
        """All that comes back for these bytes, until the other end closes."""
        out = b""
        with socket.create_connection(("127.0.0.1", self.port), seconds) as connection:
            try:
                connection.sendall(request)
                while piece := connection.recv(65536):
                    out += piece
            except OSError:
                pass
        return out

    def request(self, method, path, body=None, token=None, host=None, extra=(), **headers):
        lines = [f"{method} /{self.token if token is None else token}{path} HTTP/1.1",
                 f"Host: {host or self.host}", "Connection: close"]
        lines += [f"{key.replace('_', '-')}: {value}" for key, value in headers.items()]
        lines += extra
        if body is not None:
            lines.append(f"Content-Length: {len(body)}")
        return ("\r\n".join(lines) + "\r\n\r\n").encode() + (body or b"")

    def send(self, *arguments, **more):
        return self.raw(self.request(*arguments, **more))

    def ask(self, name, question, seconds=WAITS):
        """Status and answer, asked as the page does."""
        answer = self.raw(self.request("POST", "/api/" + name, json.dumps(question).encode(),
                                       Origin=self.own, Content_Type="application/json"), seconds)
        return status(answer), json.loads(answer.split(b"\r\n\r\n", 1)[1])

    def close(self):
        self.process.terminate()
        code = self.process.wait(WAITS)
        self.process.stdout.close()
        shutil.rmtree(self.folder)
        return code


def status(answer):
    """The number in an answer's first line; 0: it was closed without one."""
    return int(answer.split()[1]) if answer.startswith(b"HTTP/1.1 ") else 0
