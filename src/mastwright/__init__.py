"""Judge a lift truck's planned-maintenance visit, and write its papers."""

__version__ = "0.1.0"
