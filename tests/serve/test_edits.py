# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Is every act one step that can be taken back, on the disk, whoever else writes the file?"""
# ctest: timeout=300
import os
import pathlib
import random
import subprocess
import tempfile
import unittest

from serving import BIZJET, COMMAND, Server

TOOTH = "drive/hp/box/clockwise/2/teeth"
PUMP = "drive/hp/box/anticlockwise/2"


class InFolder(unittest.TestCase):
    def setUp(self):
        self.keeper = tempfile.TemporaryDirectory()
        self.file = pathlib.Path(self.keeper.name) / "drive.yaml"
        self.file.write_bytes(BIZJET.read_bytes())
        self.base = self.file.read_bytes()
        self.servers = []

    def tearDown(self):
        for server in self.servers:
            server.stop()
        self.keeper.cleanup()

    def serve(self):
        self.servers.append(Server(self.file))
        return self.servers[-1]


class Acts(InFolder):
    def test_an_act_changes_the_bytes_of_one_value_and_no_other(self):
        server = self.serve()
        answer = server.act((TOOTH, "36"))
        self.assertEqual(answer.status, 200)
        self.assertEqual(self.file.read_bytes(), self.base.replace(b"{teeth: 35, face: 14 mm, front", b"{teeth: 36, face: 14 mm, front"))
        self.assertEqual(answer.json()["text"].encode(), self.file.read_bytes())
        self.assertEqual(answer.json()["undo"], f"{TOOTH} = 36")

    def test_undo_and_redo_bring_back_every_byte(self):
        server = self.serve()
        server.act((TOOTH, "36"))
        after = self.file.read_bytes()
        self.assertEqual(server.step("undo").status, 200)
        self.assertEqual(self.file.read_bytes(), self.base)
        self.assertEqual(server.step("redo").status, 200)
        self.assertEqual(self.file.read_bytes(), after)

    def test_many_edits_are_one_step(self):
        server = self.serve()
        answer = server.act((f"{PUMP}/rear", None), (f"{PUMP}/front", "hydraulic pump 1"),
                            says="hydraulic pump 1 to the front")
        self.assertEqual(answer.status, 200, answer.body)
        self.assertEqual(answer.json()["undo"], "hydraulic pump 1 to the front")
        self.assertIn(b"front: hydraulic pump 1", self.file.read_bytes())
        self.assertEqual(answer.json()["steps"], 1)
        server.step("undo")
        self.assertEqual(self.file.read_bytes(), self.base)

    def test_an_edit_that_the_notation_cannot_read_changes_nothing(self):
        server = self.serve()
        for edits in (((TOOTH, "many"),), (("drive/nowhere", "1"),), ((TOOTH, "36"), (TOOTH, "x")),
                      ((TOOTH, "36\n"),), ((f"{TOOTH}:n", "1"),)):
            answer = server.act(*edits)
            self.assertEqual(answer.status, 422, edits)
            self.assertTrue(answer.json()["messages"], answer.body)
        self.assertEqual(self.file.read_bytes(), self.base)
        self.assertEqual(server.state()["steps"], 0)

    def test_what_is_no_act_is_refused(self):
        server = self.serve()
        for body in ({"edits": []}, {}, {"edits": [{}]}, {"edits": [{"at": TOOTH}]}, {"edits": [1]},
                     {"edits": [{"at": TOOTH, "to": "3", "gone": True}]}, {"edits": [{"at": TOOTH, "to": 3}]},
                     {"edits": [{"at": TOOTH, "gone": False}]}, {"edits": "x"}):
            self.assertEqual(server.post("/api/act", {"base": 1} | body).status, 400, body)
        self.assertEqual(self.file.read_bytes(), self.base)

    def test_two_pages_agree(self):
        """The page that has not seen the newest text is told it instead of changing it."""
        server = self.serve()
        serial = server.state()["serial"]
        self.assertEqual(server.act((TOOTH, "36"), base=serial).status, 200)
        late = server.act((TOOTH, "37"), base=serial)
        self.assertEqual(late.status, 409)
        self.assertIn("teeth: 36", late.json()["text"])
        self.assertEqual(server.post("/api/undo", {"base": serial}).status, 409)

    def test_a_text_that_cannot_be_computed_is_kept_and_says_why(self):
        server = self.serve()
        text = self.base.decode().replace("teeth: 35", "teeth: many", 1)
        answer = server.post("/api/text", {"base": 1, "text": text})
        self.assertEqual(answer.status, 200)
        state = answer.json()
        self.assertEqual(self.file.read_text(), text)
        self.assertLess(state["computed"], state["serial"])
        self.assertTrue(state["wrong"]["messages"])
        self.assertEqual(server.get("/api/answer").status, 200, "the last good answer went away")
        server.step("undo")
        self.assertIsNone(server.state()["wrong"])

    def test_a_trial_is_judged_and_not_kept(self):
        server = self.serve()
        text = self.base.decode()
        good = server.post("/api/try", {"text": text.replace("teeth: 35", "teeth: 36", 1)}).json()
        self.assertIn("B2-speed-band", [row["rule"] for row in good["findings"]])
        bad = server.post("/api/try", {"text": text + "nonsense: 1\n"}).json()
        self.assertEqual(bad["wrong"]["messages"][0]["line"], text.count("\n") + 1)
        self.assertEqual(self.file.read_bytes(), self.base)


class Memory(InFolder):
    def test_undo_survives_the_end_of_the_program(self):
        server = self.serve()
        server.act((TOOTH, "36"))
        server.act((TOOTH, "37"))
        server.step("undo")
        server.stop()
        again = self.serve()
        self.assertEqual((again.state()["undo"], again.state()["redo"]), (f"{TOOTH} = 36", f"{TOOTH} = 37"))
        again.step("redo")
        self.assertIn(b"teeth: 37", self.file.read_bytes())
        again.step("undo")
        again.step("undo")
        self.assertEqual(self.file.read_bytes(), self.base)

    def test_any_walk_of_acts_undos_and_redos_keeps_page_disk_and_memory_alike(self):
        """500 steps (60 under the sanitizers, which are slower) against a list of texts kept by the
        test; 20 times as many in `make soak`."""
        steps = 60 if "sanitize" in COMMAND else 500
        rng = random.Random(20261125)
        server = self.serve()
        texts, at, serial = [self.base], 0, 1
        for _ in range(steps * int(os.environ.get("TS_SOAK", "1"))):
            way = rng.random()
            if way < 0.5:
                answer = self.any_change(server, rng, texts[at], serial)
                if answer.status == 422:  # what the notation cannot read is no act
                    self.assertEqual(self.file.read_bytes(), texts[at])
                    continue
                text = answer.json()["text"].encode()
                if text != texts[at]:
                    texts[at + 1:] = [text]
                    at += 1
            else:
                which = "undo" if way < 0.78 else "redo"
                answer = server.post(f"/api/{which}", {"base": serial})
                at = max(at - 1, 0) if which == "undo" else min(at + 1, len(texts) - 1)
            self.assertEqual(answer.status, 200)
            serial = answer.json()["serial"]
            self.assertEqual(answer.json()["text"].encode(), texts[at])
            self.assertEqual(self.file.read_bytes(), texts[at])
            self.assertEqual(answer.json()["steps"], at)

    @staticmethod
    def any_change(server, rng, text, serial):
        """Values, shafts along their branch, faces in exchange, several places at once, whole texts."""
        kind = rng.randrange(6)
        if kind == 0:
            branch = rng.choice(("clockwise", "anticlockwise"))
            edits = [{"at": f"drive/hp/box/{branch}/{rng.randint(1, 3)}", "place": rng.randint(1, 3)}]
        elif kind == 1:
            both = ["starter", "control alternator"]
            rng.shuffle(both)
            edits = [{"at": f"drive/hp/box/input/{face}", "gone": True} for face in ("front", "rear")]
            edits += [{"at": f"drive/hp/box/input/{face}", "to": name} for face, name in zip(("front", "rear"), both)]
        elif kind == 2:
            told = text.decode() + f"# {rng.randint(1, 9)}\n" * rng.randint(0, 2)
            return server.post("/api/text", {"base": serial, "text": told.replace("# 5\n", "")})
        else:
            places = {TOOTH: str(rng.randint(30, 44)), "revision": rng.choice("CDEF"), "title": rng.choice(("a", "\u00e9\u00df", "b: c")),
                      "accessories/breather/mass": f"{rng.randint(10, 30) / 10} kg", "drive/hp/box/depth": f"{rng.randint(60, 90)} mm",
                      "accessories/starter/torque/static": rng.choice(("520 N.m", "unknown", "nonsense"))}
            edits = [{"at": at, "to": places[at]} for at in rng.sample(sorted(places), rng.randint(1, 3))]
        return server.post("/api/act", {"base": serial, "edits": edits, "says": "any"})

    def test_a_second_server_on_the_file_is_refused(self):
        self.serve()
        done = subprocess.run([COMMAND, "open", str(self.file), "--no-browser"], capture_output=True,
                              timeout=20, check=False)
        self.assertEqual(done.returncode, 2)
        self.assertIn(b"open in another towershaft", done.stderr)

    def test_a_torn_journal_loses_its_torn_end_only(self):
        server = self.serve()
        server.act((TOOTH, "36"))
        server.act((TOOTH, "37"))
        server.stop()
        journal = self.file.with_name(".drive.yaml.towershaft-journal")
        whole = journal.read_bytes()
        for cut in (1, 7, 40, 60):
            journal.write_bytes(whole[:-cut])
            again = self.serve()
            self.assertIn("teeth: 37", again.state()["text"])
            again.stop()
            journal.write_bytes(whole)

    def test_a_journal_of_nonsense_costs_the_history_and_nothing_else(self):
        journal = self.file.with_name(".drive.yaml.towershaft-journal")
        rng = random.Random(7)
        server = self.serve()
        server.act((TOOTH, "36"))
        server.stop()
        whole = journal.read_bytes()
        kept = self.file.read_bytes()
        for trial in range(20):
            bad = bytearray(whole)
            for _ in range(1 + trial):
                bad[rng.randrange(len(bad))] = rng.randrange(256)
            journal.write_bytes(bytes(bad) if trial % 4 else rng.randbytes(2000))
            again = self.serve()
            self.assertEqual(again.state()["text"].encode(), kept)
            self.assertEqual(again.act(("revision", "Z")).status, 200)
            self.assertEqual(again.step("undo").status, 200)
            again.stop()
            self.assertEqual(self.file.read_bytes(), kept)


class Others(InFolder):
    def outside(self, old, new):
        self.file.write_bytes(self.file.read_bytes().replace(old, new))

    def test_a_change_of_another_program_is_taken_in_and_can_be_taken_back(self):
        server = self.serve()
        self.outside(b"revision: C", b"revision: X")
        late = server.act((TOOTH, "36"), base=1)
        self.assertEqual(late.status, 409)
        state = late.json()
        self.assertIn("revision: X", state["text"])
        self.assertEqual(state["outside"], state["serial"])
        self.assertEqual(state["undo"], "changed outside of this page")
        self.assertEqual(server.act((TOOTH, "36")).status, 200)
        self.assertIn(b"revision: X", self.file.read_bytes())
        server.step("undo")
        server.step("undo")
        self.assertEqual(self.file.read_bytes(), self.base)

    def test_a_change_between_two_sittings_is_taken_in(self):
        server = self.serve()
        server.act((TOOTH, "36"))
        server.stop()
        self.outside(b"revision: C", b"revision: X")
        again = self.serve()
        self.assertEqual(again.state()["undo"], "changed outside of this page")
        again.step("undo")
        again.step("undo")
        self.assertEqual(self.file.read_bytes(), self.base)

    def test_a_file_replaced_by_one_of_the_same_length_and_date_is_seen(self):
        server = self.serve()
        about = self.file.stat()
        self.outside(b"revision: C", b"revision: Q")
        os.utime(self.file, ns=(about.st_atime_ns, about.st_mtime_ns))
        answer = server.act((TOOTH, "36"), base=1)
        self.assertEqual(answer.status, 409)
        self.assertIn("revision: Q", answer.json()["text"])
        self.assertIn(b"revision: Q", self.file.read_bytes())

    def test_a_file_that_went_away_is_written_again(self):
        server = self.serve()
        self.file.unlink()
        self.assertEqual(server.act((TOOTH, "36")).status, 200)
        self.assertIn(b"teeth: 36", self.file.read_bytes())

    def test_a_link_in_the_place_of_the_file_is_not_followed(self):
        server = self.serve()
        other = self.file.with_name("other.yaml")
        other.write_text("secret: 1\n")
        self.file.unlink()
        self.file.symlink_to(other)
        server.act((TOOTH, "36"))
        self.assertNotIn("secret", server.state()["text"])
        self.assertEqual(other.read_text(), "secret: 1\n")

    def test_the_mode_of_the_file_stays(self):
        self.file.chmod(0o640)
        self.serve().act((TOOTH, "36"))
        self.assertEqual(self.file.stat().st_mode & 0o7777, 0o640)


if __name__ == "__main__":
    unittest.main()
