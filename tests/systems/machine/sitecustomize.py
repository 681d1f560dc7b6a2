"""Python imports this before anything else, in every process of a command that `tests.systems.machines.run` starts."""

import os

if os.environ.get("MACHINE"):
    from tests.systems.lacking import become

    become(os.environ["MACHINE"])
