"""The task graph: rules, the tasks that they name, the store of what tasks made, and the manifest that says what is up to date.

The words are those of the literature on build systems (Mokhov, Mitchell, Peyton Jones, "Build systems à la carte", ICFP 2018).
"""
