"""May this be planned: from parts to findings. Knows no exercise and no picture."""
