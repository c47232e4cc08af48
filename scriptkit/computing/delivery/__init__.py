"""What a listener trips over: figures, ear traps, unexplained words, repetition."""
