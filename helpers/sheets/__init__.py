"""What is printed: questions on paper, their key, start sheets, and the sizing sheet.

Knows questions, sizing and pages; no hand-in and no widget.
"""
