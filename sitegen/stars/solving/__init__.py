"""Where a picture points: found from its stars, read from its header or its AVM, carried along, and drawn over it.

Reading order: solution.py (what is known of a picture), detection.py and solver.py (how it is found; evidence.py says when it is
believed, fitting.py, camera.py and lens.py what the stars say of the lens and leave open of the corners), headers.py and avm.py
(how it is read and written), transforms.py (what becomes of it when the picture is cropped, flipped or resized), grid.py and
placing.py (what is drawn over the picture).
"""
