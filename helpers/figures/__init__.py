"""Pictures and what they say; computes no physics and knows no question."""
