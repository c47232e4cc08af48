"""The order of work: what was read is computed and checked. The only module that knows all rooms."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

from scriptkit import model, times
from scriptkit.checking import rules
from scriptkit.computing import contrasting, coverage, shots, spoken_grades, timing
from scriptkit.computing.delivery import stumbles
from scriptkit.computing.grading import judging, scores
from scriptkit.computing.grading import scale as grade_scale
from scriptkit.computing.hearing import claims, listening
from scriptkit.computing.numbers import agreement
from scriptkit.computing.publishing import preparing
from scriptkit.computing.safeguards import cautions, guarding, phrases
from scriptkit.computing.shooting import loads
from scriptkit.computing.wordings import ladder
from scriptkit.computing.writing import running_order, script
from scriptkit.computing.writing.views import Views
from scriptkit.findings import Finding, at_stage, most_urgent_first
from scriptkit.material import RATINGS_AGAIN_FILE, VERDICTS_FILE, Material, files_read, read
from scriptkit.model.taking import KeptRecording
from scriptkit.reading import faults, outline, registers
from scriptkit.reading import words as word_lists

__all__ = [
    "RATINGS_AGAIN_FILE", "VERDICTS_FILE", "Material", "check", "drafts", "files_read", "read", "schema", "unreadable",
    "work_out",
]  # fmt: skip


class Laid(NamedTuple):
    """The script, its grades and cautions, and all of it laid on the clock."""

    grades: dict[str, model.Graded]
    cautions: dict[str, model.Caution]
    written: script.Written
    segments: tuple[model.Segment, ...]
    timeline: model.Timeline
    cards: tuple[model.Card, ...]


def work_out(material: Material, pace: float | None = None, *, drawn: bool = False) -> model.Facts:
    """Everything that follows from what was read; with `drawn`, how firm the grades are as well."""
    episode = material.episode
    laid = lay_out(material, pace)
    segments, cards, graded, scale = laid.segments, laid.cards, laid.grades, grade_scale.scale_words(episode)
    planned = _shots(segments, laid.timeline, cards, episode)
    facts = model.Facts(
        episode=episode,
        register=material.register,
        library=material.library,
        cautions=laid.cautions,
        grades=graded,
        scale=scale,
        criteria_shares=scores.shares(episode.checklist) if episode.checklist else {},
        bands=grade_scale.bands(episode),
        grade_steps=grade_scale.steps(episode),
        grade_cap=grade_scale.best_below_floor(episode),
        earnable=grade_scale.earnable(episode, graded),
        twice=running_order.twice(episode),
        segments=segments,
        timeline=laid.timeline,
        cards=cards,
        card_look=contrasting.look(episode.cards),
        shots=planned,
        coverage=coverage.find(segments, planned, episode.coverage),
        bare_faults=coverage.unlabelled(planned, cards, material.words.get("fault-labels", ())),
        day=_day(planned, episode) if episode.day else None,
        **_graded(material, laid, scale, drawn=drawn),
        **_fact_checked(material, laid),
        **_ruled(segments, material.verdicts),
        bad_marks=laid.written.bad_marks,
        tag_troubles=laid.written.troubles,
        signs=listening.signs(segments),
        word_counts=listening.word_counts(segments),
        texts={name: text.file.name for name, text in material.texts.items()},
        found=tuple(material.folders.findings),
        allows=material.allows,
        files=material.folders.files,
        limits=material.limits,
    )
    return facts._replace(publication=preparing.prepare(facts))


def _shots(
    segments: tuple[model.Segment, ...],
    timeline: model.Timeline,
    cards: tuple[model.Card, ...],
    episode: model.Episode,
) -> tuple[model.PlannedShot, ...]:
    """The shot list, with those marked that are heavy."""
    planned = shots.plan(segments, timeline, cards, str(episode.rate))
    return loads.judged(planned, episode.exercises, word_lists.load())


def _day(planned: tuple[model.PlannedShot, ...], episode: model.Episode) -> model.Day:
    """The day of the shoot."""
    from scriptkit.computing.shooting import day  # only what shows a shooting order needs it

    return day.plan(planned, episode)


def with_day(facts: model.Facts) -> model.Facts:
    """The facts with the day of the shoot, also where the outline says nothing about it."""
    return facts if facts.day else facts._replace(day=_day(facts.shots, facts.episode))


def _graded(material: Material, laid: Laid, scale: tuple[str, ...], *, drawn: bool) -> dict[str, Any]:
    """The facts about what is said of grades, how firm they are, and what a second rating makes of them."""
    spoken = spoken_grades.find(laid.segments, laid.cards, material.episode, scale)
    said = judging.Script(laid.segments, laid.cards, spoken)
    made = judging.judge(material.episode, laid.grades, said, material.words, material.again, drawn=drawn)
    return {"spoken_grades": spoken, **made._asdict()}


def lay_out(material: Material, pace: float | None) -> Laid:
    """The script as it will be spoken, and when."""
    episode = material.episode
    graded = scores.grades(episode)
    known = cautions.resolve(episode, word_lists.stock_cautions())
    steps, _ = running_order.planned(episode, material.texts)
    views = Views(episode, material.register, known, graded, [running_order.step_id(step) for step in steps])
    written = script.Writer(episode, material.texts, material.stock, views).write()
    at_pace = material.pace(pace)
    segments = written.segments
    timeline = timing.lay(segments, episode, at_pace)
    if written.sponsor_unplaced:
        segments = running_order.place_sponsor(segments, timeline.segments, episode)
        timeline = timing.lay(segments, episode, at_pace)
    return Laid(graded, known, written, segments, timeline, shots.cards(segments, timeline))


def _fact_checked(material: Material, laid: Laid) -> dict[str, Any]:
    """The facts about what the sentences claim, what that stands on, and what it may do to a viewer."""
    episode, register, words = material.episode, material.register, material.words
    segments, cues = laid.segments, claims.compile_cues(words)
    judgements, heard = listening.judge(segments, cues)
    weights = _weighed(segments, judgements, material)
    ladders = ladder.rungs(words, cues)
    worded = ladder.hold(segments, judgements, weights, register, ladders)
    plain = phrases.plain_sentences(segments)
    spoken_script = guarding.Script(
        episode=episode,
        register=register,
        grades=laid.grades,
        segments=segments,
        plain=plain,
        judgements=judgements,
        worded=worded,
        timeline=laid.timeline,
        cards=laid.cards,
        words=words,
    )
    return {
        "judgements": judgements,
        "heard": heard,
        "weights": weights,
        "worded": worded,
        "headlines": ladder.headlines(episode, segments, weights, ladders),
        "number_troubles": agreement.troubles(segments, judgements, register, words),
        "spoken_cautions": cautions.spoken(episode, segments, laid.cautions, plain, words),
        "ad_libs": _ad_libbed(material.recording, segments, cues),
        "unmended": _unmended(material.recording, segments),
        "stumbles": stumbles.find(segments, judgements, laid.timeline, laid.cards, episode, words, cues),
        **guarding.guard(spoken_script)._asdict(),
    }


def _ad_libbed(
    recording: KeptRecording | None, segments: tuple[model.Segment, ...], cues: claims.Cues
) -> tuple[model.AdLib, ...]:
    """The claims of the recording that the script has not."""
    if recording is None or not recording.ad_libs:
        return ()
    from scriptkit.computing.taking import ad_libs  # only an episode that was recorded needs it

    return ad_libs.find(recording, segments, cues)


def _unmended(recording: KeptRecording | None, segments: tuple[model.Segment, ...]) -> tuple[model.Unmended, ...]:
    """What the take told to mend and is as it was."""
    if recording is None or not recording.changes:
        return ()
    from scriptkit.computing.taking import unmended  # only an episode that was recorded needs it

    return unmended.find(recording, segments)


def _weighed(
    segments: tuple[model.Segment, ...], judgements: Mapping[str, tuple[model.Judgement, ...]], material: Material
) -> Mapping[str, tuple[model.Weight | None, ...]]:
    """What each sentence stands on."""
    if not any(sentence.links for segment in segments for sentence in segment.sentences):
        return {segment.id: (None,) * len(segment.sentences) for segment in segments}
    from scriptkit.computing.evidence import weighing  # only an episode that links to sources needs it

    return weighing.weigh(segments, judgements, material.register, material.episode, material.words)


def _ruled(segments: tuple[model.Segment, ...], kept: tuple[model.Verdict, ...]) -> dict[str, Any]:
    """The facts about what was ruled of the sentences."""
    if not kept:
        return {"verdicts": {}, "ruled": {}, "void_verdicts": ()}
    from scriptkit.computing import ruling  # only an episode that has verdicts needs it

    verdicts = ruling.latest(kept)
    return {
        "verdicts": verdicts,
        "ruled": ruling.ruled(segments, verdicts),
        "void_verdicts": ruling.void(segments, verdicts),
    }


def drafts(material: Material) -> dict[str, str]:
    """First-draft text of every segment that has none of its own, by id."""
    steps, _ = running_order.planned(material.episode, material.texts)
    order = [running_order.step_id(step) for step in steps]
    graded = scores.grades(material.episode)
    known = cautions.resolve(material.episode, word_lists.stock_cautions())
    given = (material.episode, material.register, known, graded, order)
    from scriptkit.computing.writing import drafting as drafting_room  # only `draft` needs it

    views, draft_views = (Views(*given, drafting=drafting) for drafting in (False, True))
    writer = script.Writer(material.episode, material.texts, material.stock, views, draft_views)
    writer.write()
    return {name: drafting_room.markdown(paragraphs) for name, paragraphs in writer.drafts.items() if paragraphs}


def schema(which: str) -> dict[str, object]:
    """The JSON Schema of `outline`, `register` or `channel`."""
    shape = {"outline": outline.OUTLINE, "register": registers.REGISTER, "channel": outline.CHANNEL}[which]
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": f"scriptkit {which}", **shape.schema()}


def as_built(facts: model.Facts, recording: KeptRecording | None = None) -> model.Facts:
    """The facts that a build shows: with captions, and all of it on the clock of a recording where there is one."""
    from scriptkit.computing import graphics
    from scriptkit.computing.captioning import cues, pieces

    rate = times.frame_rate(facts.episode.rate)
    whole = [facts.episode.sponsor.disclosure] if facts.episode.sponsor else []
    clock = None
    if recording:
        from scriptkit.computing.taking import clock as recorded  # only an episode that was recorded needs it

        clock = recorded.read(facts.segments, facts.timeline, recording)
    if clock is None:
        said = pieces.planned(facts.segments, facts.timeline)
    else:
        cards = shots.cards(clock.segments, clock.timeline)
        planned = _shots(clock.segments, clock.timeline, cards, facts.episode)
        facts = facts._replace(
            segments=clock.segments,
            timeline=clock.timeline,
            cards=cards,
            shots=planned,
            day=None,
            clocked=clock.clocked,
        )
        facts = facts._replace(publication=preparing.prepare(facts))
        said = list(clock.pieces)
    facts = with_day(facts)
    on_screen = graphics.find(
        graphics.Shown(
            facts.segments,
            facts.timeline,
            facts.cards,
            facts.judgements,
            facts.register,
            facts.spoken_grades,
            facts.passages,
        ),
        citations=facts.episode.cards.citations is not False,
    )
    return facts._replace(captions=cues.captions(said, rate, facts.timeline.total, whole), graphics=on_screen)


def check(facts: model.Facts, stage: str) -> list[Finding]:
    """All findings at a stage, most urgent first. Those an allow-comment covers are in the list, with its reason."""
    return most_urgent_first(at_stage(rules.run(facts, faults.KINDS), stage))


def unreadable(material: Material, stage: str) -> list[Finding]:
    """The findings of an episode whose outline cannot be read."""
    return most_urgent_first(at_stage(material.folders.findings, stage))
