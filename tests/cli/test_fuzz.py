"""Spoilt files, hundreds of them, the same each time: judged or refused, never a traceback."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from .command import EXAMPLES, VISITS, call

ROUNDS = 60
_SCRIBBLE = [
    '""', "true", "-1", "0", "1e400", "nan", "[]", "{}", "1979-05-27", "07:32:00", "9" * 30, '"½ in"', '"-0"',
    '"\\u0000"', '"1/0 in"', '"1,200"', "[[1]]", "{ a = 1 }", '"12 3/8"', '"٣ mm"', "'''x'''",
]  # fmt: skip


def seeded(name: str) -> random.Random:
    """Return a source of chance that is the same each time."""
    return random.Random(name)  # noqa: S311  it spoils files, it keeps no secret


def scribble(rng: random.Random, text: str) -> bytes:
    """Put another value behind some equals signs."""
    lines = text.splitlines()
    for _ in range(rng.randint(1, 4)):
        at = rng.choice([n for n, line in enumerate(lines) if "=" in line])
        lines[at] = f"{lines[at].partition('=')[0]}= {rng.choice(_SCRIBBLE)}"
    return "\n".join(lines).encode()


def shuffle(rng: random.Random, text: str) -> bytes:
    """Leave lines out, double some, move some."""
    lines = text.splitlines()
    for _ in range(rng.randint(1, 5)):
        at = rng.randrange(len(lines))
        line = lines.pop(at)
        lines[rng.randrange(len(lines)) : 0] = rng.choice([[], [line], [line, line]])
    return "\n".join(lines).encode()


def rename(rng: random.Random, text: str) -> bytes:
    """Change single letters."""
    letters = list(text)
    for _ in range(rng.randint(1, 6)):
        letters[rng.randrange(len(letters))] = rng.choice("=[]\"'{}.,#\n0x é\t-")
    return "".join(letters).encode()


def cut(rng: random.Random, text: str) -> bytes:
    """End the file in the middle of anything."""
    data = text.encode()
    return data[: rng.randrange(len(data))]


def noise(rng: random.Random, _: str) -> bytes:
    """Return bytes of no meaning."""
    return rng.randbytes(rng.randrange(200))


def flip(rng: random.Random, text: str) -> bytes:
    """Change single bytes, which often leaves no UTF-8."""
    data = bytearray(text.encode())
    for _ in range(rng.randint(1, 4)):
        data[rng.randrange(len(data))] = rng.randrange(256)
    return bytes(data)


Spoil = Callable[[random.Random, str], bytes]


@pytest.mark.parametrize("spoil", [scribble, shuffle, rename, cut, noise, flip])
def test_a_spoilt_visit_is_judged_or_refused(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, spoil: Spoil
) -> None:
    """Every spoilt visit ends with a judgement or with problems, as JSON; most are refused."""
    rng = seeded(f"visit {spoil.__name__}")
    path, ends = tmp_path / "v.toml", Counter[int]()
    for number in range(ROUNDS):
        path.write_bytes(spoil(rng, VISITS[number % len(VISITS)].read_text("utf-8")))
        answer = call(capsys, "judge", path, "--json", "--limits", EXAMPLES / "limits")
        assert answer.err == ""
        assert bool(answer.document.get("problems")) == (answer.status == 2)
        assert answer.status == 2 or answer.document["cautions"]
        ends[answer.status] += 1
    assert ends[0] + ends[2] == ROUNDS
    assert ends[2] > ROUNDS // 4


@pytest.mark.parametrize("spoil", [scribble, shuffle, rename, noise])
def test_spoilt_limits_are_taken_or_refused(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, spoil: Spoil
) -> None:
    """Every spoilt limits file ends with a judgement or with problems."""
    rng = seeded(f"limits {spoil.__name__}")
    good = (EXAMPLES / "limits" / "any-model.toml").read_text("utf-8")
    for _ in range(ROUNDS // 2):
        (tmp_path / "own.toml").write_bytes(spoil(rng, good))
        answer = call(capsys, "judge", VISITS[0], "--json", "--limits", tmp_path)
        assert answer.err == ""
        assert bool(answer.document.get("problems")) == (answer.status == 2)


WRITTEN = [
    "", " ", "0", "-1", "305", "305 mm", "12 3/8", "1/0", "٣", "\x00", "9" * 400, "1e9", "nan", "½", "%",
    "3 %", "--", "BL634", "LH1234", "3x4", "left:16:305 mm", "a:b:c", "rule", "calliper", "🙂",
]  # fmt: skip
OPTIONS: dict[tuple[str, ...], list[str]] = {
    ("chain", "judge"): [
        "designation", "pitches", "length", "pitch", "gauge", "passes", "stops-at", "span", "first-length",
        "instrument", "discard-at",
    ],
    ("chain", "identify"): [
        "pitch", "pitches", "length", "plate-height", "plate-thickness", "pin-diameter", "lacing", "marking",
        "instrument",
    ],
    ("chain", "limits"): [],
}  # fmt: skip


@pytest.mark.parametrize("command", OPTIONS, ids=" ".join)
def test_anything_in_an_option_is_judged_or_refused(
    capsys: pytest.CaptureFixture[str], command: tuple[str, ...]
) -> None:
    """Whatever is written behind the options of a chain command, it answers or refuses."""
    rng = seeded(" ".join(command))
    for _ in range(3 * ROUNDS):
        chosen = rng.sample(OPTIONS[command], min(len(OPTIONS[command]), rng.randint(1, 4)))
        given = [f"--{name}={rng.choice(WRITTEN)}" for name in chosen]
        if command[1] == "judge" and rng.random() < 0.8:
            given.append("--designation=BL634")
        if command[1] == "limits":
            given.append(rng.choice(WRITTEN))
        answer = call(capsys, *command, *given, "--json")
        assert answer.err == ""
        assert bool(answer.document.get("problems")) == (answer.status == 2)
