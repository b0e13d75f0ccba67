"""Solutions built from lessons and bank, and what every notebook has to keep to."""
