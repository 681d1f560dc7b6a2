"""The vocabularies of the cautions in English."""
