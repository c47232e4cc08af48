"""Which files are opened, what text they give, and what is found where they cannot be read."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from scriptkit import build
from scriptkit.reading import files
from tests.reading.episodes import GOOD, findings, of_kind, one, seen

WITH_EVIDENCE = GOOD + "evidence: [evidence.yaml]\n"


def test_a_folder_without_an_outline_says_so(episode) -> None:
    folder = episode({"note.md": "x"})
    assert seen(folder) == [("missing-file", "outline.yaml", 1, 1)]
    assert not build.read(folder).readable


def test_a_missing_file_is_found_where_it_is_named_with_the_near_name(episode) -> None:
    folder = episode({"outline.yaml": GOOD + "evidence: [evidense.yaml]\n", "evidence.yaml": "sources: {}\n"})
    (found,) = of_kind(folder, "missing-file")
    assert (found.place, found.help) == (("outline.yaml", 3, 12), 'Did you mean "evidence.yaml"?')


@pytest.mark.parametrize(
    "text",
    [b"title: One\r\npase: 1\r\n", b"title: One\rpase: 1\r", b"\xef\xbb\xbftitle: One\npase: 1\n"],
    ids=["crlf", "cr", "bom"],
)
def test_line_ends_and_a_byte_order_mark_are_read_as_if_they_were_not_there(episode, text: bytes) -> None:
    folder = episode({"outline.yaml": text})
    assert build.read(folder).episode.title == "One"
    assert one(folder, "unknown-key") == ("outline.yaml", 2, 1)


@pytest.mark.parametrize("sign", ["\u2028", "\u2029", "\u0085"])
def test_lines_are_counted_as_editors_count_them(episode, sign: str) -> None:
    text = f"title: a{sign}b\nexercises: {{hang: {{name: Bar hang}}}} # a{sign}b\npase: 1\n"
    folder = episode({"outline.yaml": text, "segments/hang.md": f"a{sign}b\n\n`x`\n"})
    assert build.read(folder).episode.title.split() == ["a", "b"]
    assert seen(folder) == [("unknown-key", "outline.yaml", 3, 1), ("not-spoken", "segments/hang.md", 3, 1)]


@pytest.mark.parametrize(
    ("data", "place", "words"),
    [
        (GOOD.encode() + "question: caf\xe9\n".encode("latin-1"), (3, 14), "byte e9"),
        (b"title: One\r\nques\r\n\xe2\x82\n", (3, 1), "byte e2"),
        ("title: é\nquestion: ".encode() + b"\xc3(\n", (2, 11), "byte c3"),
        (GOOD.encode("utf-16"), (1, 1), "UTF-16"),
        (GOOD.encode("utf-16-le"), (1, 1), "UTF-16"),
    ],
    ids=["latin-1", "cut off", "stray byte", "utf-16", "utf-16 without mark"],
)
def test_a_file_that_is_not_utf8_is_found_at_its_first_wrong_byte(episode, data: bytes, place, words: str) -> None:
    (found,) = findings(episode({"outline.yaml": data}))
    assert (found.name, found.place[1:], words in found.message) == ("not-utf8", place, True)


@pytest.mark.parametrize("name", ["evidence.yaml", "segments/hang.md"])
def test_a_second_file_that_is_not_utf8_leaves_the_outline_readable(episode, name: str) -> None:
    folder = episode({"outline.yaml": WITH_EVIDENCE, "evidence.yaml": "sources: {}\n", name: b"ok\n \xff"})
    assert one(folder, "not-utf8") == (name, 2, 2)
    assert build.read(folder).readable


def test_characters_that_are_no_text_are_found_once_a_file_and_the_rest_is_read(episode) -> None:
    folder = episode(
        {"outline.yaml": GOOD + "question: a\x07b\x00c\npase: 1\n", "segments/hang.md": "I like\x01 it.\n\n\ufeff`x`\n"}
    )
    assert seen(folder) == [
        ("unreadable-character", "outline.yaml", 3, 12),
        ("unknown-key", "outline.yaml", 4, 1),
        ("unreadable-character", "segments/hang.md", 1, 7),
        ("not-spoken", "segments/hang.md", 3, 2),
    ]
    assert build.read(folder).episode.question == "a b c"
    assert ["1 more" in found.message for found in of_kind(folder, "unreadable-character")] == [True, True]


@pytest.mark.parametrize(
    "text", ["", "# only a comment\n", "---\n", "---\n---\n", "- a\n", "title\n", "'x'\n", "\ufeff", "~"]
)
def test_an_outline_without_keys_is_no_outline(episode, text: str) -> None:
    folder = episode({"outline.yaml": text.encode()})
    assert not build.read(folder).readable
    assert findings(folder) != []


@pytest.mark.parametrize("size", [files.MOST_BYTES, files.MOST_BYTES + 1])
def test_a_file_may_have_so_many_bytes_and_no_more(episode, size: int) -> None:
    folder = episode({"outline.yaml": GOOD.encode().ljust(size, b"\n")})
    assert build.read(folder).readable == (size == files.MOST_BYTES)
    assert [found.name for found in of_kind(folder, "file-too-large")] == ["file-too-large"] * (size > files.MOST_BYTES)


def test_a_text_too_long_to_speak_is_found(episode) -> None:
    folder = episode({"outline.yaml": GOOD, "segments/hang.md": "word " * 100_000})
    assert one(folder, "file-too-large") == ("segments/hang.md", 1, 1)


@pytest.mark.parametrize(
    "path",
    [
        "../../x.yaml",
        "/etc/passwd",
        "../../../../../../../etc/passwd",
        "a/../../../x.yaml",
        "~/../../../x",
        "//x/y.yaml",
    ],
)
def test_a_path_that_leads_out_is_refused_where_it_is_named(episode, path: str) -> None:
    folder = episode({"../channel.yaml": "name: Ours\n", "outline.yaml": f"{GOOD}evidence: ['{path}']\n"})
    (found,) = of_kind(folder, "path-outside")
    assert (found.place, f'"{path}"' in found.message) == (("outline.yaml", 3, 13), True)


def test_a_path_with_a_nul_is_refused(episode) -> None:
    folder = episode({"outline.yaml": GOOD + 'evidence: ["evidence\\0.yaml"]\n', "evidence.yaml": "sources: {}\n"})
    assert {found.name for found in findings(folder)} >= {"unreadable-character", "missing-file"}


def test_a_path_into_the_channel_folder_is_read(episode) -> None:
    files_ = {
        "../channel.yaml": "evidence: [library.yaml]\n",
        "../library.yaml": "sources: {a: {title: A}}\n",
        "outline.yaml": GOOD,
    }
    folder = episode(files_)
    assert (list(build.read(folder).register), seen(folder)) == (["a"], [])


def test_without_a_channel_the_folder_above_is_outside(episode) -> None:
    folder = episode({"../library.yaml": "sources: {}\n", "outline.yaml": GOOD + "evidence: [../library.yaml]\n"})
    assert one(folder, "path-outside") == ("outline.yaml", 3, 12)


@pytest.mark.parametrize("name", ["outline.yaml", "evidence.yaml", "segments/hang.md"])
def test_a_link_to_the_outside_is_refused(episode, tmp_path: Path, name: str) -> None:
    folder = episode({"outline.yaml": WITH_EVIDENCE, "evidence.yaml": "sources: {}\n", "segments/hang.md": "x"})
    secret = tmp_path / "secret"
    secret.write_text("title: Secret\n")
    (folder / name).unlink()
    (folder / name).symlink_to(secret)
    assert [found.name for found in of_kind(folder, "path-outside")] == ["path-outside"]
    assert "Secret" not in repr(build.read(folder).episode)


def test_a_segments_folder_that_is_a_link_to_the_outside_is_refused(episode, tmp_path: Path) -> None:
    folder = episode({"outline.yaml": GOOD})
    (tmp_path / "others").mkdir()
    (tmp_path / "others" / "hang.md").write_text("Secret.")
    (folder / "segments").symlink_to(tmp_path / "others")
    assert one(folder, "path-outside") == ("segments", 1, 1)
    assert build.read(folder).texts == {}


def test_a_link_that_goes_in_circles_is_a_finding(episode) -> None:
    folder = episode({"x": ""})
    (folder / "outline.yaml").symlink_to("outline.yaml")
    assert [found.name for found in findings(folder)] in (["unreadable-file"], ["missing-file"])


@pytest.mark.parametrize("name", ["outline.yaml", "evidence.yaml", "segments/hang.md", "../channel.yaml"])
@pytest.mark.parametrize("kind", ["folder", "fifo"])
def test_what_is_no_ordinary_file_is_not_opened(episode, name: str, kind: str) -> None:
    folder = episode({"outline.yaml": WITH_EVIDENCE, "evidence.yaml": "sources: {}\n", name: ""})
    (folder / name).unlink()
    if kind == "folder":
        (folder / name).mkdir()
    else:
        os.mkfifo(folder / name)  # opening it would wait for ever
    (found,) = of_kind(folder, "unreadable-file")
    assert found.place == (("outline.yaml", 3, 12) if name == "evidence.yaml" else (name, 1, 1))
    assert ("is a folder" if kind == "folder" else "no ordinary file") in found.message


def test_a_file_that_may_not_be_read_is_a_finding(episode, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = episode({"outline.yaml": WITH_EVIDENCE, "evidence.yaml": "sources: {}\n"})
    opened = Path.open

    def refusing(self: Path, *rest, **options):
        if self.name == "evidence.yaml":
            raise PermissionError(13, "Permission denied", str(self))
        return opened(self, *rest, **options)

    monkeypatch.setattr(Path, "open", refusing)  # for whoever runs the tests as root
    (found,) = of_kind(folder, "unreadable-file")
    assert (found.place, "Permission denied" in found.message) == (("outline.yaml", 3, 12), True)


def test_a_file_name_that_is_no_text_is_told_as_well_as_can_be(episode) -> None:
    folder = episode({"outline.yaml": GOOD, "segments/x.md": ""})
    try:
        (folder / "segments/x.md").rename(folder / "segments" / os.fsdecode(b"\xff.md"))
    except OSError:
        pytest.skip("this file system takes no such name")
    assert [found.place.file.encode() for found in findings(folder)] != []


def test_the_channel_file_may_stand_three_folders_up_and_no_further(episode) -> None:
    folder = episode({"a/b/c/d/outline.yaml": GOOD, "channel.yaml": "rate: 25\n"})
    assert build.read(folder / "a/b/c").folders.has_channel
    assert not build.read(folder / "a/b/c/d").folders.has_channel
