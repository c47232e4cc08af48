"""The pages: each is one sound file that asks for nothing, says what is open, and shows what the author wrote."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Callable, Mapping
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path

import pytest

from scriptkit import build
from scriptkit.rendering import outputs
from scriptkit.shipped import shipped

STILL = (  # without a script
    "index.html", "script.html", "shots.html", "claims.html", "grades.html", "sponsor.html",
    "graphics.html", "shoot.html",
)  # fmt: skip
PAGES = (*STILL, "prompter.html")
EVERY_PAGE = pytest.mark.parametrize("page", PAGES)
VOID = {"meta", "link", "br", "col", "input"}
Episode = Callable[[Mapping[str, str]], Path]

HOSTILE = {
    "outline.yaml": """
        title: "<script>alert(1)</script> \\u0007 رفع الكعب 🏋️ Donaudampfschifffahrtsgesellschaftskapitänsmütze"
        question: "</style><img src=x onerror=alert(1)>"
        exercises:
          raise:
            name: "<b>Raise</b> & \\"quotes\\" Donaudampfschifffahrtsgesellschaftskapitänsmützenmaschine"
            grade: B
            shots: [{size: CU, plane: side, of: "<i>heel</i>", kit: ["<u>step</u>"]}]
            claims:
              - {say: "It cures <b>pain</b> in 9 of 10 runners.", source: nowhere}
              - {say: "One survey asked 12 people.", source: bad}
        sources:
          bad: {title: "</title><script>x</script>", url: "javascript:alert(1)", year: 2020, invented: true}
    """
}
SMALL = {
    "outline.yaml": """
        title: One
        exercises:
          hang:
            name: Bar hang
            grade: A
            claims: [{say: Hang time rose by 9 seconds., source: mora}]
          row: {name: Row}
        promises: {end: what to drop}
        sources:
          mora: {title: Timed hangs, authors: [Mora A], year: 2022, doi: 10.5555/grip.22, n: 38, invented: true}
    """,
    "segments/hang.md": """
        [shot CU side fault: elbows bent; reps 2; at bar] Hang from the bar. [hold 6s: one slow hang]

        Hang time rose by 9 seconds. [from mora] I like it. [opinion] [promise end]

        [optional 2] Shake it out. [screen: Grade A]
    """,
}


def files_of(folder: Path, stage: str = "record") -> dict[str, str]:
    """Every file of a build of an episode folder, as text."""
    facts = build.with_day(build.work_out(build.read(folder)))
    made = outputs.render(outputs.Asked(facts, build.check(facts, stage), stage, folder.name))
    return {name: data.decode("utf-8-sig") for name, data in made.items() if not name.endswith(".xlsx")}


@pytest.fixture(scope="module")
def sample() -> dict[str, str]:
    return files_of(shipped("sample_episode"))


class Page(HTMLParser):
    """The elements of a page in order, its text, and what is not closed."""

    def __init__(self, source: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.text, self.faults, self._open = "", list[str](), list[str]()
        self.feed(source)
        self.faults += [f"<{tag}> is never closed" for tag in self._open]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self._open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        if not self._open or self._open.pop() != tag:
            self.faults.append(f"</{tag}> closes something else, line {self.getpos()[0]}")

    def handle_data(self, data: str) -> None:
        self.text += data if self._open[-1:] not in (["style"], ["script"]) else ""

    def all(self, name: str) -> list[str]:
        """Every value of an attribute."""
        return [str(attrs[name]) for _, attrs in self.elements if name in attrs]


def words(source: str) -> str:
    """The text of a page, its white space evened out."""
    return " ".join(Page(source).text.split())


@EVERY_PAGE
@pytest.mark.parametrize(
    "files", [HOSTILE, SMALL, {"outline.yaml": "title: Nothing yet\n"}], ids=["hostile", "small", "empty"]
)
def test_a_page_is_sound_html_with_ids_that_are_there_once(
    episode: Episode, page: str, files: Mapping[str, str]
) -> None:
    parsed = Page(files_of(episode(files))[page])
    ids = parsed.all("id")
    inner = [link[1:] for link in parsed.all("href") if link.startswith("#")]
    assert parsed.faults == []
    assert len(ids) == len(set(ids))
    assert set(inner) <= set(ids)


@EVERY_PAGE
def test_a_page_has_a_language_landmarks_a_skip_link_and_headings_in_order(sample: dict[str, str], page: str) -> None:
    elements = Page(sample[page]).elements
    tags = [tag for tag, _ in elements]
    levels = [int(tag[1]) for tag in tags if re.fullmatch("h[1-6]", tag)]
    assert ("html", {"lang": "en"}) in elements
    assert [tags.count(one) for one in ("header", "main", "footer", "h1")] == [1, 1, 1, 1]
    assert next(attrs for tag, attrs in elements if tag == "a")["href"] == "#main"
    assert levels[0] == 1
    assert all(later - sooner <= 1 for sooner, later in pairwise(levels))
    assert all("scope" in attrs for tag, attrs in elements if tag == "th")


@pytest.mark.parametrize("name", [*STILL, "runtime.svg"])
def test_a_page_asks_nobody_for_anything_and_runs_no_script(sample: dict[str, str], name: str) -> None:
    source = sample[name]
    assert re.findall(r"\ssrc=|@import|url\((?!#)|<script|\son\w+=", source) == []
    assert [tag for tag, _ in Page(source).elements if tag in {"script", "img", "iframe", "object"}] == []


@pytest.mark.parametrize("name", [*PAGES, "runtime.svg"])
def test_what_an_author_writes_is_never_markup(episode: Episode, name: str) -> None:
    parsed = Page(files_of(episode(HOSTILE))[name])
    assert {tag for tag, _ in parsed.elements}.isdisjoint({"img", "i", "u"})
    assert [tag for tag, _ in parsed.elements].count("script") == (name == "prompter.html")
    assert "<script>alert(1)</script>" in parsed.text
    assert [link for link in parsed.all("href") if link.startswith("javascript")] == []


def test_the_same_episode_gives_the_same_bytes(sample: dict[str, str]) -> None:
    assert files_of(shipped("sample_episode")) == sample


def test_each_open_finding_stands_once_in_the_script_and_the_way_in_leads_to_it(episode: Episode) -> None:
    files = files_of(episode(HOSTILE))
    there = [one for one in Page(files["script.html"]).all("id") if one.startswith("finding-")]
    links = [one for one in Page(files["index.html"]).all("href") if "#finding-" in one]
    assert links == [f"script.html#finding-{number}" for number in range(1, len(there) + 1)]
    assert sorted(there) == sorted(link.partition("#")[2] for link in links)
    assert len(there) > 2


def test_a_finding_stands_at_its_row_with_message_and_help(episode: Episode) -> None:
    source = files_of(episode({**SMALL, "segments/hang.md": "Hang from the bar. [banana]\n"}))["script.html"]
    row = next(row for row in source.split("<tr") if "Hang from the bar." in row)
    assert "[banana]" in row
    assert "Error" in words("<p>" + row[row.index('<ol class="findings') :])
    assert "segments/hang.md, line 1" in row


def test_the_way_in_tells_in_words_what_is_open_and_how_the_runtime_stands(episode: Episode) -> None:
    outline = "title: One\nbanana: 1\nruntime: {target: '9:00'}\nexercises: {hang: {name: Bar hang, grade: A}}\n"
    files = {"outline.yaml": outline}
    text = words(files_of(episode(files))["index.html"])
    assert "1 error to mend" in text
    assert re.search(r"\d:\d\d, 8:\d\d under", text)
    assert "These checks are no legal or medical advice. Local rules and licensed practice come first." in text


def test_a_finding_that_protects_a_viewer_stays_in_sight_when_it_is_allowed(episode: Episode) -> None:
    outline = """
        title: One
        exercises:
          hang:
            name: Bar hang
            cautions: [elbow]  # allow: caution-not-spoken because the trailer says it
        cautions: {elbow: {line: Stop when your elbow hurts.}}
    """
    text = words(
        files_of(episode({"outline.yaml": outline, "segments/hang.md": "Hang on. [shot CU side: hands]\n"}))[
            "index.html"
        ]
    )
    told = text[text.index("Protects a viewer, and stays in sight") :]
    assert "Because the trailer says it" in told


def test_the_script_shows_what_is_seen_heard_and_waited_for(episode: Episode) -> None:
    source = files_of(episode(SMALL))["script.html"]
    text = words(source)
    for shown in (
        "CU side fault shown: elbows bent",
        "2 reps",
        "at bar",
        "hold 6 s: one slow hang",
        "I like it. opinion",
        "promise: end",
        "optional 2: may be cut",
        "Grade A",
        "drafted from the outline",
        "source [1]",
        "[1]Mora A (2022). Timed hangs. 10.5555/grip.22. n = 38; mora; invented, not a real study",
    ):
        assert shown in text
    assert '<a class="cite" href="#source-1">' in source


def test_the_plain_script_says_the_same_without_markup(episode: Episode) -> None:
    text = files_of(episode(SMALL))["script.md"]
    for line in (
        "# One",
        "Hang from the bar. *(hold 6 s: one slow hang)*",
        "Hang time rose by 9 seconds. [1]",
        "I like it. *(opinion)* *(promise: end)*",
    ):
        assert line in text.splitlines()
    assert re.search(r"^> Shot \d, set-up [A-Z], CU side fault shown: elbows bent", text, re.MULTILINE)
    assert "\n\n\n" not in text


def test_the_shot_list_has_a_box_to_tick_for_each_shot(episode: Episode) -> None:
    parsed = Page(files_of(episode(SMALL))["shots.html"])
    labels = [attrs["aria-label"] for tag, attrs in parsed.elements if tag == "input"]
    assert labels == [f"Shot {number} done" for number in range(1, len(labels) + 1)]
    assert len(labels) > 2


def test_the_runtime_picture_stands_alone_and_can_be_read_without_seeing_it(episode: Episode) -> None:
    root = ET.fromstring(files_of(episode(HOSTILE))["runtime.svg"])  # noqa: S314 - our own file
    space = "{http://www.w3.org/2000/svg}"
    assert root.get("role") == "img"
    assert "Runtime of <script>" in (root.findtext(space + "title") or "")
    assert re.search(r"\d:\d\d as written, between \d:\d\d and \d:\d\d", root.findtext(space + "desc") or "")
    assert len(root.findall(f"{space}g/{space}title")) == len(root.findall(f"{space}g"))


def test_the_page_of_claims_shows_what_each_rests_on_and_how_it_stands(episode: Episode) -> None:
    verdict = "  - {sentence: Hang time rose by 9 seconds., verdict: verified, note: so it says, initials: QN}\n"
    gone = "  - {sentence: Hang from a rail., verdict: changed, initials: QN}\n"
    source = files_of(episode({**SMALL, "verdicts.yaml": f"verdicts:\n{verdict}{gone}"}))["claims.html"]
    text = words(source)
    for shown in (
        "1 of 1 claim verified",
        "Hang time rose by 9 seconds. Claim, plain, numeric",
        "mora source [1]",
        "✓verified by QN",
        "so it says",
        "change asked for by QN: Hang from a rail.",
        "Nothing like it is said now.",
    ):
        assert shown in text
    assert '<a class="cite" href="#source-1">' in source


def test_the_way_in_tells_in_one_look_how_the_fact_check_stands(episode: Episode) -> None:
    kept = "verdicts:\n  - {sentence: Hang time rose by 9 seconds., verdict: verified, initials: QN}\n"
    source = files_of(episode({**SMALL, "verdicts.yaml": kept}))["index.html"]
    text = words(source)
    assert "The fact check 1 of 1 claim verified" in text
    assert re.search(r"\d claims? needs? a source, \d ha(s|ve) something open", text)
    assert '<a href="claims.html">The fact check</a>' in source


def test_the_page_of_claims_tells_a_fact_checker_what_to_write_where_and_what_its_words_mean(episode: Episode) -> None:
    text = words(files_of(episode(SMALL))["claims.html"])
    for shown in ("verified, changed, unsupported or no claim", "scriptkit claims --verdicts FILE", "evidence level"):
        assert shown in text
    rows = re.findall(r"line \d+row (\d+)", Page(files_of(episode(SMALL))["claims.html"]).text)
    assert [int(one) for one in rows] == list(range(2, len(rows) + 2))


def test_what_is_wrong_with_a_source_stands_at_its_reference(episode: Episode) -> None:
    outline = SMALL["outline.yaml"].replace("n: 38,", "n: 38, status: retracted,")
    source = files_of(episode({**SMALL, "outline.yaml": outline}))["claims.html"]
    assert "is retracted" in words("<p>" + source[source.index('id="source-1"') :])


def test_an_episode_without_a_claim_says_that_there_is_nothing_to_verify(episode: Episode) -> None:
    text = words(files_of(episode({"outline.yaml": "title: Nothing yet\n"}))["claims.html"])
    assert "No claim found" in text
    assert "No claim to verify" in text
