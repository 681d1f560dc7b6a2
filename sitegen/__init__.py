"""A diary of astronomical imaging, computed from its capture logs and published as plain files."""

import os

__version__ = "0.1.0"

# The work is shared out by processes; threads inside small linear algebra only fight them for the cores (a ring's fit took
# six times the processor time with them on a busy machine). Whoever sets the variable is obeyed.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

from sitegen.processes import end_with_who_spawned_this

end_with_who_spawned_this()
