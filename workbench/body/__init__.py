"""What is known of the wearer: measurements, how to take them, estimates, limits."""
