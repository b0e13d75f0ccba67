"""Questions and what became of them: kinds, personal numbers, slips, marking, the answer log."""
