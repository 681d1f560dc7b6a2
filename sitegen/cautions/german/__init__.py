"""The vocabularies of the cautions in German."""
