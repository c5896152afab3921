# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Is everything refused that is not exactly a request of the page?  Bytes on a bare socket."""
# ctest: timeout=120
import json
import os
import random
import socket
import time
import unittest

from serving import Answer, WithServer, receive

STATE = "/api/state"


def cases(server):
    """(name, bytes, status due): each is a sound request with one thing wrong."""
    host, cookie, origin = server.host, server.cookie, server.origin
    good = f"Host: {host}\r\nCookie: {cookie}\r\n"

    def get(line, extra="", end="\r\n"):
        return f"{line}\r\n{good}{extra}{end}".encode("latin-1")

    def post(extra, body=b"{}", target="/api/undo", base=True):
        fields = f"Origin: {origin}\r\n{good}" if base else ""
        return f"POST {target} HTTP/1.1\r\n{fields}{extra}\r\n".encode("latin-1") + body

    typed = "Content-Type: application/json\r\n"
    # The request line.
    for name, line, due in (
        ("empty", "", 400), ("blank", " ", 400), ("no target", "GET", 400),
        ("no target, a blank", "GET  HTTP/1.1", 400), ("no version", f"GET {STATE}", 505),
        ("HTTP/1.0", f"GET {STATE} HTTP/1.0", 505), ("HTTP/2.0", f"GET {STATE} HTTP/2.0", 505),
        ("HTTP/0.9", f"GET {STATE} HTTP/0.9", 505), ("HTTP/1.1 small", f"GET {STATE} http/1.1", 505),
        ("HTTP/1.10", f"GET {STATE} HTTP/1.10", 505), ("HTTP/1.1 and a blank", f"GET {STATE} HTTP/1.1 ", 505),
        ("two blanks", f"GET  {STATE} HTTP/1.1", 400), ("a fourth word", f"GET {STATE} HTTP/1.1 x", 505),
        ("blank first", f" GET {STATE} HTTP/1.1", 400), ("small method", f"get {STATE} HTTP/1.1", 405),
        ("HEAD", f"HEAD {STATE} HTTP/1.1", 405), ("OPTIONS", f"OPTIONS {STATE} HTTP/1.1", 405),
        ("TRACE", f"TRACE {STATE} HTTP/1.1", 405), ("CONNECT", f"CONNECT {host} HTTP/1.1", 405),
        ("PUT", f"PUT {STATE} HTTP/1.1", 405), ("DELETE", f"DELETE {STATE} HTTP/1.1", 405),
        ("PATCH", f"PATCH {STATE} HTTP/1.1", 405), ("PRI", "PRI * HTTP/2.0", 505),
        ("a method of punctuation", f"G(T {STATE} HTTP/1.1", 400),
        ("a method with a colon", f"GET: {STATE} HTTP/1.1", 400),
        ("POST where GET is due", f"POST {STATE} HTTP/1.1", 405),
        ("GET where POST is due", "GET /api/undo HTTP/1.1", 405),
        ("absolute form", f"GET http://{host}{STATE} HTTP/1.1", 400),
        ("another host's absolute form", f"GET http://other.example{STATE} HTTP/1.1", 400),
        ("asterisk form", "GET * HTTP/1.1", 400), ("authority form", f"GET {host} HTTP/1.1", 400),
        ("no slash", "GET api/state HTTP/1.1", 400), ("fragment", f"GET {STATE}#a HTTP/1.1", 400),
        ("dots up", "GET /../etc/passwd HTTP/1.1", 404), ("dots in", "GET /api/../api/state HTTP/1.1", 404),
        ("dot in", "GET /./api/state HTTP/1.1", 404), ("two slashes", "GET //api/state HTTP/1.1", 404),
        ("slash behind", f"GET {STATE}/ HTTP/1.1", 404), ("other case", "GET /API/state HTTP/1.1", 404),
        ("backslash", "GET /api\\state HTTP/1.1", 400), ("escaped slash", "GET /api%2Fstate HTTP/1.1", 400),
        ("escaped dots", "GET /%2e%2e/state HTTP/1.1", 400), ("escaped letter", "GET /api/stat%65 HTTP/1.1", 400),
        ("escaped NUL", f"GET {STATE}%00 HTTP/1.1", 400), ("half an escape", f"GET {STATE}% HTTP/1.1", 400),
        ("semicolon", f"GET {STATE};a=b HTTP/1.1", 400), ("the file's name", "GET /drive.yaml HTTP/1.1", 404),
        ("the journal", "GET /.drive.yaml.towershaft-journal HTTP/1.1", 404),
        ("nothing there", "GET /api/nothing HTTP/1.1", 404), ("a query too many", f"GET {STATE}?a=b HTTP/1.1", 400),
        ("an empty query", f"GET {STATE}? HTTP/1.1", 400), ("an unknown name", "GET /api/why?path=a HTTP/1.1", 400),
        ("a name without value", "GET /api/why?at HTTP/1.1", 400), ("an empty pair", "GET /api/why?at=a& HTTP/1.1", 400),
        ("two question marks", "GET /api/why?at=a?b HTTP/1.1", 400), ("NUL in a value", "GET /api/why?at=a%00 HTTP/1.1", 400),
        ("line end in a value", "GET /api/why?at=a%0d%0aX:%20y HTTP/1.1", 400),
        ("DEL in a value", "GET /api/why?at=a%7f HTTP/1.1", 400), ("bad escape in a value", "GET /api/why?at=%zz HTTP/1.1", 400),
        ("half an escape in a value", "GET /api/why?at=a%2 HTTP/1.1", 400),
        ("quote in a value", 'GET /api/why?at="a" HTTP/1.1', 400), ("markup in a value", "GET /api/why?at=<a> HTTP/1.1", 400),
        ("a long address", f"GET /api/why?at={'a' * 3000} HTTP/1.1", 414),
    ):
        yield name, get(line), due
    # The head as bytes.
    sound = get(f"GET {STATE} HTTP/1.1")
    for name, data in (
        ("NUL first", b"\0" + sound), ("NUL in the target", sound.replace(b"state", b"sta\0te")),
        ("NUL in a value", sound.replace(b"Cookie: ", b"Cookie: \0")), ("NUL in a name", sound.replace(b"Cookie", b"Coo\0kie")),
        ("line feeds alone", sound.replace(b"\r\n", b"\n")), ("one line feed alone", sound.replace(b"1.1\r\n", b"1.1\n")),
        ("carriage returns alone", sound.replace(b"\r\n", b"\r")), ("a carriage return in a value", sound.replace(b"Cookie: ", b"Cookie: a\rb")),
        ("a tabulator in a value", sound.replace(b"Cookie: ", b"Cookie:\t")), ("a folded line", sound.replace(b"\r\nCookie", b"\r\n Cookie")),
        ("a line folded by a tabulator", sound.replace(b"\r\nCookie", b"\r\n\tCookie")), ("bytes above 0x7F", sound.replace(b"Cookie: ", b"Cookie: \xff")),
        ("DEL", sound.replace(b"Cookie: ", b"Cookie: \x7f")), ("escape", sound.replace(b"Cookie: ", b"Cookie: \x1b[2J")),
        ("a blank before the colon", sound.replace(b"Cookie:", b"Cookie :")), ("no colon", sound.replace(b"Cookie: ", b"Cookie ")),
        ("an empty name", sound.replace(b"Cookie: ", b": ")), ("an empty line first", b"\r\n" + sound),
        ("a handshake of TLS", b"\x16\x03\x01\x00\xa5\x01\x00\x00\xa1\x03\x03" + bytes(40)),
        ("a second request behind", sound + sound), ("one byte behind", sound + b"x"),
        ("a body that a reading request has not", sound + b"{}"),
    ):
        yield name, data, 400
    yield "a head too long", get(f"GET {STATE} HTTP/1.1", "X: " + "a" * 9000 + "\r\n"), 431
    yield "a head without end", b"GET / HTTP/1.1\r\nX: " + b"a" * 9000, 431
    yield "too many lines", get(f"GET {STATE} HTTP/1.1", "X: a\r\n" * 70), 400
    # Fields.
    for name, extra in (
        ("two hosts", f"Host: {host}\r\n"), ("two cookies", f"Cookie: {cookie}\r\n"), ("two hosts, other case", "hOST: other\r\n"),
        ("transfer-encoding", "Transfer-Encoding: chunked\r\n"), ("transfer-encoding identity", "Transfer-Encoding: identity\r\n"),
        ("transfer-encoding in another case", "tRANSFER-eNCODING: chunked\r\n"), ("te", "TE: trailers\r\n"),
        ("trailer", "Trailer: X\r\n"), ("upgrade", "Upgrade: websocket\r\nConnection: Upgrade\r\n"), ("upgrade to h2c", "Upgrade: h2c\r\n"),
        ("expect", "Expect: 100-continue\r\n"), ("content-encoding", "Content-Encoding: gzip\r\n"),
        ("another method", "X-HTTP-Method-Override: POST\r\n"), ("another address", "X-Original-URL: /api/undo\r\n"),
        ("a length where there is no body", "Content-Length: 2\r\n"), ("a length of nothing where there is no body", "Content-Length: 0\r\n"),
        ("a kind where there is no body", typed),
    ):
        yield name, get(f"GET {STATE} HTTP/1.1", extra), 400
    yield "no host", f"GET {STATE} HTTP/1.1\r\nCookie: {cookie}\r\n\r\n".encode(), 400
    # Bodies.
    for name, extra, body, due in (
        ("no length", typed, b"{}", 411), ("no kind", "Content-Length: 2\r\n", b"{}", 415),
        ("a form", "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: 2\r\n", b"a=", 415),
        ("plain text", "Content-Type: text/plain\r\nContent-Length: 2\r\n", b"{}", 415),
        ("a form of parts", "Content-Type: multipart/form-data; boundary=a\r\nContent-Length: 2\r\n", b"{}", 415),
        ("JSON and a parameter", "Content-Type: application/json; charset=utf-16\r\nContent-Length: 2\r\n", b"{}", 415),
        ("two kinds", typed + "Content-Type: text/plain\r\nContent-Length: 2\r\n", b"{}", 400),
        ("two lengths", typed + "Content-Length: 2\r\nContent-Length: 3\r\n", b"{}", 400),
        ("two equal lengths", typed + "Content-Length: 2\r\nContent-Length: 2\r\n", b"{}", 400),
        ("a list of lengths", typed + "Content-Length: 2, 2\r\n", b"{}", 400),
        ("a length with a sign", typed + "Content-Length: +2\r\n", b"{}", 400),
        ("a length below nothing", typed + "Content-Length: -2\r\n", b"{}", 400),
        ("a length in hexadecimal", typed + "Content-Length: 0x2\r\n", b"{}", 400),
        ("a length with a zero before", typed + "Content-Length: 02\r\n", b"{}", 400),
        ("a length with a blank", typed + "Content-Length: 2 2\r\n", b"{}", 400),
        ("a length that overflows", typed + "Content-Length: 18446744073709551618\r\n", b"{}", 400),
        ("an empty length", typed + "Content-Length: \r\n", b"{}", 400), ("length and chunks", typed + "Content-Length: 2\r\nTransfer-Encoding: chunked\r\n", b"{}", 400),
        ("chunks", typed + "Transfer-Encoding: chunked\r\n", b"2\r\n{}\r\n0\r\n\r\n", 400),
        ("nothing", typed + "Content-Length: 0\r\n", b"", 400), ("too much", typed + "Content-Length: 99999999\r\n", b"{}", 413),
        ("more than an act may bring", typed + "Content-Length: 65537\r\n", b"{}", 413),
        ("more bytes than said", typed + "Content-Length: 2\r\n", b"{}x", 400),
        ("another request in the body's wake", typed + "Content-Length: 2\r\n", b"{}GET / HTTP/1.1\r\n\r\n", 400),
    ):
        yield name, post(extra, body), due
    for name, body in (
        ("no JSON", b"x"), ("half an object", b'{"base": 1'), ("two values", b"{} {}"), ("an array", b"[]"), ("a word", b'"a"'), ("a number", b"1"),
        ("a key twice", b'{"base": 1, "base": 2}'), ("a comma behind", b'{"base": 1,}'), ("a comment", b"{} // a"), ("NaN", b'{"base": NaN}'),
        ("a number with a zero before", b'{"base": 01}'), ("a fraction", b'{"base": 1.5}'), ("an exponent", b'{"base": 1e3}'),
        ("a bare key", b"{base: 1}"), ("single quotes", b"{'base': 1}"), ("a NUL", b'{"base": 1}\0'), ("an escaped NUL", b'{"a\\u0000": 1}'),
        ("a NUL in a text", b'{"a": "\\u0000"}'), ("a line end in a text", b'{"a": "\n"}'), ("half a pair", b'{"a": "\\ud800"}'), ("the pair's other half", b'{"a": "\\udc00"}'),
        ("an unknown escape", b'{"a": "\\x41"}'), ("no UTF-8", b'{"a": "\xff"}'), ("UTF-8 too long", b'{"a": "\xc0\xaf"}'), ("a surrogate as UTF-8", b'{"a": "\xed\xa0\x80"}'),
        ("too deep", b'{"a": ' + b"[" * 20 + b"]" * 20 + b"}"), ("too many", b'{"a": [' + b"1," * 5000 + b"1]}"), ("a mark of byte order", b"\xef\xbb\xbf{}"),
    ):
        yield f"a body with {name}", post(typed + f"Content-Length: {len(body)}\r\n", body), 400


class BareSockets(WithServer):
    def test_a_sound_request_is_answered(self):
        self.assertEqual(self.server.get(STATE).status, 200)
        self.assertEqual(self.server.post("/api/undo", {"base": 1}).status, 200)

    def test_every_unsound_request_is_refused_with_its_reason(self):
        before = self.server.state()
        count = 0
        for name, data, due in cases(self.server):
            with self.subTest(name):
                answer = self.server.raw(data)
                self.assertEqual(answer.status, due, answer.head + answer.body.decode("latin-1"))
                self.assertTrue(json.loads(answer.body)["says"])
                self.assertIn("Connection: close", answer.head)
                self.assertNotIn("Access-Control", answer.head)
            count += 1
        self.assertGreaterEqual(count, 100)
        self.assertEqual(self.server.state(), before, "an unsound request changed something")

    def test_a_head_in_single_bytes_is_judged_like_one_in_a_piece(self):
        for data, due in ((self.server.head("GET", STATE), 200),
                          (self.server.head("GET", STATE, Host="other"), 421)):
            with self.server.connect() as one:
                one.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
                for byte in data:
                    one.sendall(bytes([byte]))
                self.assertEqual(Answer(receive(one)).status, due)

    def test_a_head_may_come_in_two_pieces_cut_anywhere(self):
        data = self.server.head("GET", STATE)
        for cut in range(1, len(data)):
            with self.server.connect() as one:
                one.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
                one.sendall(data[:cut])
                time.sleep(0.002)
                one.sendall(data[cut:])
                self.assertEqual(Answer(receive(one)).status, 200, f"cut at {cut}")

    def test_random_changes_of_sound_requests_do_no_harm(self):
        """Each is answered with a known status, or waits for the rest; the server lives on."""
        rng = random.Random(20261125)
        sound = (self.server.head("GET", STATE), self.server.head("GET", "/api/why?at=drive/hp/box/input"),
                 self.server.head("POST", "/api/act", b'{"base": 0, "edits": [{"at": "revision", "to": "C"}]}'))
        known = {200, 400, 401, 403, 404, 405, 408, 409, 411, 413, 414, 415, 421, 422, 431, 505, None}
        for _ in range(400 * int(os.environ.get("TS_SOAK", "1"))):
            data = bytearray(rng.choice(sound))
            for _ in range(rng.randrange(1, 5)):
                at = rng.randrange(len(data))
                way = rng.random()
                if way < 0.6:
                    data[at] = rng.randrange(256)
                elif way < 0.8:
                    del data[at:at + rng.randrange(1, 20)]
                else:
                    data[at:at] = rng.randbytes(rng.randrange(1, 9))
            with self.server.connect() as one:
                one.settimeout(0.15)
                try:
                    one.sendall(bytes(data))
                    self.assertIn(Answer(receive(one)).status, known)
                except TimeoutError:
                    pass
        self.assertEqual(self.server.get(STATE).status, 200)

    def test_a_connection_carries_one_request(self):
        with self.server.connect() as one:
            one.sendall(self.server.head("GET", STATE, Connection="keep-alive"))
            answer = receive(one)  # to the end of the connection
        self.assertEqual(answer.count(b"HTTP/1.1 "), 1)

    def test_the_other_loopback_address_answers_to_its_own_name_only(self):
        try:
            answer = self.server.raw(self.server.head("GET", STATE, Host=f"[::1]:{self.server.port}"),
                                     socket.AF_INET6)
        except OSError as why:
            self.skipTest(f"this machine has no ::1: {why}")
        self.assertEqual(answer.status, 200)
        self.assertEqual(self.server.raw(self.server.head("GET", STATE), socket.AF_INET6).status, 421)

    def test_nobody_listens_beyond_this_machine(self):
        with open("/proc/net/tcp", encoding="ascii") as table:
            rows = [line.split()[1] for line in table if line.split()[3] == "0A"]
        port = f"{self.server.port:04X}"
        self.assertEqual([row for row in rows if row.endswith(":" + port)], [f"0100007F:{port}"])


if __name__ == "__main__":
    unittest.main()
