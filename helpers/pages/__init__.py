"""What a learner reads, set as pages: the same for card, mark book, sheet and paper.

Knows questions and figures, no widget; `helpers.widgets` brings pages to life.
"""
