"""What a reader of a page sees."""

import re
from html import unescape


def words(html):
    """Return what a reader of the HTML sees, pictures left out, one blank between words."""
    text = re.sub(r"<style\b.*?</style>|<figure.*?</figure>|<svg.*?</svg>", " ", html, flags=re.S)
    text = re.sub(r"</?(p|li|ul|div|pre|table|tr|td|br)\b[^>]*>", " ", text)
    return " ".join(unescape(re.sub(r"<[^>]+>", "", text)).split())
