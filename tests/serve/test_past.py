# ctest: release-only    (whole commands take minutes under the sanitizers)
"""Is the drive compared with what it was, with what git has and with its neighbours, and with nothing else?"""
import os
import pathlib
import subprocess
import tempfile
import unittest
import urllib.parse

from serving import ROOT, Server, WithServer


def quoted(text):
    return urllib.parse.quote(text, safe="")


class Acts(WithServer):
    def test_every_act_of_the_journal_is_an_earlier_drive(self):
        server = self.server
        for teeth in (45, 46, 47):
            self.assertEqual(server.act(("drive/hp/box/clockwise/1/teeth", str(teeth))).status, 200)
        self.assertEqual(server.step("undo").status, 200)
        past = server.get("/api/past").json()
        self.assertEqual([one["done"] for one in past["acts"]], [True, True, False])
        self.assertIn("= 47", past["acts"][2]["says"])
        for act, teeth in ((0, None), (1, 45), (2, 46), (3, 47)):
            view = server.get(f"/api/past/view?from=act%3A{act}&units=metric").json()
            gear = next(one for one in view["gears"] if one["address"] == "drive/hp/box/clockwise/1/teeth"
                        or one["address"] == "drive/hp/box/clockwise/1")
            self.assertEqual(gear["teeth"], 44 if teeth is None else teeth)
        self.assertEqual(server.get("/api/compare?from=act%3A2").json()["changes"], [])
        changed = server.get("/api/compare?from=act%3A1").json()["changes"]
        self.assertTrue(changed)
        self.assertEqual(server.get("/api/compare?from=opened").json(), server.get("/api/compare").json())

    def test_what_is_not_there_is_refused(self):
        for word in ("act:", "act:-1", "act:99", "act:1x", "act:+1", "act: 1", "act:18446744073709551616", "git:", "git:HEAD",
                     "file:", "file:nobody.yaml", "nonsense", "", "opened ", "act:1\u00e9"):
            with self.subTest(word):
                for path in ("/api/compare", "/api/past/view"):
                    self.assertEqual(self.server.get(f"{path}?from={quoted(word)}").status, 422)


class Files(unittest.TestCase):
    def setUp(self):
        keeper = tempfile.TemporaryDirectory()
        self.addCleanup(keeper.cleanup)
        self.folder = pathlib.Path(keeper.name) / "work"
        self.folder.mkdir()
        self.file = self.folder / "drive.yaml"
        self.file.write_bytes((ROOT / "examples/bizjet.yaml").read_bytes())

    def serve(self):
        server = Server(self.file)
        self.addCleanup(server.stop)
        return server

    def test_another_drive_of_the_folder_is_compared_with(self):
        (self.folder / "old one.yaml").write_text(self.file.read_text().replace("revision: C", "revision: B"))
        (self.folder / "notes.txt").write_text("nothing")
        (self.folder / ".hidden.yaml").write_text("nothing")
        server = self.serve()
        self.assertEqual(server.get("/api/past").json()["files"], ["old one.yaml"])
        self.assertEqual(server.get(f"/api/past/view?from={quoted('file:old one.yaml')}").json()["revision"], "B")
        self.assertEqual(server.get(f"/api/compare?from={quoted('file:old one.yaml')}").status, 200)

    def test_no_name_leads_out_of_the_folder(self):
        outside = self.folder.parent / "secret.yaml"
        outside.write_bytes(self.file.read_bytes())
        (self.folder / "link.yaml").symlink_to(outside)
        (self.folder / "sub").mkdir()
        (self.folder / "sub/inner.yaml").write_bytes(self.file.read_bytes())
        os.mkfifo(self.folder / "pipe.yaml")
        (self.folder / "large.yaml").write_bytes(b"#" * (5 << 20))
        server = self.serve()
        for name in ("../secret.yaml", "link.yaml", "sub/inner.yaml", str(outside), "./old.yaml", "..", ".", "pipe.yaml",
                     "large.yaml", ".drive.yaml.towershaft-journal", "drive.yaml", "drive.yaml/", "\\..\\secret.yaml"):
            with self.subTest(name):
                self.assertEqual(server.get(f"/api/past/view?from={quoted('file:' + name)}").status, 422)
        self.assertEqual(server.get("/api/state").status, 200)

    def git(self, *words):
        around = {"PATH": os.environ["PATH"], "HOME": str(self.folder.parent), "GIT_CONFIG_NOSYSTEM": "1"}
        for who in ("AUTHOR", "COMMITTER"):
            around |= {f"GIT_{who}_NAME": "A. Example", f"GIT_{who}_EMAIL": "a@example.invalid",
                       f"GIT_{who}_DATE": "2026-05-01T12:00:00Z"}
        return subprocess.run(["git", *words], cwd=self.folder, env=around, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                              check=True).stdout.decode()

    def commit(self, text, says):
        self.file.write_text(text)
        self.git("add", "drive.yaml")
        self.git("commit", "-q", "-m", says)
        return self.git("rev-parse", "HEAD").strip()

    def test_what_git_has_is_compared_with(self):
        text = self.file.read_text()
        self.assertEqual(self.serve().get("/api/past").json()["git"], [])
        self.git("init", "-q")
        first = self.commit(text.replace("revision: C", "revision: A"), "Begin <b>with</b> A")
        second = self.commit(text.replace("revision: C", "revision: B"), "Go on with B")
        self.file.write_text(text)
        server = self.serve_again()
        told = server.get("/api/past").json()["git"]
        self.assertEqual([one["id"] for one in told], [second, first])
        self.assertEqual(told[1]["says"], "2026-05-01 Begin <b>with</b> A")
        for commit, revision in ((first, "A"), (second, "B")):
            self.assertEqual(server.get(f"/api/past/view?from=git%3A{commit}").json()["revision"], revision)
        self.assertEqual(server.get(f"/api/compare?from=git%3A{first}").status, 200)

    def serve_again(self):
        self.doCleanups_of_servers()
        return self.serve()

    def doCleanups_of_servers(self):
        for which, words, named in list(self._cleanups):
            if getattr(which, "__name__", "") == "stop":
                which(*words, **named)

    def test_git_runs_nothing_that_the_folder_asks_for(self):
        text = self.file.read_text()
        self.git("init", "-q")
        commit = self.commit(text, "Begin")
        trap, sprung = self.folder.parent / "trap.sh", self.folder.parent / "sprung"
        trap.write_text(f"#!/bin/sh\ntouch {sprung}\ncat\n")
        trap.chmod(0o755)
        for key in ("core.fsmonitor", "core.pager", "pager.rev-list", "pager.cat-file", "core.editor", "core.sshCommand",
                    "diff.external", "diff.bad.textconv", "filter.bad.smudge", "filter.bad.clean", "gpg.program",
                    "credential.helper", "core.askPass", "alias.rev-list", "alias.cat-file"):
            self.git("config", key, str(trap) if not key.startswith("alias") else f"!{trap}")
        self.git("config", "log.showSignature", "true")
        self.git("config", "core.hooksPath", str(self.folder.parent))
        (self.folder / ".gitattributes").write_text("*.yaml diff=bad filter=bad\n")
        server = self.serve()
        self.assertEqual(len(server.get("/api/past").json()["git"]), 1)
        self.assertEqual(server.get(f"/api/past/view?from=git%3A{commit}").status, 200)
        self.assertFalse(sprung.exists())

    def test_what_is_no_commit_is_not_asked_for(self):
        self.git("init", "-q")
        commit = self.commit(self.file.read_text(), "Begin")
        server = self.serve()
        for word in (commit[:39], commit + "0" * 30, commit.upper(), "-p" + commit[2:], f"{commit}^", f"{commit}:../x", "--help" + "0" * 40,
                     "0" * 40, f"{commit} ", "HEAD" + "0" * 36):
            with self.subTest(word):
                self.assertEqual(server.get(f"/api/past/view?from={quoted('git:' + word)}").status, 422)

    def test_a_git_that_hangs_is_ended(self):
        tools = self.folder.parent / "tools"
        tools.mkdir()
        (tools / "git").write_text("#!/bin/sh\nexec sleep 30\n")
        (tools / "git").chmod(0o755)
        before = os.environ["PATH"]
        os.environ["PATH"] = f"{tools}:{before}"
        try:
            server = self.serve()
        finally:
            os.environ["PATH"] = before
        self.assertEqual(server.get("/api/past").json()["git"], [])


if __name__ == "__main__":
    unittest.main()
