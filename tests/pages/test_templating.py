"""Templates are compiled once a process, and never shown in another text or language than their own."""

import tempfile
from pathlib import Path

import jinja2
import pytest

from sitegen.number_text import NumberText
from sitegen.pages import templating
from sitegen.pages.templating import environment
from sitegen.pages.words import Words


def shown(folder: Path, language: str, hour: str) -> str:
    words = Words(language, {"unit.h": hour, "unit.min": "min", "unit.s": "s", "greeting": "hello"})
    return environment([folder], words, NumberText(language, words)).get_template("one.html").render()


def test_a_template_is_compiled_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A rebuild that has seen its text before takes what was compiled; a word changed in it shows at once."""
    (tmp_path / "html").mkdir()
    template = tmp_path / "html/one.html"
    compiled: list[str] = []
    compile_it = jinja2.Environment.compile

    def counted(self: jinja2.Environment, source: str, *more: object) -> object:
        compiled.append(source)
        return compile_it(self, source, *more)  # type: ignore[call-overload]

    monkeypatch.setattr(jinja2.Environment, "compile", counted)
    template.write_text("<p>{{ say('greeting') }}, {{ 7200|duration }}</p>", "utf-8")
    first = [shown(tmp_path, "en", "h").replace("\u202f", " ") for _ in range(2)]
    template.write_text("<p>other</p>", "utf-8")
    assert [*first, shown(tmp_path, "en", "h")] == ["<p>hello, 2 h</p>", "<p>hello, 2 h</p>", "<p>other</p>"]
    assert compiled == ["<p>{{ say('greeting') }}, {{ 7200|duration }}</p>", "<p>other</p>"]


def test_the_next_process_takes_what_was_compiled(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """From this user's own temporary files, where the same code of the project made it; never from a folder others may write."""
    (tmp_path / "html").mkdir()
    (tmp_path / "html/one.html").write_text("{{ 7200|duration }}", "utf-8")
    compiled: list[str] = []
    compile_it = jinja2.Environment.compile
    counted = lambda self, source, *more: (compiled.append(source), compile_it(self, source, *more))[1]  # noqa: E731 # one call
    monkeypatch.setattr(jinja2.Environment, "compile", counted)
    (tmp_path / "own").mkdir(mode=0o700)
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "own"))
    words = Words("en", {"unit.h": "hours", "unit.min": "min", "unit.s": "s"})

    def times_compiled(made_by: str) -> int:
        templating._compiled.cache_clear()
        compiled.clear()
        text = environment([tmp_path], words, NumberText("en", words), made_by).get_template("one.html").render()
        assert text == "2\u202fhours"
        return len(compiled)

    assert [times_compiled(maker) for maker in ("one", "one", "another", "one")] == [1, 0, 1, 0]
    (kept,) = (tmp_path / "own").iterdir()
    assert kept.stat().st_mode & 0o077 == 0
    for bytecode in kept.iterdir():
        bytecode.write_bytes(b"damaged")
    assert times_compiled("one") == 1
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path / "none"))
    assert times_compiled("one") == 1


def test_constants_speak_their_own_language(tmp_path: Path) -> None:
    """What was worked out while compiling is not shown to a site of other words."""
    (tmp_path / "html").mkdir()
    (tmp_path / "html/one.html").write_text("{{ 7200|duration }}", "utf-8")
    assert [shown(tmp_path, language, hour)[-3:] for language, hour in (("en", "hr"), ("de", "St"))] == ["\u202fhr", "\u202fSt"]
