"""What the meters should read on a build, what they did read, and what is likeliest wrong."""
