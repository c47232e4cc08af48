"""What `runtime` prints for a person: seconds by segment, where things fall, and what to cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scriptkit.listings import table
from scriptkit.rendering.rows import Row
from scriptkit.terminal import Ink, cut, many, visible, wrap
from scriptkit.times import clock

_PACE_FROM = {
    "stock": "the stock one: give yours as `pace:`, and the range narrows",
    "outline": "from the outline",
    "takes": "from the last takes of this channel",
    "channel": "from channel.yaml",
    "command": "from --pace",
}
_INDENT = "  "


def runtime(row: Row, ink: Ink) -> str:
    """Seconds by segment with the running clock, then the whole with its range against the target."""
    body = [
        [
            clock(one["start_s"]), one["id"], one["kind"], clock(one["total_s"]), _range(one),
            clock(one["silent_s"]) if one["silent_s"] else "", str(one["words"]),
        ]
        for one in row["segments"]
    ]  # fmt: skip
    head = ["start", "segment", "kind", "length", "range", "silent", "words"]
    text = table(head, body, ink, right=(0, 3, 4, 5, 6), gives=1)
    whole = f"{ink('bold', clock(row['total_s']))} in all, {_range(row)} as the pace may vary{_target(row)}."
    pace = f"Pace: {row['pace']} words a minute, {_PACE_FROM[row['pace_from']]}."
    return "\n".join([text, whole, *wrap(pace, ink.columns)]) + "\n"


def recorded(row: Row) -> str:
    """How long the recording is, where there is one: all else here is the plan's."""
    length = row["recorded_s"]
    return "" if length is None else f"The recording took {clock(length)}; builds go by it.\n"


def _range(row: Row) -> str:
    return f"{clock(row['low_s'])}-{clock(row['high_s'])}"


def _target(row: Row) -> str:
    if row["target_s"] is None:
        return ""
    off = round(row["total_s"] - row["target_s"])
    return f"; target {clock(row['target_s'])}, " + (
        f"{clock(abs(off))} {'over' if off > 0 else 'under'}" if off else "met"
    )


def bearings(row: Row, ink: Ink) -> str:
    """Where the sponsor lands, the longest still picture, promises, and what takes long for its part."""
    lines = [*_sponsor(row), *_still(row), *_promises(row), *_proportion(row)]
    return "".join(f"{line}\n" for told in lines for line in wrap(told, ink.columns))


def _sponsor(row: Row) -> Iterator[str]:
    for one in [row["sponsor"], *row["more_of_sponsor"]] if row["sponsor"] else []:
        edges = [
            f"{word} {clock(one[key])}"
            for word, key in (("after", "after_s"), ("before", "before_s"))
            if one[key] is not None
        ]
        agreed = f"; agreed: {' and '.join(edges)}" if edges else ""
        yield f"Sponsor: {clock(one['start_s'])} to {clock(one['end_s'])}, from {one['share']:.0%} on{agreed}."


def _still(row: Row) -> Iterator[str]:
    one = row["longest_still"]
    if one:
        seen = f" ({one['seen']})" if one["seen"] else ""
        long = clock(one["duration_s"])
        yield f"Longest without a change of picture: {long} from {clock(one['start_s'])}, {one['segment']}{seen}."


def _promises(row: Row) -> Iterator[str]:
    for one in row["promises"]:
        made, paid = (", ".join(map(clock, one[key])) for key in ("made_s", "paid_s"))
        told = (
            f"made at {made}, kept at {paid}" if made and paid else f"made at {made}, not kept" if made else "not made"
        )
        yield f"Promise {one['id']}: {told}."


def _proportion(row: Row) -> Iterator[str]:
    for one in row["out_of_proportion"]:
        against = clock(one["against_s"])
        than = (
            f"more than twice the middle exercise ({against})"
            if one["against"] == "median"
            else f"longer than the longest exercise ({against})"
        )
        yield f"Out of proportion: {one['segment']} takes {clock(one['total_s'])}, {than}."


def fit(row: Row, ink: Ink) -> str:
    """What to cut for a time: what each cut saves and breaks, and what is left."""
    about, cuts = row["fit"], row["cuts"]
    wanted, before, after = (clock(about[key]) for key in ("wanted_s", "before_s", "after_s"))
    if about["reached"] and not cuts:
        return f"\nIt fits {wanted} as it is ({before}).\n" + _kept(about["may_not_go"], ink)
    title = f"To fit {wanted}, cut" if about["reached"] else f"It cannot be cut to {wanted}. What may go"
    text = f"\n{ink('bold', title)}\n" + (_cuts(cuts, ink) if cuts else "nothing\n")
    exact = "" if about["exact"] else " There were too many ways to try each; a better one may exist."
    told = f"{before} before, {after} after; {many(len(cuts), 'cut') or 'no cut'}.{exact}"
    if not about["reached"]:
        over, pace = clock(max(1.0, about["after_s"] - about["wanted_s"])), about["pace_needed"]
        told += f" That is {over} too long. "
        told += (
            f"At {pace} words a minute the rest would fit."
            if pace
            else "No pace up to 400 words a minute fits the rest."
        )
    lines = wrap(told, ink.columns) + [
        line for one in about["new_warnings"] for line in wrap(f"Then new in `check`: {one}", ink.columns)
    ]
    return text + "\n" + "\n".join(lines) + "\n" + _kept(about["may_not_go"], ink)


def _cuts(cuts: Sequence[Row], ink: Ink) -> str:
    lines = []
    for one in cuts:
        where = f"{one['file']}, line {one['line']}"
        head = f"{one['optional']}  {clock(one['saves_s']):>5}  {visible(where)}: "
        lines.append(cut(head + _what(one), ink.columns))
        lines += [ink("dim", line) for told in one["breaks"] for line in wrap(told, ink.columns, " " * 10)]
    return "\n".join(lines) + "\n"


def _what(one: Row) -> str:
    return visible(f"the segment {one['segment']}" if one["what"] == "segment" else f"“{one['words']}”")


def _kept(rows: Sequence[Row], ink: Ink) -> str:
    lines = ["", "Marked optional, and has to stay"] if rows else []
    for one in rows:
        lines += wrap(f"{one['file']}, line {one['line']}: {_what(one)}: {one['why']}.", ink.columns, _INDENT)
    return "".join(f"{line}\n" for line in lines)
