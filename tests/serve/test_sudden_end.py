# ctest: release-only    (whole commands take minutes under the sanitizers)
"""What is left when the program is killed in the midst of editing?  At most the last act is lost."""
# ctest: timeout=7200
import os
import pathlib
import random
import tempfile
import threading
import time
import unittest

from serving import BIZJET, Server

TOOTH = "drive/hp/box/clockwise/2/teeth"
KILLS = 200 if "TS_SOAK" in os.environ else 8


class Killed(unittest.TestCase):
    def test_a_kill_at_any_instant_leaves_the_file_whole_and_loses_one_act_at_most(self):
        rng = random.Random(20261125)
        with tempfile.TemporaryDirectory() as keeper:
            file = pathlib.Path(keeper) / "drive.yaml"
            file.write_bytes(BIZJET.read_bytes())
            for number in range(KILLS):
                self.once(file, rng, number)
            left = sorted(path.name for path in pathlib.Path(keeper).iterdir())
            self.assertLessEqual(set(left), {"drive.yaml", ".drive.yaml.towershaft-journal",
                                             ".drive.yaml.towershaft-new"})

    def once(self, file, rng, number):
        server = Server(file)
        answered, asked = [file.read_bytes()], []
        killer = threading.Timer(0.02 + 0.15 * rng.random(), server.process.kill)
        killer.start()
        try:
            state = server.state()
        except (OSError, ValueError):  # the kill came before anything was answered
            killer.join()
            server.stop()
            self.assertEqual(file.read_bytes(), answered[0])
            return
        text, serial = state["text"].encode(), state["serial"]
        for step in range(10000):
            teeth = str(35 + (number * 7 + step) % 12)
            try:
                asked.append(self.expected(text, teeth))
                answer = server.act((TOOTH, teeth), base=serial)
                if answer.status is None:
                    break
                was, text = text, answer.json()["text"].encode()
                serial = answer.json()["serial"]
                if text != was:  # the tooth number that it had is no act, and cannot be taken back
                    answered.append(text)
            except (OSError, ValueError):
                break
        killer.join()
        server.stop()
        now = file.read_bytes()
        self.assertIn(now, (answered[-1], asked[-1]), "the file is neither the last answered text nor the one asked for")
        again = Server(file)
        try:
            self.assertEqual(again.state()["text"].encode(), now)
            self.assertIsNone(again.state()["wrong"])
            if len(answered) > 1:  # what was answered can be taken back: the journal had it first
                self.assertIsNotNone(again.state()["undo"])
                again.step("undo")
                self.assertIn(file.read_bytes(), (answered[-2], answered[-1]))
        finally:
            again.stop()

    @staticmethod
    def expected(text, teeth):
        head, mark, rest = text.partition(b"- {teeth: 44, face: 14 mm} # an idler")
        before, key, after = rest.partition(b"- {teeth: ")
        return head + mark + before + key + teeth.encode() + after[after.index(b","):]


if __name__ == "__main__":
    unittest.main()
