"""How two strands on one carriage share the load when they are not equally long or not equally worn."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from mastwright.chains.toml_table import Figure, figure_of, read_rows_of, rows_in
from mastwright.quantity import BadInput, Problem

_TABLE = "pair.toml"


@dataclass(frozen=True)
class PairLoad:
    """What each strand of a pair pulls, in N; the first is the one whose extra length was given."""

    first: Fraction
    second: Fraction

    @property
    def heavier_share(self) -> Fraction:
        """The share of the load on the strand that pulls more, from 1/2 to 1."""
        return max(self.first, self.second) / (self.first + self.second)

    @property
    def one_is_slack(self) -> bool:
        """Whether one strand carries nothing."""
        return self.first == 0 or self.second == 0


@dataclass(frozen=True)
class StrandStiffness:
    """How stiff one strand is, in N/mm: a wide estimate, for want of a published figure.

    Parameters
    ----------
    low, likely, high
        With the softening by pins and eyes at each end of what is thought possible.
    softening
        The three figures behind it, with their sources.
    """

    low: Fraction
    likely: Fraction
    high: Fraction
    softening: tuple[Figure, Figure, Figure]


@dataclass(frozen=True)
class _Figures:
    modulus: Figure
    softening: tuple[Figure, Figure, Figure]


@cache
def _figures() -> _Figures:
    rows = read_rows_of(_TABLE)
    soft = {k: figure_of(r, f"{_TABLE} {k}") for k, r in rows_in(rows, "softening", _TABLE).items()}
    return _Figures(
        modulus=figure_of(rows["steel-modulus"], f"{_TABLE} steel-modulus"),
        softening=(soft["low"], soft["likely"], soft["high"]),
    )


def strand_stiffness(
    weak_plates: int, plate_thickness: Fraction, plate_height: Fraction, length: Fraction
) -> StrandStiffness:
    """Return how many newtons one millimetre of stretch of a strand takes.

    Parameters
    ----------
    weak_plates
        Plates in the row that has fewer.
    plate_thickness, plate_height, length
        mm; the length of the whole strand.

    Raises
    ------
    BadInput
        If a figure is not positive.

    **Source**: E·A/L of the plates (computed), softened by a judged share.

    Examples
    --------
    >>> stiff = strand_stiffness(3, Fraction("3.30"), Fraction("18.0975"), Fraction(3000))
    >>> round(stiff.likely)
    6121
    """
    _positive("plates", Fraction(weak_plates))
    _positive("plate thickness", plate_thickness)
    _positive("plate height", plate_height)
    _positive("strand length", length)
    figures = _figures()
    plates = figures.modulus.value * weak_plates * plate_thickness * plate_height / length
    low, likely, high = (plates * f.value for f in figures.softening)
    return StrandStiffness(low, likely, high, figures.softening)


def load_of_pair(pull: Fraction, longer_by: Fraction, stiffness: Fraction) -> PairLoad:
    """Return what each strand pulls when the first is longer than the second.

    The longer strand pulls less; the difference is the same at every lift height, since the whole strand
    is always in the line of pull, so it weighs most with no load on the forks.

    Parameters
    ----------
    pull
        Of both strands together, N.
    longer_by
        How much longer the first strand is than the second after anchors were set, mm; negative when it
        is shorter.
    stiffness
        Of one strand, N/mm.

    Raises
    ------
    BadInput
        If pull or stiffness is not positive.

    **Source**: two springs on a rigid carriage (computed).

    Examples
    --------
    >>> load_of_pair(Fraction(20000), Fraction(1, 2), Fraction(6000))
    PairLoad(first=Fraction(8500, 1), second=Fraction(11500, 1))
    """
    _positive("pull", pull)
    _positive("stiffness", stiffness)
    first = (pull - stiffness * longer_by) / 2
    first = min(pull, max(Fraction(0), first))
    return PairLoad(first, pull - first)


def mismatch_for_share(pull: Fraction, share: Fraction, stiffness: Fraction) -> Fraction:
    """Return the difference in length, in mm, at which the shorter strand carries this share of the load.

    A share of 1 gives the difference at which the longer strand goes slack.

    Parameters
    ----------
    pull
        Of both strands together, N.
    share
        Of the shorter strand, 1/2 to 1.
    stiffness
        Of one strand, N/mm.

    Raises
    ------
    BadInput
        If pull or stiffness is not positive, or the share is not in 1/2 to 1.

    **Source**: two springs on a rigid carriage (computed).
    """
    _positive("pull", pull)
    _positive("stiffness", stiffness)
    if not Fraction(1, 2) <= share <= 1:
        raise BadInput(Problem("share of the shorter strand", str(share), "a share from 1/2 to 1"))
    return (2 * share - 1) * pull / stiffness


def share_beside_worn(rate_ratio: Fraction) -> Fraction:
    """Return the share of the load that a new strand ends up with beside a worn one.

    Parameters
    ----------
    rate_ratio
        How many times faster the worn strand wears than the new one under the same pull, 1 or more.

    Raises
    ------
    BadInput
        If the ratio is below 1.

    **Source**: both strands must lengthen alike in the end: share r/(1+r) (computed).

    Examples
    --------
    >>> share_beside_worn(Fraction(3))
    Fraction(3, 4)
    """
    if rate_ratio < 1:
        raise BadInput(
            Problem("ratio of wear rates", str(rate_ratio), "1 or more: the old strand wears faster")
        )
    return rate_ratio / (1 + rate_ratio)


def settling_cycles(first_rate: Fraction, second_rate: Fraction, stiffness: Fraction) -> Fraction:
    """Return after how many lift cycles wear has taken away all but 1/e of a difference in length.

    Parameters
    ----------
    first_rate, second_rate
        Lengthening of each strand per cycle and per newton of pull, mm/N.
    stiffness
        Of one strand, N/mm.

    Raises
    ------
    BadInput
        If a figure is not positive.

    **Source**: the tighter strand wears faster and gives way: d(dL)/dN = c1·T1 - c2·T2 (computed).
    """
    _positive("wear rate of the first strand", first_rate)
    _positive("wear rate of the second strand", second_rate)
    _positive("stiffness", stiffness)
    return 2 / ((first_rate + second_rate) * stiffness)


def _positive(field: str, value: Fraction) -> None:
    if value <= 0:
        raise BadInput(Problem(field, f"{float(value):g}", "a figure above 0"))
