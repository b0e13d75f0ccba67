"""Many learners: hand-ins become a mark book that the instructor can read. Knows no notebook."""
