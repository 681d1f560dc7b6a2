"""Every key an author may write, described once: the reader, the editors' schemas and the page of keys are made from this."""
