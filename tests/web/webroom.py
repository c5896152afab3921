"""Where do the tests of the page work?  A copy of web/ in the build folder, with its packages."""
import fcntl
import hashlib
import os
import pathlib
import shutil
import subprocess

ROOT = pathlib.Path(os.environ.get("TS_SOURCE", pathlib.Path(__file__).resolve().parents[2]))
BUILD = pathlib.Path(os.environ.get("TS_BUILD", ROOT / "build/release"))
WEB = ROOT / "web"
PLACE = BUILD / "web"
LEFT_OUT = {"node_modules", "built"}


def run(*words, cwd=PLACE, timeout=600):
    done = subprocess.run(words, cwd=cwd, capture_output=True, text=True, timeout=timeout, check=False,
                          env={**os.environ, "CI": "true", "npm_config_update_notifier": "false"})
    if done.returncode != 0:
        raise AssertionError(f"{' '.join(map(str, words))} ended with {done.returncode}:\n"
                             f"{done.stdout[-3000:]}{done.stderr[-3000:]}")
    return done.stdout


def copy_sources():
    shared = PLACE.parent / "data"  # web/ reads the one table of colours from here
    shared.mkdir(exist_ok=True)
    shutil.copyfile(ROOT / "data/look.json", shared / "look.json")
    for path in WEB.iterdir():
        if path.name in LEFT_OUT:
            continue
        target = PLACE / path.name
        if path.is_dir():
            shutil.rmtree(target, ignore_errors=True)
            shutil.copytree(path, target)
        else:
            shutil.copyfile(path, target)


def prepare():
    """The sources as they are now, and the packages of the lock file.  Installs once a lock file."""
    PLACE.mkdir(parents=True, exist_ok=True)
    with open(BUILD / "web.lock", "w", encoding="ascii") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        copy_sources()
        wanted = hashlib.sha256((WEB / "package-lock.json").read_bytes()).hexdigest()
        stamp = PLACE / "node_modules/.towershaft"
        if not stamp.is_file() or stamp.read_text() != wanted:
            run("npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund")
            stamp.write_text(wanted)
    return PLACE
