"""Checks of a sponsor's terms: dates, length, place in the episode, form of the link, approval of the text."""

from __future__ import annotations

from collections.abc import Iterator

from scriptkit import times
from scriptkit.checking.rules import Found, check
from scriptkit.model import Facts, TimedSegment
from scriptkit.places import Place
from scriptkit.wording import is_web_address, quoted

CLOSE = 0.5  # seconds; a plan is no finer


def _timed(facts: Facts) -> list[tuple[Place, TimedSegment]]:
    """The sponsor's passages on the clock, and where each begins."""
    places = {one.segment: one.place for one in facts.passages}
    return [(places[one.id], one) for one in facts.timeline.segments if one.id in places]


@check("error", "publish")
def offer_out_of_date(facts: Facts) -> Iterator[Found]:
    """The episode is published before a sponsor's offer begins or after it has ended.

    Rule: ours; the dates are those of the outline, `publish:` against `valid:`.

    Bad:
        title: One
        publish: 2027-01-10
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., valid: [2026-01-01, 2026-12-31]}
    Good:
        title: One
        publish: 2026-03-02
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., valid: [2026-01-01, 2026-12-31]}
    """
    sponsor, day = facts.episode.sponsor, facts.episode.publish
    if not sponsor or len(sponsor.valid) != 2:
        return
    first, last = sponsor.valid
    place = sponsor.at.of("valid")
    if first[: len(last)] > last:
        yield (
            place,
            f"The offer begins on {first} and ends before that, on {last}.",
            "Write the first day, then the last.",
        )
    elif day and day < first[: len(day)]:
        yield place, f"The offer begins on {first}, and the episode is published on {day}.", _MOVE
    elif day and day[: len(last)] > last:
        yield place, f"The offer ends on {last}, and the episode is published on {day}.", _MOVE


_MOVE = "Ask the sponsor for other dates, change `publish:`, or take the offer out."


@check("note", "publish")
def offer_date_unknown(facts: Facts) -> Iterator[Found]:
    """A sponsor's offer has dates, and the outline has no day of publication to hold against them.

    Rule: ours; no date, no verdict.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., valid: [2026-01-01, 2026-12-31]}
    Good:
        title: One
        publish: 2026-03-02
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., valid: [2026-01-01, 2026-12-31]}
    """
    sponsor = facts.episode.sponsor
    if sponsor and sponsor.valid and not facts.episode.publish:
        yield (
            sponsor.at.of("valid"),
            "Whether the offer is still valid cannot be told: the outline has no day of publication.",
            "Add `publish:` with the day, such as `publish: 2026-03-02`.",
        )


@check("warning", "record")
def sponsor_length(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage is shorter or longer than agreed.

    The seconds are the plan's, at the pace of the outline; a recording may be off by some.

    Rule: ours; the seconds are those of the outline's `length:`.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., length: {least: 30s}}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., length: {least: 3s}}
    """
    length = facts.episode.sponsor.length if facts.episode.sponsor else None
    if length is None:
        return
    for place, one in _timed(facts):
        if length.least is not None and one.total < length.least - CLOSE:
            agreed, advice = f"at least {length.least:.0f} s", "Say more, or agree on less."
        elif length.most is not None and one.total > length.most + CLOSE:
            agreed, advice = f"at most {length.most:.0f} s", "Cut it, or agree on more."
        else:
            continue
        yield place, f"The sponsor's passage takes {one.total:.0f} s, and {agreed} were agreed.", advice


@check("warning", "record")
def sponsor_window(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage stands outside of the part of the episode that was agreed.

    It may not start before `after:` nor end behind `before:`, in time or as a share of the planned runtime.

    Rule: ours; the window is the outline's.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., window: {before: 20%}}
        order: [opening, hang, close, sponsor]
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., window: {after: 20%}}
        order: [opening, hang, close, sponsor]
    """
    window = facts.episode.sponsor.window if facts.episode.sponsor else None
    if window is None:
        return
    total = facts.timeline.total
    after = window.after.of(total) if window.after else None
    before = window.before.of(total) if window.before else None
    for place, one in _timed(facts):
        if after is not None and one.start < after - CLOSE:
            told = f"starts at {times.clock(one.start)}, and not before {times.clock(after)} was agreed"
        elif before is not None and one.start + one.total > before + CLOSE:
            told = f"ends at {times.clock(one.start + one.total)}, and by {times.clock(before)} was agreed"
        else:
            continue
        yield place, f"The sponsor's passage {told}.", "Move it in `order:`, or agree on another window."


@check("warning", "record")
def sponsor_link_form(facts: Facts) -> Iterator[Found]:
    """A sponsor's link is not an address that can be typed or clicked.

    Rule: ours, after RFC 3986: https, a host with a dot, no white space.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., link: the link in the notes}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid., link: https://example.org/hill}
    """
    sponsor = facts.episode.sponsor
    if sponsor and sponsor.link and not is_web_address(sponsor.link):
        yield (
            sponsor.at.of("link"),
            f"{quoted(sponsor.link)} is no address that can be typed or clicked.",
            "Write it as `https://example.org/hill`.",
        )


@check("error", "record")
def approval_void(facts: Facts) -> Iterator[Found]:
    """A sponsor approved another text than the one that is there.

    An approval holds for the words that were read. `hash:` under `approved:` is the fingerprint of the spoken text of
    the sponsor's passage; any word, figure or full stop changed gives another one, and the approval
    has to be asked for again. Case, line breaks and marks do not count.

    Rule: ours; the text approved is the text recorded.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor:
          name: Quennick Socks
          disclosure: Ad. Quennick Socks paid.
          approved: {hash: 0123456789ab, by: Q. N., on: 2026-02-20}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor:
          name: Quennick Socks
          disclosure: Ad. Quennick Socks paid.
          approved: {hash: 7c22fdda8605, by: Q. N., on: 2026-02-20}
        --- segments/sponsor.md
        Ad. Quennick Socks paid.
    """
    approved = facts.episode.sponsor.approved if facts.episode.sponsor else None
    if approved and approved.hash and facts.sponsor_hash and approved.hash.strip().lower() != facts.sponsor_hash:
        yield (
            approved.at.of("hash"),
            f"The approval is of another text: the text that is there now has the hash {facts.sponsor_hash}.",
            f"Send the passage to {approved.by or 'the sponsor'} again, and write the new hash when it is approved.",
        )


@check("note", "publish")
def not_approved(facts: Facts) -> Iterator[Found]:
    """A sponsor's passage is not approved yet, or was approved after the day of publication.

    Not every sponsor asks for it. Where one does, write `approved:` with the hash that this note tells, by whom and on
    which day; it is void as soon as the text changes.

    Rule: ours; the text approved is the text recorded.

    Bad:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor: {name: Quennick Socks, disclosure: Ad. Quennick Socks paid.}
    Good:
        title: One
        exercises: {hang: {name: Bar hang}}
        sponsor:
          name: Quennick Socks
          disclosure: Ad. Quennick Socks paid.
          approved: {hash: 7c22fdda8605, by: Q. N., on: 2026-02-20}
        --- segments/sponsor.md
        Ad. Quennick Socks paid.
    """
    sponsor = facts.episode.sponsor
    if not sponsor or not facts.sponsor_hash:
        return
    approved, day = sponsor.approved, facts.episode.publish
    if approved is None or not approved.hash:
        yield (
            approved.at.place if approved else sponsor.at.place,
            f"The sponsor's passage is not approved. Its text has the hash {facts.sponsor_hash}.",
            f"Once they agree, write `approved: {{hash: {facts.sponsor_hash}, by: WHO, on: DAY}}` under `sponsor:`.",
        )
    elif day and approved.on and approved.on > day:
        yield (
            approved.at.of("on"),
            f"The approval is of {approved.on}, after the day of publication, {day}.",
            "Correct one of the two dates.",
        )
