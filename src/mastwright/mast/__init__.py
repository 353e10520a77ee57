"""The mast: how it is built and what hangs on its chains."""

from mastwright.mast.hung_mass import (
    Arrangement,
    MastMasses,
    SetLoading,
    arrangement,
    arrangements,
    hung_mass,
)

__all__ = [
    "Arrangement",
    "MastMasses",
    "SetLoading",
    "arrangement",
    "arrangements",
    "hung_mass",
]
