"""Folders to every artifact of the site: each step made again only where what it is made from has changed.

Four steps, each fed by the digests of the one before: `entry_reading` (files to Entry), `entry_facts` (Entry to facts, card and
pictures), `entry_drawing` (to its pages), `lists` (all cards to the pages and feeds that gather them). `line` runs them.
"""
