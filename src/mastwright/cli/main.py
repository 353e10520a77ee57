"""The `mastwright` command: it parses, calls and prints; each command imports only what it needs."""

from __future__ import annotations

import argparse
import io
import json
import os
import sys
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, NoReturn

from mastwright import __version__

if TYPE_CHECKING:
    from mastwright.quantity import Problem

Command = Callable[[argparse.Namespace], int]

_BAD_INPUT = 2


class _Parser(argparse.ArgumentParser):
    """A parser whose complaints are told like any other bad input."""

    def error(self, message: str) -> NoReturn:
        """Refuse the arguments."""
        raise _WrongUsageError(self.format_usage(), message)


class _WrongUsageError(Exception):
    """Arguments that are no command of ours: how the command is used, and the complaint."""


def run(arguments: Sequence[str] | None = None) -> None:
    """Run the command line and leave with its exit status: 0 judged, 2 bad input."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):  # a pipe may be in an encoding that has no "≥"
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")
    status = main(sys.argv[1:] if arguments is None else arguments)
    try:
        sys.stdout.flush()
    except BrokenPipeError:  # the reader has gone: let the rest go nowhere
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    sys.exit(status)


def main(arguments: Sequence[str]) -> int:
    """Run one command.

    Parameters
    ----------
    arguments
        Without the program's name.

    Returns
    -------
    int
        0 if it was done, whatever the verdict; 2 if the input cannot be taken.
    """
    as_json = "--json" in arguments
    try:
        parser = _parser()
        if any(argument.endswith("=--") for argument in arguments):  # argparse would read it as a list
            parser.error("a value is needed after =, not --")
        chosen = parser.parse_args(arguments)
    except _WrongUsageError as wrong:
        usage, message = wrong.args
        return _refused([_problem("arguments", message)], usage, as_json=as_json)
    command: Command = chosen.command
    from mastwright.quantity import BadInput  # noqa: PLC0415  after --version, which needs no table

    try:
        return command(chosen)
    except BadInput as bad:
        problems = bad.problems
    except BrokenPipeError:  # the reader has gone
        return 0
    except OSError as error:
        right = f"a file or folder that can be used ({error.strerror or error})"
        problems = (_problem(str(error.filename or "file"), right),)
    return _refused(problems, as_json=as_json)


def _problem(field: str, expected: str) -> Problem:
    from mastwright.quantity import Problem  # noqa: PLC0415

    return Problem(field, "", expected)


def _refused(problems: Sequence[Problem], usage: str = "", *, as_json: bool) -> int:
    if as_json:
        told = [
            {"field": p.field, "line": p.line, "given": p.given, "expected": p.expected} for p in problems
        ]
        print(json.dumps({"problems": told}, ensure_ascii=False, indent=2))
    else:
        print(usage, *(f"{problem}\n" for problem in problems), sep="", end="", file=sys.stderr)
    return _BAD_INPUT


def _parser() -> _Parser:
    parser = _Parser(
        prog="mastwright",
        description="Judge a lift truck's planned-maintenance visit and write its papers.",
    )
    parser.add_argument("--version", action="version", version=f"mastwright {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")
    _add_judge(commands)
    chain = commands.add_parser("chain", help="identify a lift chain, show its limits, judge readings of it")
    chain_commands = chain.add_subparsers(title="chain commands", required=True, metavar="COMMAND")
    _add_identify(chain_commands)
    _add_limits(chain_commands)
    _add_chain_judge(chain_commands)
    mast = commands.add_parser("mast", help="where the chains of a mast wear, and what pulls on them")
    mast_commands = mast.add_subparsers(title="mast commands", required=True, metavar="COMMAND")
    _add_mast_wear(mast_commands)
    _add_mast_state(mast_commands)
    return parser


def _common(parser: _Parser, units: str) -> None:
    parser.add_argument("--json", action="store_true", help="print JSON instead of text")
    parser.add_argument("--units", choices=("metric", "inch"), help=units)
    parser.add_argument("--lang", choices=("en", "es"), help="language of what is shown")


def _add_judge(commands: argparse._SubParsersAction[_Parser]) -> None:
    judge = commands.add_parser("judge", help="judge visits and write their papers")
    judge.add_argument("visits", nargs="+", metavar="VISIT.toml", help="a visit as written down at the truck")
    judge.add_argument("--out", metavar="DIR", help="write the papers there")
    judge.add_argument(
        "--limits", metavar="DIR", help="maker's and shop limits (default: limits/ beside the visit)"
    )
    judge.add_argument("--gauges", metavar="FILE", help="the shop's own instruments (TOML)")
    _common(judge, "units of what is shown (default: as the visit says)")
    judge.set_defaults(command=_judge)


def _add_identify(commands: argparse._SubParsersAction[_Parser]) -> None:
    identify = commands.add_parser("identify", help="which leaf chain is it, and how sure is that")
    identify.add_argument("--pitch", help="one pitch, pin centre to pin centre")
    identify.add_argument("--pitches", type=int, help="number of pitches of --length")
    identify.add_argument("--length", help="length over --pitches pitches")
    identify.add_argument("--plate-height", help="height of an unworn plate")
    identify.add_argument("--plate-thickness", help="thickness of one plate")
    identify.add_argument("--pin-diameter", help="pin diameter, at its head or a worn end")
    identify.add_argument("--lacing", help="plates in the outer and in the inner pitch, as 3x4")
    identify.add_argument("--marking", help="what is stamped on the plates or written on the certificate")
    identify.add_argument(
        "--instrument", default="calliper", help="what it was measured with (default: calliper)"
    )
    worn = identify.add_mutually_exclusive_group()
    worn.add_argument("--unworn", action="store_true", help="measured on links that never pass a sheave")
    worn.add_argument("--worn", action="store_true", help="measured on links that pass a sheave")
    _common(identify, "units of bare numbers and of what is shown")
    identify.set_defaults(command=_identify)


def _add_limits(commands: argparse._SubParsersAction[_Parser]) -> None:
    limits = commands.add_parser("limits", help="new and worn lengths of a chain: a card for the shop")
    limits.add_argument("designation", metavar="DESIGNATION", help="such as BL634 or LH1234")
    limits.add_argument("--pdf", metavar="FILE", help="write a one-page card to hang up")
    _common(limits, "units of what is shown")
    limits.set_defaults(command=_limits)


def _add_chain_judge(commands: argparse._SubParsersAction[_Parser]) -> None:
    judge = commands.add_parser("judge", help="judge readings of one strand or of a set")
    judge.add_argument("--designation", required=True, help="such as BL634 or LH1234")
    judge.add_argument("--pitches", type=int, help="even number of pitches measured over")
    judge.add_argument("--length", help="length over --pitches pitches, chain taut")
    judge.add_argument("--pitch", help="mean pitch by calliper over --pitches pitches (2 if not given)")
    judge.add_argument("--gauge", help="reading of a graduated gauge, in percent")
    judge.add_argument(
        "--passes", help="smallest leg of a pass/fail gauge that the chain has not reached, in percent"
    )
    judge.add_argument("--stops-at", help="largest leg that the chain has reached, in percent")
    judge.add_argument(
        "--span",
        action="append",
        default=[],
        metavar="STRAND:PITCHES:LENGTH",
        help="one of several spans, as left:16:'12 1/8 in'; repeat for each span and strand",
    )
    judge.add_argument("--first-length", help="length over --pitches pitches when the chain was fitted")
    judge.add_argument("--instrument", default="", help="rule, tape, calliper, graduated-gauge, leg-gauge")
    judge.add_argument("--slack", action="store_true", help="the chain was slack when it was measured")
    judge.add_argument("--discard-at", help="a stricter discard mark, in percent")
    _common(judge, "units of bare numbers and of what is shown")
    judge.set_defaults(command=_chain_judge)


def _add_mast_wear(commands: argparse._SubParsersAction[_Parser]) -> None:
    wear = commands.add_parser("wear", help="how often each joint bends, and which span to measure")
    _mast_options(wear)
    wear.add_argument("--moves", metavar="FILE.csv", help="from_height_mm,to_height_mm,load_kg,count")
    wear.add_argument("--duty", help="instead of --moves, in words: floor work, mixed, high racking")
    wear.add_argument("--cycles", help="how many storage cycles of --duty")
    wear.add_argument("--lift-height", help="highest rack of --duty")
    wear.add_argument("--hidden-pins", help="pins below the sheave that cannot be reached (default: 0)")
    wear.add_argument("--svg", metavar="FILE", help="write the chain paths with their wear as a drawing")
    wear.add_argument("--sharp", action="store_true", help="count a bend at once, not over one pitch")
    wear.add_argument("--lacing", help="plates in the outer and in the inner pitch, as 3x4: for elongation")
    wear.add_argument("--plate-thickness", help="thickness of one plate: for elongation")
    wear.add_argument("--pin-diameter", help="pin diameter: for pressure")
    wear.add_argument(
        "--reading",
        action="append",
        default=[],
        metavar="SET:FIRST-PIN:PITCHES:LENGTH",
        help="a length read after these moves, as carriage:1:16:'306.5 mm'; repeat for each",
    )
    wear.add_argument("--instrument", help="what is measured with (default: rule)")
    _common(wear, "units of bare numbers and of what is shown")
    wear.set_defaults(command=_mast_wear)


def _add_mast_state(commands: argparse._SubParsersAction[_Parser]) -> None:
    state = commands.add_parser("state", help="strokes, links on the sheaves and pulls at one height")
    _mast_options(state)
    state.add_argument("--height", help="fork height above lowered")
    _common(state, "units of bare numbers and of what is shown")
    state.set_defaults(command=_mast_state)


def _mast_options(parser: _Parser) -> None:
    parser.add_argument("mast_file", nargs="?", metavar="MAST.toml", help="options written down in a file")
    parser.add_argument("--arrangement", help="letter of the mast, A to E")
    parser.add_argument("--strands", help="strands of each chain set")
    parser.add_argument("--pitch", help="one pitch, pin centre to pin centre")
    parser.add_argument("--plate-height", help="height of an unworn plate (default: 0.95 of the pitch)")
    parser.add_argument("--sheave", help="running diameter of the sheave's rim (default: 5 pitches)")
    parser.add_argument("--pin-circle", help="instead of --sheave: diameter on which the pin centres run")
    parser.add_argument("--figure-eight", action="store_true", help="plates are waisted, not straight-edged")
    parser.add_argument("--free-lift", help="how far the carriage lifts before the frames move (default: 0)")
    parser.add_argument("--load-kg", help="on the forks")
    parser.add_argument("--carriage-kg", help="carriage with forks and attachment")
    parser.add_argument("--inner-kg", help="innermost mast frame, with the free-lift cylinder on it")
    parser.add_argument("--middle-kg", help="mast frame next outside it")
    parser.add_argument("--first-kg", help="outermost moving frame of a four-stage mast")


def _judge(chosen: argparse.Namespace) -> int:
    from mastwright.cli.judge_command import judge  # noqa: PLC0415

    return judge(chosen)


def _identify(chosen: argparse.Namespace) -> int:
    from mastwright.cli.identify_command import identify  # noqa: PLC0415

    return identify(chosen)


def _limits(chosen: argparse.Namespace) -> int:
    from mastwright.cli.limits_command import limits  # noqa: PLC0415

    return limits(chosen)


def _chain_judge(chosen: argparse.Namespace) -> int:
    from mastwright.cli.chain_judge_command import chain_judge  # noqa: PLC0415

    return chain_judge(chosen)


def _mast_wear(chosen: argparse.Namespace) -> int:
    from mastwright.cli.mast_wear_command import mast_wear  # noqa: PLC0415

    return mast_wear(chosen)


def _mast_state(chosen: argparse.Namespace) -> int:
    from mastwright.cli.mast_state_command import mast_state  # noqa: PLC0415

    return mast_state(chosen)
