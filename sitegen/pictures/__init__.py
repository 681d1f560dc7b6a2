"""PICTURES -> web sizes, tiles, embedded metadata. Works on single files; knows no diary.

Where to look: `source` what a file is · `opening` how its pixels are reached · `sizes` and `tiles` what is made
· `avm` and `embedding` what is carried inside.
"""
