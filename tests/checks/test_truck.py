"""What the checks know of a truck: its group and its equipment."""

import pytest

from mastwright.checks import TruckFacts


@pytest.mark.parametrize(
    ("kind", "power", "group"),
    [
        ("counterbalance", "lpg", "engine-counterbalance"),
        ("counterbalance", "petrol", "engine-counterbalance"),
        ("counterbalance", "diesel", "engine-counterbalance"),
        ("counterbalance", "electric", "electric-counterbalance"),
        ("reach", "electric", "reach"),
        ("stacker", "electric", "stacker"),
        ("order-picker", "electric", "order-picker"),
        ("pallet", "electric", "pallet"),
    ],
)
def test_the_group_follows_from_kind_and_power(kind: str, power: str, group: str) -> None:
    """Only a counterbalance truck is parted by what drives it."""
    assert TruckFacts(kind, power).group == group


@pytest.mark.parametrize(
    ("facts", "equipment"),
    [
        (TruckFacts("reach", "electric"), {"electric", "lead-acid"}),
        (TruckFacts("reach", "electric", frozenset({"lithium"})), {"electric", "lithium"}),
        (TruckFacts("counterbalance", "lpg"), {"lpg", "cushion-tyres", "pneumatic-tyres"}),
        (
            TruckFacts("counterbalance", "lpg", frozenset({"cushion-tyres"})),
            {"lpg", "cushion-tyres"},
        ),
        (
            TruckFacts("counterbalance", "electric", frozenset({"pneumatic-tyres", "sideshift"})),
            {"electric", "lead-acid", "pneumatic-tyres", "sideshift"},
        ),
    ],
)
def test_what_was_not_said_hides_no_check(facts: TruckFacts, equipment: set[str]) -> None:
    """Fuel is equipment; unsaid cells are lead-acid; a counterbalance truck of unsaid tyres has either."""
    assert facts.equipment == equipment
