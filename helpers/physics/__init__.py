"""What the parts do, in SI units; knows no notebook, no question and no picture."""
