"""What a table leaves open, with the line that answers it."""

import shlex


class AskedFor(Exception):
    """Something of the whole table that only its author knows. `remedy` holds the option that says it."""

    def __init__(self, wrong: str, remedy: str) -> None:
        super().__init__(wrong)
        self.wrong = wrong
        self.remedy = remedy


def answer(key: str, heading: str, form: str = "") -> str:
    """The option that says it: `--columns 'date=Date:%d/%m/%Y'`."""
    return f"--columns {shlex.quote(f'{key}={heading}' + (f':{form}' if form else ''))}"


def either(*answers: str) -> str:
    return f"say which: {', or '.join(answers)}"
