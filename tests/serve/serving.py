"""How do the tests meet the workbench?  A server of their own, and sockets without manners."""
import json
import os
import pathlib
import re
import signal
import socket
import subprocess
import tempfile
import time
import unittest

ROOT = pathlib.Path(os.environ.get("TS_SOURCE", pathlib.Path(__file__).resolve().parents[2]))
COMMAND = os.environ.get("TOWERSHAFT", str(ROOT / "build/release/towershaft"))
BIZJET = ROOT / "examples/bizjet.yaml"


class Server:
    """`towershaft open` on a file, with the cookie of a page that has entered; `below` are words
    that stand before the command, such as those of a tracer."""

    def __init__(self, path, enter=True, below=()):
        self.path = pathlib.Path(path)
        self.process = subprocess.Popen([*below, COMMAND, "open", str(path), "--no-browser", "--port", "0"],
                                        stdout=subprocess.PIPE, stderr=subprocess.PIPE)
        lines = [self.process.stdout.readline().decode() for _ in range(2)]
        found = re.match(r"http://127\.0\.0\.1:(\d+)/\?key=([0-9a-f]{64})$", lines[1])
        if not found:
            said = self.process.communicate(timeout=10)[1].decode()
            raise AssertionError(f"the server did not begin: {lines} {said}")
        self.port, self.key = int(found.group(1)), found.group(2)
        self.host = f"127.0.0.1:{self.port}"
        self.origin = f"http://{self.host}"
        self.cookie = None
        if enter:
            answer = self.raw(f"GET /?key={self.key} HTTP/1.1\r\nHost: {self.host}\r\n\r\n")
            self.cookie = re.search(r"Set-Cookie: ([^;]+);", answer.head).group(1)

    def connect(self, family=socket.AF_INET):
        one = socket.socket(family, socket.SOCK_STREAM)
        one.settimeout(15)
        one.connect(("127.0.0.1" if family == socket.AF_INET else "::1", self.port))
        return one

    def raw(self, data, family=socket.AF_INET):
        """What the server says to these bytes."""
        if isinstance(data, str):
            data = data.encode("latin-1")
        with self.connect(family) as one:
            try:
                one.sendall(data)
            except OSError:
                pass  # it may hang up while we still speak
            return Answer(receive(one))

    def head(self, method, target, body=None, **changes):
        """The bytes of a sound request; a change of None leaves that header out."""
        fields = {"Host": self.host, "Cookie": self.cookie}
        if body is not None:
            fields |= {"Origin": self.origin, "Content-Type": "application/json",
                       "Content-Length": str(len(body))}
        fields |= {name.replace("_", "-"): value for name, value in changes.items()}
        lines = [f"{method} {target} HTTP/1.1"]
        lines += [f"{name}: {value}" for name, value in fields.items() if value is not None]
        return ("\r\n".join(lines) + "\r\n\r\n").encode("latin-1") + (body or b"")

    def get(self, target, **changes):
        return self.raw(self.head("GET", target, **changes))

    def post(self, target, body, **changes):
        if not isinstance(body, bytes):
            body = json.dumps(body).encode()
        return self.raw(self.head("POST", target, body, **changes))

    def state(self):
        return self.get("/api/state").json()

    def act(self, *edits, base=None, says=None):
        body = {"base": self.state()["serial"] if base is None else base,
                "edits": [{"at": at, "gone": True} if to is None else {"at": at, "to": to}
                          for at, to in edits]}
        if says is not None:
            body["says"] = says
        return self.post("/api/act", body)

    def step(self, which):
        return self.post(f"/api/{which}", {"base": self.state()["serial"]})

    def stop(self, how=signal.SIGTERM):
        """Seconds that the end took, and the exit code."""
        begun = time.monotonic()
        if self.process.stderr.closed:  # it was ended before
            return 0.0, self.process.returncode
        if self.process.poll() is None:
            self.process.send_signal(how)
        code = self.process.wait(timeout=20)
        took = time.monotonic() - begun
        self.process.stdout.close()
        said = self.process.stderr.read().decode("utf-8", "replace")
        if "Sanitizer" in said or "runtime error" in said:
            raise AssertionError(said)
        self.process.stderr.close()
        return took, code


def receive(one):
    got = b""
    while True:
        try:
            block = one.recv(65536)
        except (ConnectionResetError, BrokenPipeError):
            return got
        if not block:
            return got
        got += block


class Answer:
    def __init__(self, got):
        head, _, self.body = got.partition(b"\r\n\r\n")
        self.head = head.decode("latin-1")
        found = re.match(r"HTTP/1\.1 (\d{3}) ", self.head)
        self.status = int(found.group(1)) if found else None

    def json(self):
        return json.loads(self.body)


class WithServer(unittest.TestCase):
    """One server for all tests of a class, on a copy of an example."""
    example = BIZJET

    @classmethod
    def setUpClass(cls):
        cls.keeper = tempfile.TemporaryDirectory()
        cls.folder = pathlib.Path(cls.keeper.name)
        cls.file = cls.folder / "drive.yaml"
        cls.file.write_bytes(cls.example.read_bytes())
        cls.server = Server(cls.file)

    @classmethod
    def tearDownClass(cls):
        cls.server.stop()
        cls.keeper.cleanup()


def routes():
    """(method, path, takes a query, takes a body) of every row of the table of routes."""
    text = (ROOT / "src/apps/serve/route_table.c").read_text()
    rows = re.findall(r'\{ROUTE_\w+, "(GET|POST)", "(/[^"]*)", (NULL|"[^"]*"), (\w+),', text)
    return [(method, path, query != "NULL", body != "0") for method, path, query, body in rows]
