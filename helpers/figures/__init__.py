"""Pictures and their alternative texts; computes no physics and knows no question."""
