"""What becomes of a ledger that was filled in and sent back: each verdict is kept, or it is told why not."""

from __future__ import annotations

from collections.abc import Sequence

from scriptkit import keys
from scriptkit.computing import ruling
from scriptkit.model import VERDICTS, Segment, Sentence, Verdict
from scriptkit.model.returned import ReturnedRow, Settled, Told
from scriptkit.wording import did_you_mean, listed, quoted


def settle(rows: Sequence[ReturnedRow], segments: Sequence[Segment], kept: Sequence[Verdict]) -> Settled:
    """Take each row's verdict in, or say why not. `kept` are all verdicts kept so far, oldest first.

    Where another verdict on the same sentence is kept, the later date counts. Without one the kept verdict stays and
    the row is told as a conflict. What is the same as any kept verdict changes nothing.
    """
    desk = _Desk(segments, kept)
    for row in rows:
        desk.look_at(row)
    return desk.settled()


class _Desk:
    """Where the rows of one ledger are looked at, one after the other."""

    def __init__(self, segments: Sequence[Segment], kept: Sequence[Verdict]) -> None:
        self.said = ruling.first_of(segments)
        self.before = {_content(one) for one in kept}
        self.known = {one.key: one for one in kept}
        self.counts = ruling.latest(kept)
        self.places = ruling.Places([sentence.text for _, sentence in self.said.values()])
        self.already = 0
        self.refused: list[Told] = []
        self.by_key: dict[str, list[tuple[ReturnedRow, Verdict]]] = {}

    def look_at(self, row: ReturnedRow) -> None:
        """Sort a row by the sentence it is about, or refuse it."""
        if not any((row.verdict, row.note, row.troubles)):
            return
        trouble = self._strange(row) or _unfit(row)
        if trouble:
            self.refused.append(Told(row.number, trouble))
        elif row.verdict:
            one = self._verdict(row)
            if _content(one) in self.before:
                self.already += 1
            else:
                self.by_key.setdefault(row.key, []).append((row, one))

    def _strange(self, row: ReturnedRow) -> str:
        """Why it is not known which sentence a row is about; nothing where it is."""
        there = self.said.get(row.key)
        before = self.known.get(row.key)
        if there is None and before is None:
            return self._unknown(row)
        sentence = there[1].text if there else before.sentence if before else ""
        if not _same(row.sentence, sentence):
            return (
                f"its sentence was changed in the sheet, {quoted(row.sentence)}; the script says {quoted(sentence)}. "
                "Put what it should say into the note, and the sentence back as it was."
            )
        return ""

    def _unknown(self, row: ReturnedRow) -> str:
        if not row.key:
            return (
                f"it has no key, so it is not known which sentence {_verdict_on(row)} is about. Use the sheet's rows."
            )
        if not _same(row.sentence, key=row.key):
            return f"its key {quoted(row.key)} is that of no sentence of this episode. Is it another episode's sheet?"
        at = self.places.nearest(row.sentence)
        now = "" if at is None else _now(list(self.said.values())[at][1])
        return (
            f"{quoted(row.sentence)} is not in the script: it was changed or cut since the sheet was made, and "
            f"{_verdict_on(row)} is about the old words.{now}"
        )

    def _verdict(self, row: ReturnedRow) -> Verdict:
        there = self.said.get(row.key)
        before = self.known.get(row.key)
        sentence = there[1].text if there else before.sentence if before else row.sentence
        segment = there[0].id if there else before.segment if before else ""
        word = _word(row.verdict)
        return Verdict(row.key, str(sentence), str(segment), word, row.note, row.page, row.initials, row.date)

    def settled(self) -> Settled:
        """What became of all of them."""
        taken: list[tuple[int, Verdict]] = []
        newer: list[Told] = []
        conflicts: list[Told] = []
        for group in self.by_key.values():
            if len({one.verdict for _, one in group}) > 1:
                conflicts += _at_odds(group)
                continue
            first = {_content(one): (row.number, one) for row, one in reversed(group)}
            self.already += len(group) - len(first)
            for number, one in first.values():
                before = self.counts.get(one.key)
                if before and before.verdict != one.verdict and not _is_later(one, before):
                    conflicts.append(Told(number, _conflict(one, before)))
                    continue
                taken.append((number, one))
                if before and before.verdict != one.verdict:
                    newer.append(Told(number, _replaced(one, before)))
        in_order = tuple(one for _, one in sorted(taken, key=lambda pair: pair[0]))
        return Settled(in_order, self.already, tuple(newer), tuple(sorted(conflicts)), tuple(self.refused))


def _same(cell: str, sentence: str = "", key: str = "") -> bool:
    """Whether a cell holds a sentence, with or without the quote that keeps a spreadsheet from taking it as formula."""
    wanted = key or keys.of(sentence)
    return keys.of(cell) == wanted or (cell.startswith("'") and keys.of(cell[1:]) == wanted)


def _word(written: str) -> str:
    """The verdict that a cell holds, or nothing."""
    plain = " ".join(written.replace("-", " ").replace("_", " ").lower().split()).strip(".")
    return plain if plain in VERDICTS else ""


def _unfit(row: ReturnedRow) -> str:
    """Why a verdict cannot be taken as it stands; nothing where it can."""
    if not row.verdict and row.note:
        return f"it has a note and no verdict ({quoted(row.note, 50)}). Choose one: {listed(VERDICTS)}."
    if row.verdict and not _word(row.verdict):
        near = did_you_mean(row.verdict, VERDICTS)
        known = f"It can be: {listed(VERDICTS)}."
        return " ".join(
            part for part in (f"{quoted(row.verdict, 40)} is no verdict.", near, known, *row.troubles) if part
        )
    if row.troubles:
        return " ".join(row.troubles)
    if _word(row.verdict) == "no claim" and not row.note:
        return "it rules that the sentence is no claim and gives no reason. Say why in the note."
    return ""


def _verdict_on(row: ReturnedRow) -> str:
    return f"the verdict {quoted(row.verdict, 30)}" if row.verdict else "what it says"


def _now(sentence: Sentence) -> str:
    place = sentence.place
    return f" It says now, in {place.file}, line {place.line}: {quoted(sentence.text)}"


def _content(one: Verdict) -> tuple[str, ...]:
    """All that makes one verdict another one."""
    return one.key, one.verdict, one.note, one.page, one.initials, one.date


def _is_later(one: Verdict, other: Verdict) -> bool:
    return bool(one.date and other.date and one.date > other.date)


def _replaced(one: Verdict, before: Verdict) -> str:
    return f"{quoted(one.sentence)} was {ruling.told(before)}; {ruling.told(one)} is later and counts from now on."


def _conflict(one: Verdict, before: Verdict) -> str:
    return (
        f"{quoted(one.sentence)} is {ruling.told(before)}, and this row says {ruling.told(one)}, which is not of a "
        "later date. The kept verdict stays. To change it, give the row a later date, or delete the other one from "
        "verdicts.yaml."
    )


def _at_odds(group: Sequence[tuple[ReturnedRow, Verdict]]) -> list[Told]:
    """Two verdicts on one sentence in the same ledger: none of them is taken."""
    every = "; ".join(f"row {row.number}: {ruling.told(one)}" for row, one in group)
    why = f"{quoted(group[0][1].sentence)} has more than one verdict ({every}), so none was taken. Leave one."
    return [Told(row.number, why) for row, _ in group]
