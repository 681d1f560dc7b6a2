"""An author's Markdown, read in one way: cautions, claims and pages see the same paragraphs, links and marks."""
