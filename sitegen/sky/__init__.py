"""Textbook astronomy on plain values: no diary, no files of the author, no clock, no network.

Light modules (place, night_time, request, answer, advice) may be imported anywhere; `engine` loads
ERFA and the Earth-rotation table and belongs where something has to be computed.
"""
