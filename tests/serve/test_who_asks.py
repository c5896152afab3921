# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Does every route answer its own page and nobody else?  Host, Origin, site and cookie, each wrong."""
# ctest: timeout=120
import unittest

from serving import Server, WithServer, routes

HOSTS = ("localhost:{port}", "127.0.0.1", "127.0.0.1:1", "127.0.0.2:{port}", "evil.example",
         "evil.example:{port}", "127.0.0.1:{port}.evil.example", "127.0.0.1:{port}@evil.example",
         "[::1]:{port}", "0.0.0.0:{port}", "2130706433:{port}", "127.1:{port}", "", "null",
         "127.0.0.1:{port}, evil.example", "127.0.0.1:0{port}")
ORIGINS = ("null", "http://localhost:{port}", "https://127.0.0.1:{port}", "http://127.0.0.1",
           "http://127.0.0.1:1", "http://evil.example", "http://127.0.0.1:{port}.evil.example",
           "http://evil.example#http://127.0.0.1:{port}", "http://127.0.0.1:{port}/", "",
           "HTTP://127.0.0.1:{port}", "file://", "http://[::1]:{port}",
           "http://127.0.0.1:{port} http://evil.example")


class Matrix(WithServer):
    def setUp(self):
        self.routes = routes()
        self.assertGreater(len(self.routes), 15, "the reader of the routes has gone blind")

    def ask(self, method, path, body, **changes):
        if body:
            return self.server.post(path, {"base": 0}, **changes).status
        return self.server.get(path, **changes).status

    def test_every_route_refuses_another_host(self):
        for method, path, _, body in self.routes:
            for host in HOSTS:
                with self.subTest(f"{method} {path} for {host}"):
                    due = 421
                    self.assertEqual(self.ask(method, path, body,
                                              Host=host.format(port=self.server.port)), due)

    def test_every_route_refuses_another_origin(self):
        for method, path, _, body in self.routes:
            for origin in ORIGINS:
                with self.subTest(f"{method} {path} from {origin}"):
                    self.assertEqual(self.ask(method, path, body,
                                              Origin=origin.format(port=self.server.port)), 403)

    def test_what_changes_something_names_its_origin(self):
        for method, path, _, body in self.routes:
            if body:
                with self.subTest(path):
                    self.assertEqual(self.ask(method, path, body, Origin=None), 403)

    def test_every_route_refuses_another_site(self):
        for method, path, _, body in self.routes:
            for site in ("cross-site", "same-site", "", "same-origin, cross-site"):
                with self.subTest(f"{method} {path} from {site}"):
                    self.assertEqual(self.ask(method, path, body, Sec_Fetch_Site=site), 403)
            if body:
                self.assertEqual(self.ask(method, path, body, Sec_Fetch_Site="none"), 403)

    def test_every_route_needs_the_cookie_exactly(self):
        name, _, secret = self.server.cookie.partition("=")
        wrong = (None, "", name, f"{name}=", f"{name}={secret[:-1]}", f"{name}={secret}0",
                 f"{name}={secret.upper()}", f"other={secret}", secret, f'{name}="{secret}"',
                 f"{name} ={secret}", f"{name}={'0' * 64}", f"{name}={self.server.key}")
        for method, path, _, body in self.routes:
            for cookie in wrong:
                if cookie is not None and cookie.upper() == self.server.cookie.upper():
                    continue
                with self.subTest(f"{method} {path} with {cookie}"):
                    self.assertEqual(self.ask(method, path, body, Cookie=cookie), 401)

    def test_the_cookie_is_found_among_others(self):
        self.assertEqual(self.server.get("/api/state", Cookie=f"a=b; {self.server.cookie}; c=d").status, 200)

    def test_the_page_files_need_the_cookie_too(self):
        self.assertEqual(self.server.get("/index.html").status, 200)
        self.assertEqual(self.server.get("/index.html", Cookie=None).status, 401)

    def test_every_answer_says_what_the_page_may_do(self):
        for answer in (self.server.get("/"), self.server.get("/api/state"),
                       self.server.get("/api/state", Cookie=None), self.server.get("/none")):
            for line in ("Content-Security-Policy: default-src 'none'; script-src 'self'",
                         "X-Content-Type-Options: nosniff", "X-Frame-Options: DENY",
                         "Referrer-Policy: no-referrer", "Cross-Origin-Resource-Policy: same-origin",
                         "Cache-Control: no-store"):
                self.assertIn(line, answer.head)
            for word in ("unsafe-inline", "unsafe-eval", "Access-Control"):
                self.assertNotIn(word, answer.head)

    def test_a_client_that_is_refused_learns_no_route(self):
        for path in ("/api/state", "/api/nothing"):
            self.assertEqual(self.server.get(path, Host="evil.example").status, 421)


class Key(WithServer):
    def test_a_launch_key_opens_once(self):
        fresh = Server(self.copy("once.yaml"), enter=False)
        try:
            line = f"GET /?key={fresh.key} HTTP/1.1\r\nHost: {fresh.host}\r\n\r\n"
            first, second = fresh.raw(line), fresh.raw(line)
            self.assertEqual((first.status, second.status), (303, 403))
            cookie = next(row for row in first.head.splitlines() if row.startswith("Set-Cookie: "))
            for word in ("; Path=/", "; HttpOnly", "; SameSite=Strict"):
                self.assertIn(word, cookie)
            self.assertNotIn(fresh.key, first.head)
            self.assertNotIn("Set-Cookie", second.head)
        finally:
            fresh.stop()

    def test_a_wrong_key_opens_nothing_and_spends_nothing(self):
        fresh = Server(self.copy("wrong.yaml"), enter=False)
        try:
            for key in ("", "0" * 64, fresh.key[:-1], fresh.key + "0", fresh.key.upper(), fresh.key[::-1]):
                if key == fresh.key:
                    continue
                answer = fresh.raw(f"GET /?key={key} HTTP/1.1\r\nHost: {fresh.host}\r\n\r\n")
                self.assertEqual(answer.status, 403, key)
            self.assertEqual(fresh.raw(f"GET /?key={fresh.key} HTTP/1.1\r\nHost: {fresh.host}\r\n\r\n").status, 303)
        finally:
            fresh.stop()

    def test_a_key_from_another_page_opens_nothing(self):
        fresh = Server(self.copy("other.yaml"), enter=False)
        try:
            answer = fresh.raw(f"GET /?key={fresh.key} HTTP/1.1\r\nHost: {fresh.host}\r\n"
                               "Sec-Fetch-Site: cross-site\r\n\r\n")
            self.assertEqual(answer.status, 403)
        finally:
            fresh.stop()

    def test_no_two_sessions_share_a_secret(self):
        other = Server(self.copy("second.yaml"))
        try:
            self.assertNotEqual(other.cookie.split("=")[1], self.server.cookie.split("=")[1])
            self.assertEqual(other.get("/api/state", Cookie=self.server.cookie).status, 401)
        finally:
            other.stop()

    def copy(self, name):
        path = self.folder / name
        path.write_bytes(self.example.read_bytes())
        return path


if __name__ == "__main__":
    unittest.main()
