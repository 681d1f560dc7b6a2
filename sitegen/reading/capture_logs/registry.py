"""Every kind of capture log, and which file is of which. A new one is a file and a line here."""

from sitegen.reading.capture_logs import csv_log, ecsv_log, exif_log, fits_log
from sitegen.reading.capture_logs.log_problems import LogProblems
from sitegen.reading.capture_logs.reader import Reader
from sitegen.reading.capture_logs.request import LogReading, LogRequest

READERS: tuple[Reader, ...] = (
    csv_log.READER,
    ecsv_log.READER,
    fits_log.READER,
    exif_log.READER,
)

_BY_SUFFIX = {suffix: reader for reader in READERS for suffix in reader.suffixes}


def reader_of(name: str) -> Reader | None:
    """By the end of a file's name or path, in any case: `.fits.gz` before `.gz`."""
    folded = name.casefold().rpartition("/")[2]
    dot = folded.find(".")
    while dot >= 0:
        if (reader := _BY_SUFFIX.get(folded[dot:])) is not None:
            return reader
        dot = folded.find(".", dot + 1)
    return None


def is_log(name: str) -> bool:
    return reader_of(name) is not None


def read_log(request: LogRequest) -> LogReading:
    """One log file, by the reader its name asks for. Never raises for what a file can hold."""
    reader = reader_of(request.source)
    if reader is not None:
        return reader.read(request)
    problems = LogProblems(request.shown_path)
    problems.error("is no kind of log known here", f"known: {' '.join(sorted(_BY_SUFFIX))}")
    return LogReading(problems=problems.all())
