"""What a command loads and how it begins: `--version`, help, pipes."""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from mastwright import __version__
from mastwright.cli.main import _parser, main, run

from .command import ROOT, VISITS

RUN = (sys.executable, "-c", "from mastwright.cli.main import run; run()")
HEAVY = ("typst", "tree_sitter", "tree_sitter_toml", "fontpkg_atkinson_hyperlegible")
_PROBE = """
import sys
from mastwright.cli.main import main
try:
    main(sys.argv[1:])
except SystemExit:
    pass
print("loaded:", *(m for m in sys.modules if "." not in m or m.startswith("mastwright.")), file=sys.stderr)
"""
COMMANDS = {
    "version": ("--version",),
    "help": ("--help",),
    "chain judge": ("chain", "judge", "--designation", "BL634", "--pitches", "16", "--length", "311 mm"),
    "chain identify": ("chain", "identify", "--pitch", "19.05 mm"),
    "chain limits": ("chain", "limits", "BL634"),
    "judge": ("judge", str(VISITS[0]), "--json"),
}


def loaded(*arguments: str) -> set[str]:
    """Return the modules that a command has loaded when it is done."""
    done = subprocess.run(
        [sys.executable, "-c", _PROBE, *arguments],
        capture_output=True,
        text=True,
        check=True,
        encoding="utf-8",
    )
    return set(done.stderr.rpartition("loaded:")[2].split())


@pytest.mark.parametrize("arguments", COMMANDS.values(), ids=COMMANDS)
def test_what_is_not_needed_is_not_loaded(arguments: tuple[str, ...]) -> None:
    """Neither the typesetter nor the parser for line numbers is loaded where nothing asks for it."""
    modules = loaded(*arguments)
    assert "mastwright.cli" in modules
    assert modules.isdisjoint(HEAVY)


def test_the_version_loads_no_room() -> None:
    """`--version` reads no table."""
    rooms = {name for name in loaded("--version") if name.count(".") == 1}
    assert rooms == {"mastwright.cli"}


def test_the_probe_sees_what_is_loaded() -> None:
    """A faulty visit loads the parser for line numbers, so that the tests above can fail."""
    assert "tree_sitter" in loaded("judge", str(ROOT / "pyproject.toml"))


@pytest.mark.parametrize("program", [(str(Path(sys.executable).with_name("mastwright")),), RUN])
def test_the_version(program: tuple[str, ...]) -> None:
    """The installed command and the function behind it say the same version."""
    done = subprocess.run([*program, "--version"], capture_output=True, text=True, check=True)
    assert done.stdout == f"mastwright {__version__}\n"


def parsers(parser: argparse.ArgumentParser, name: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    """Yield the words of every command below a parser, itself first."""
    yield name
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            for word, below in action.choices.items():
                yield from parsers(below, (*name, word))


ALL = list(parsers(_parser()))


def test_the_commands() -> None:
    """The commands are these."""
    assert [" ".join(name) for name in ALL] == [
        "", "judge", "chain", "chain identify", "chain limits", "chain judge", "mast", "mast wear",
        "mast state",
    ]  # fmt: skip


@pytest.mark.parametrize("name", ALL, ids=lambda n: " ".join(n) or "mastwright")
def test_every_command_helps(capsys: pytest.CaptureFixture[str], name: tuple[str, ...]) -> None:
    """`--help` of every command leaves with 0 and shows how it is used."""
    with pytest.raises(SystemExit) as left:
        main([*name, "--help"])
    out = capsys.readouterr().out
    assert left.value.code == 0
    assert out.startswith(" ".join(["usage: mastwright", *name]))


@pytest.mark.parametrize(
    ("arguments", "status"), [(["chain", "limits", "BL634"], 0), (["judge", "none.toml"], 2)]
)
def test_the_exit_status(capsys: pytest.CaptureFixture[str], arguments: list[str], status: int) -> None:
    """0 when it was done, 2 when the input cannot be taken."""
    with pytest.raises(SystemExit) as left:
        run(arguments)
    said = capsys.readouterr()
    assert left.value.code == status
    assert bool(said.err) == (status == 2)


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_a_pipe_of_any_encoding_gets_utf_8(encoding: str) -> None:
    """What is printed does not depend on the terminal's encoding, and never fails for it."""
    environment = {**os.environ, "PYTHONIOENCODING": encoding}
    done = subprocess.run(
        [*RUN, "judge", str(VISITS[0]), "--lang", "es"],
        capture_output=True, check=True, env=environment,
    )  # fmt: skip
    assert "mástil" in done.stdout.decode("utf-8")


def test_a_reader_that_goes_away_is_no_fault() -> None:
    """`mastwright ... | head -1` leaves without a traceback."""
    reader, writer = os.pipe()
    os.close(reader)
    done = subprocess.run(
        [*RUN, "judge", *map(str, VISITS), "--json"],
        stdout=writer, stderr=subprocess.PIPE, check=False,
    )  # fmt: skip
    os.close(writer)
    assert (done.returncode, done.stderr) == (0, b"")
