"""Arrange, size and judge a turbine engine's accessory drive, from Python.

    import towershaft
    with towershaft.Study.open("bizjet.yaml") as study:
        print(study.verdict, study.number("drive/hp/box/input:n@take-off"))
        for finding in study.findings():
            print(finding.rule, finding.margin)

The shared library does the work; this module calls it by cffi in ABI mode, so nothing is compiled.
It looks for the library that TOWERSHAFT_LIBRARY names, else for libtowershaft.so.0 as the loader
finds it.  Numbers are SI, as in the library.  What cannot be understood raises NotUnderstood, which
holds the same messages as the command's.

Preliminary design aid: see caution().
"""

from __future__ import annotations

import dataclasses
import datetime
import enum
import json
import math
import os
import pathlib
from collections.abc import Iterator
from types import TracebackType
from typing import Any

import cffi

__all__ = ["Error", "Finding", "Message", "NoMemory", "NoOutput", "NotUnderstood", "Study",
           "Verdict", "caution", "version"]

# As in include/towershaft/status.h and study.h; tests/python holds them to those headers.
_DECLARED = """
typedef enum ts_status { TS_OK, TS_NOT_UNDERSTOOD, TS_NO_MEMORY, TS_NO_OUTPUT } ts_status;
typedef struct ts_allocator {
    void *(*resize)(void *context, void *block, size_t size);
    void *context;
} ts_allocator;
typedef struct ts_sink {
    int (*write)(void *context, const char *bytes, size_t length);
    void *context;
} ts_sink;
typedef struct ts_study ts_study;
const char *ts_caution(void);
const char *ts_version(void);
ts_status ts_study_open(const ts_allocator *allocator, ts_study **out);
void ts_study_close(ts_study *study);
typedef enum ts_file_wanted { TS_WANT_DRIVE, TS_WANT_RATE, TS_WANT_EITHER } ts_file_wanted;
typedef struct ts_study_options {
    int32_t today;
    bool workings;
    bool us;
    ts_file_wanted file;
} ts_study_options;
ts_status ts_study_read(ts_study *study, const char *name, const char *bytes, size_t length,
                        const ts_study_options *options);
typedef struct ts_message {
    const char *code;
    uint32_t line, column;
    const char *says;
    const char *expected;
    const char *nearest;
    const char *address;
} ts_message;
size_t ts_study_message_count(const ts_study *study);
ts_message ts_study_message(const ts_study *study, size_t index);
ts_status ts_study_write_messages(const ts_study *study, bool json, int columns,
                                  const ts_sink *sink);
typedef enum ts_verdict { TS_HOLDS, TS_DOES_NOT_HOLD, TS_VERDICT_NOT_COMPUTABLE } ts_verdict;
ts_verdict ts_study_verdict(const ts_study *study);
typedef struct ts_finding_view {
    const char *rule, *level, *state;
    const char *address;
    uint32_t line, column;
    const char *condition;
    const char *says;
    const char *remedy;
    double value, limit, margin;
    const char *unit;
    const char *source;
    const char *fingerprint;
} ts_finding_view;
size_t ts_study_finding_count(const ts_study *study);
ts_finding_view ts_study_finding(ts_study *study, size_t index);
double ts_study_number(ts_study *study, const char *address);
typedef enum ts_document {
    TS_DOCUMENT_PAGE, TS_DOCUMENT_JSON, TS_DOCUMENT_SARIF, TS_DOCUMENT_JUNIT
} ts_document;
typedef struct ts_page_options {
    bool us;
    bool colour;
    int columns;
    bool all;
} ts_page_options;
ts_status ts_study_write(ts_study *study, ts_document document, const ts_page_options *options,
                         const ts_sink *sink);
ts_status ts_study_write_why(ts_study *study, const char *address, bool json,
                             const ts_page_options *options, const ts_sink *sink);
ts_status ts_study_write_addresses(ts_study *study, const char *prefix, const ts_sink *sink);
ts_status ts_compare_write(ts_study *before, ts_study *after, bool json,
                           const ts_page_options *options, const ts_sink *sink);
ts_status ts_study_set_bytes(ts_study *study, const char *name, const char *bytes, size_t length,
                             const char *address, const char *value, const ts_sink *sink);
"""

_ffi = cffi.FFI()
_ffi.cdef(_DECLARED)
_library: Any = None


def _lib() -> Any:
    global _library
    if _library is None:
        _library = _ffi.dlopen(os.environ.get("TOWERSHAFT_LIBRARY", "libtowershaft.so.0"))
    return _library


def _text(pointer: Any) -> str | None:
    return None if pointer == _ffi.NULL else _ffi.string(pointer).decode("utf-8", "replace")


def caution() -> str:
    """What the program always says: it is a preliminary design aid."""
    return _text(_lib().ts_caution()) or ""


def version() -> str:
    """Version of the library that answers."""
    return _text(_lib().ts_version()) or ""


class Verdict(enum.Enum):
    """What is to be thought of a solved drive."""
    HOLDS = 0
    DOES_NOT_HOLD = 1
    NOT_COMPUTABLE = 2


@dataclasses.dataclass(frozen=True)
class Message:
    """Why a file or an address is not understood; lines and columns from 1, 0: the whole file."""
    code: str
    line: int
    column: int
    says: str
    expected: str | None
    nearest: str | None
    address: str | None


@dataclasses.dataclass(frozen=True)
class Finding:
    """One judgement that a reader should see; value, limit and margin are NaN where there is none.

    value and limit are in the SI unit `unit`; margin = capacity / demand - 1."""
    rule: str
    level: str
    state: str
    address: str
    line: int
    column: int
    condition: str | None
    says: str
    remedy: str | None
    value: float
    limit: float
    margin: float
    unit: str | None
    source: str
    fingerprint: str


class Error(Exception):
    """Anything that the library could not do."""


class NotUnderstood(Error):
    """The input cannot be read or computed; `messages` say where and why."""

    def __init__(self, says: str, messages: list[Message]) -> None:
        super().__init__(says)
        self.messages = messages


class NoMemory(Error):
    """An allocation failed; what was there before the call is untouched."""


class NoOutput(Error):
    """What was written could not be taken."""


class _Kept:
    """A sink that keeps what it gets; it lives as long as the call."""

    def __init__(self) -> None:
        self.parts: list[bytes] = []
        self._write = _ffi.callback("int(void *, const char *, size_t)", self._take, error=1)
        self.sink = _ffi.new("ts_sink *", {"write": self._write, "context": _ffi.NULL})

    def _take(self, _context: Any, data: Any, length: int) -> int:
        self.parts.append(bytes(_ffi.buffer(data, length)) if length else b"")
        return 0

    @property
    def text(self) -> str:
        return b"".join(self.parts).decode()


class Study:
    """One drive file, read, solved and judged.  Closes at the end of a `with`."""

    def __init__(self, text: str | bytes, name: str = "drive.yaml", *,
                 today: datetime.date | None = None, workings: bool = True,
                 us: bool = False) -> None:
        """Reads and solves.  Raises NotUnderstood; today: by which waivers are judged, None: an
        expiring waiver is reported as one that could not be judged; workings: needed by why() and
        number(); us: customary units in the sentences of findings."""
        lib, out = _lib(), _ffi.new("ts_study **")
        self._study = _ffi.NULL
        data = text.encode() if isinstance(text, str) else text
        days = (today - datetime.date(1970, 1, 1)).days if today else -2**31
        options = _ffi.new("ts_study_options *", {"today": days, "workings": workings, "us": us,
                                                  "file": lib.TS_WANT_DRIVE})
        self._check(lib.ts_study_open(_ffi.NULL, out))
        self._study = out[0]
        try:
            self._check(lib.ts_study_read(self._study, os.fsencode(name), data, len(data), options))
        except BaseException:
            self.close()
            raise

    @classmethod
    def open(cls, path: str | os.PathLike[str], **options: Any) -> Study:
        """Of a file; options as of Study()."""
        return cls(pathlib.Path(path).read_bytes(), os.fspath(path), **options)

    def close(self) -> None:
        """Gives back everything; a second time does nothing."""
        if self._study != _ffi.NULL:
            _lib().ts_study_close(self._study)
            self._study = _ffi.NULL

    def __enter__(self) -> Study:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None,
                 trace: TracebackType | None) -> None:
        self.close()

    def __del__(self) -> None:
        if getattr(self, "_study", None) is not None and _library is not None:
            self.close()

    # ---- what it answers

    @property
    def verdict(self) -> Verdict:
        """Whether the drive holds."""
        return Verdict(_lib().ts_study_verdict(self._open()))

    def findings(self) -> Iterator[Finding]:
        """All of them, the worst first."""
        lib = _lib()
        for index in range(lib.ts_study_finding_count(self._open())):
            view = lib.ts_study_finding(self._study, index)
            yield Finding(**{field.name: self._plain(getattr(view, field.name))
                             for field in dataclasses.fields(Finding)})

    def number(self, address: str) -> float:
        """One computed number in SI, "drive/hp/box/clockwise/2:n@take-off"; KeyError where there is
        none such."""
        value = _lib().ts_study_number(self._open(), address.encode())
        if math.isnan(value):
            raise KeyError(address)
        return value

    def answer(self) -> dict[str, Any]:
        """The whole answer (docs/schema/check.schema.json)."""
        return json.loads(self._written(_lib().ts_study_write, _lib().TS_DOCUMENT_JSON,
                                        self._page()))

    def page(self, *, us: bool = False, columns: int = 100, every: bool = False) -> str:
        """The answer as for a terminal; every: also the margins that passed."""
        return self._written(_lib().ts_study_write, _lib().TS_DOCUMENT_PAGE,
                             self._page(us, columns, every))

    def why(self, address: str, *, us: bool = False, columns: int = 100) -> str:
        """The working of one number down to the lines of the file."""
        return self._written(_lib().ts_study_write_why, address.encode(), False,
                             self._page(us, columns))

    def addresses(self, prefix: str = "") -> list[str]:
        """What an address, symbol or condition would be completed to."""
        return self._written(_lib().ts_study_write_addresses, prefix.encode()).splitlines()

    def compare(self, after: Study) -> dict[str, Any]:
        """What changed from this drive to another (docs/schema/compare.schema.json)."""
        return json.loads(self._written(_lib().ts_compare_write, after._open(), True, self._page()))

    @staticmethod
    def changed(text: str, address: str, value: str | None, name: str = "drive.yaml") -> str:
        """The text of a drive file with one value replaced, or None: its key removed; every other
        byte stays.  Raises NotUnderstood where that would not do."""
        lib, out, kept = _lib(), _ffi.new("ts_study **"), _Kept()
        study = object.__new__(Study)
        study._study = _ffi.NULL
        study._check(lib.ts_study_open(_ffi.NULL, out))
        study._study = out[0]
        with study:
            data = text.encode()
            study._check(lib.ts_study_set_bytes(
                study._study, name.encode(), data, len(data), address.encode(),
                _ffi.NULL if value is None else value.encode(), kept.sink))
        return kept.text

    # ---- how it asks

    def _open(self) -> Any:
        if self._study == _ffi.NULL:
            raise ValueError("this study is closed")
        return self._study

    @staticmethod
    def _page(us: bool = False, columns: int = 100, every: bool = False) -> Any:
        return _ffi.new("ts_page_options *", {"us": us, "columns": columns, "all": every})

    def _written(self, call: Any, *words: Any) -> str:
        kept = _Kept()
        self._check(call(self._open(), *words, kept.sink))
        return kept.text

    @staticmethod
    def _plain(value: Any) -> Any:
        return _text(value) if isinstance(value, _ffi.CData) else value

    def _messages(self) -> list[Message]:
        lib = _lib()
        views = (lib.ts_study_message(self._study, index)
                 for index in range(lib.ts_study_message_count(self._study)))
        return [Message(**{field.name: self._plain(getattr(view, field.name))
                           for field in dataclasses.fields(Message)}) for view in views]

    def _check(self, status: int) -> None:
        lib = _lib()
        if status == lib.TS_OK:
            return
        if status == lib.TS_NO_MEMORY:
            raise NoMemory("no memory")
        if status == lib.TS_NO_OUTPUT:
            raise NoOutput("the output was not taken")
        kept = _Kept()
        lib.ts_study_write_messages(self._study, False, 100, kept.sink)
        raise NotUnderstood(kept.text.rstrip(), self._messages())
