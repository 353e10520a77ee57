"""A judgement in words: English or Spanish, metric or inch."""

from mastwright.wording.amounts import amount_text, percent_text
from mastwright.wording.catalogue import LANGUAGES, say, word, words_of
from mastwright.wording.tell import tell
from mastwright.wording.teller import Document

__all__ = ["LANGUAGES", "Document", "amount_text", "percent_text", "say", "tell", "word", "words_of"]
