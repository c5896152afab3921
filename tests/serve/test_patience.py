"""Who waits for whom?  Slow clients, open streams, the end."""
# ctest: release-only
# ctest: alone
# ctest: timeout=120
import select
import signal
import time
import unittest

from serving import ROOT, Answer, Server, WithServer, receive


class Slow(WithServer):
    def median(self, count=15):
        times = []
        for _ in range(count):
            begun = time.monotonic()
            self.assertEqual(self.server.get("/api/state").status, 200)
            times.append(time.monotonic() - begun)
        return sorted(times)[count // 2], max(times)

    def test_two_hundred_slow_heads_hold_nobody_up(self):
        data = self.server.head("GET", "/api/state")
        slow = [self.server.connect() for _ in range(200)]
        try:
            for index, one in enumerate(slow):
                one.sendall(data[:1 + index % (len(data) - 2)])
            middle, most = self.median()
            self.assertLess(most, 0.1, f"the middle one took {middle:.4f} s")
        finally:
            for one in slow:
                one.close()

    def test_slow_bodies_hold_nobody_up(self):
        body = b'{"base": 0}'
        data = self.server.head("POST", "/api/undo", body)
        slow = [self.server.connect() for _ in range(100)]
        try:
            for one in slow:
                one.sendall(data[:-5])
            self.assertLess(self.median()[1], 0.1)
        finally:
            for one in slow:
                one.close()

    def test_more_slow_clients_than_there_are_places_are_turned_away_for_new_ones(self):
        slow = []
        try:
            for _ in range(700):
                slow.append(self.server.connect())
            self.assertLess(self.median()[1], 0.25)
        finally:
            for one in slow:
                one.close()

    def test_a_head_has_a_deadline_whatever_trickles_in(self):
        begun = time.monotonic()
        with self.server.connect() as one:
            for byte in self.server.head("GET", "/api/state")[:60]:
                try:
                    one.sendall(bytes([byte]))
                except OSError:
                    break
                if select.select([one], [], [], 0.2)[0]:
                    break
            answer = Answer(receive(one))
        self.assertEqual(answer.status, 408)
        self.assertLess(time.monotonic() - begun, 8)


class Ends(WithServer):
    def open_stream(self):
        one = self.server.connect()
        one.sendall(self.server.head("GET", "/api/events"))
        got = b""
        while b"retry:" not in got:
            got += one.recv(4096)
        return one

    def test_the_end_takes_two_seconds_at_most_with_eight_open_streams(self):
        for how in (signal.SIGTERM, signal.SIGINT, signal.SIGHUP):
            path = self.folder / f"end{how}.yaml"
            path.write_bytes(self.example.read_bytes())
            server = Server(path)
            streams = []
            for _ in range(8):
                one = server.connect()
                one.sendall(server.head("GET", "/api/events"))
                self.assertIn(b"200", one.recv(4096))
                streams.append(one)
            took, code = server.stop(how)
            self.assertLess(took, 2.0)
            self.assertEqual(code, 0)
            for one in streams:
                receive(one)  # comes to its end
                one.close()

    def test_the_end_does_not_wait_for_a_search_that_has_just_begun(self):
        path = self.folder / "searched.yaml"
        path.write_bytes((ROOT / "examples/large.yaml").read_bytes())
        for moment in (0.0, 0.3, 1.5):  # while it asks what teeth bear, and later
            server = Server(path)
            serial = server.state()["serial"]
            self.assertEqual(server.post("/api/arrange", {"base": serial, "seconds": 60}).status, 200)
            time.sleep(moment)
            took, code = server.stop()
            self.assertLess(took, 2.0)
            self.assertEqual(code, 0)

    def test_a_stream_tells_of_every_change(self):
        with self.open_stream() as one:
            self.server.act(("drive/hp/box/clockwise/2/teeth", "37"))
            got = b""
            while b"}\n\n" not in got:
                got += one.recv(4096)
            self.assertIn(b'"serial": %d' % self.server.state()["serial"], got)

    def test_more_streams_than_there_are_places_end_the_oldest(self):
        streams = [self.open_stream() for _ in range(40)]
        try:
            ended = [one for one in streams[:8] if select.select([one], [], [], 1)[0]]
            self.assertEqual(len(ended), 8)
            self.server.act(("revision", "D"))
            self.assertTrue(select.select([streams[-1]], [], [], 2)[0])
        finally:
            for one in streams:
                one.close()

    def test_streams_that_went_away_do_not_hold_the_end_up(self):
        path = self.folder / "gone.yaml"
        path.write_bytes(self.example.read_bytes())
        server = Server(path)
        for _ in range(8):
            one = server.connect()
            one.sendall(server.head("GET", "/api/events"))
            one.recv(4096)
            one.close()
        self.assertLess(server.stop()[0], 2.0)


if __name__ == "__main__":
    unittest.main()
