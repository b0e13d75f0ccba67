"""Every number of the question banks a second time, one module a lesson.

RIGHT holds the right answers, SIMPLE the usual quick sums where the bank accepts them too, SLIPS
what each wrong turn gives, by its name alone; WITHIN is how well these ways agree with the bank.
All in SI units. Nothing here asks the physics of the project or the bank.
"""
