"""What lies under content/ is what is regular, visible and inside it."""

import os
import unicodedata
from pathlib import Path

import pytest

from sitegen.reading.content_folder import walk_content


def laid(root: Path, *names: str) -> Path:
    for name in names:
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text("x", encoding="utf-8")
    return root


def test_hidden_and_special_files_are_absent(tmp_path: Path) -> None:
    """A pipe would block whoever reads it; a hidden file is the system's."""
    laid(tmp_path, "logs/a.csv", ".git/config", "logs/.a.csv.swp")
    os.mkfifo(tmp_path / "logs/pipe.csv")
    folder, problems = walk_content(tmp_path, "content")
    assert (folder.in_order, problems) == (["logs/a.csv"], [])


def test_links_out_and_in_circles_are_not_followed(tmp_path: Path) -> None:
    """A link to a file inside content/ is that file; every other link is refused."""
    laid(tmp_path, "outside/secret.csv", "content/logs/a.csv")
    content = tmp_path / "content"
    for link, to in {
        "logs/in.csv": "a.csv",
        "logs/out.csv": "../../outside/secret.csv",
        "logs/all": "..",
        "far": "../outside",
        "nil": "nil",
    }.items():
        (content / link).symlink_to(to)
    folder, _ = walk_content(content, "content")
    assert folder.in_order == ["logs/a.csv", "logs/in.csv"]
    assert folder.links_out == {"logs/out.csv", "logs/all", "far", "nil"}


def test_a_name_is_found_in_either_form_of_unicode(tmp_path: Path) -> None:
    """Some systems store 'é' as two characters; the author types one."""
    stored = unicodedata.normalize("NFD", "pictures/Andromède.png")
    laid(tmp_path, stored)
    folder, _ = walk_content(tmp_path, "content")
    assert folder.names == {unicodedata.normalize("NFC", stored): stored}


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read every folder: run the tests as another user")
def test_a_folder_that_cannot_be_read_is_a_problem(tmp_path: Path) -> None:
    """Named, while the rest is read."""
    laid(tmp_path, "logs/a.csv", "pictures/b.png")
    (tmp_path / "logs").chmod(0)
    try:
        folder, problems = walk_content(tmp_path, "content")
    finally:
        (tmp_path / "logs").chmod(0o755)
    assert folder.in_order == ["pictures/b.png"]
    assert [str(problem) for problem in problems] == ["content/logs:1:1: error: the folder cannot be read: Permission denied"]
