"""Tables, text logs and measures as people keep them -> what they say of frames. Doubt is asked about, never guessed away."""
