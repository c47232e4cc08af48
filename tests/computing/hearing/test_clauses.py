"""A sentence falls into clauses at its stops and joining words, and its cue phrases are found whole."""

from __future__ import annotations

from scriptkit.computing.hearing.clauses import Clause, compile_cues, take_apart, verb_form

CUES = compile_cues({"hedges": ("may", "as far as we know"), "comparatives": ("as far",), "verbs": ("stop", "carry")})


def clauses(sentence: str) -> list[str]:
    speech = take_apart(sentence, CUES)
    return [" ".join(speech.words[clause.start : clause.end]) for clause in speech.clauses]


def test_clauses_are_cut_at_stops_and_before_joining_words() -> None:
    assert clauses("Sit tall, breathe out and press, because it helps.") == [
        "sit tall",
        "breathe out",
        "and press",
        "because it helps",
    ]


def test_all_but_is_no_join() -> None:
    assert clauses("The effect all but disappears.") == ["the effect all but disappears"]


def test_a_hyphen_joins_and_a_dash_parts() -> None:
    assert clauses("Full-range work — or half") == ["full range work", "or half"]


def test_of_the_phrases_of_one_list_the_longest_counts_and_each_list_finds_its_own() -> None:
    speech = take_apart("As far as we know it may help.", CUES)
    assert speech.written(speech.found["hedges"]) == ("As far as we know", "may")
    assert speech.written(speech.found["comparatives"]) == ("As far",)


def test_cues_are_told_by_clause() -> None:
    speech = take_apart("It may, and it does.", CUES)
    assert speech.within("hedges", speech.clauses[0]) == [(1, 2)]
    assert speech.within("hedges", Clause(2, 5, "and")) == []


def test_curly_and_straight_apostrophes_are_one() -> None:
    assert take_apart("It doesn’t", CUES).words == take_apart("It doesn't", CUES).words


def test_the_forms_of_a_verb_lead_to_its_base() -> None:
    verbs = CUES.lists["verbs"]
    assert [verb_form(word, verbs) for word in ("stops", "stopped", "carries", "carrying", "bus")] == [
        ("stop", "s"),
        ("stop", "ed"),
        ("carry", "s"),
        ("carry", "ing"),
        ("", ""),
    ]


def test_than_before_a_number_is_no_comparison_and_any_other_is_found_where_it_stands() -> None:
    speech = take_apart("More than 12 hang, longer than before.", CUES)
    assert speech.found["than"] == ((5, 6),)
    assert [speech.within("than", clause) for clause in speech.clauses] == [[], [(5, 6)]]


def test_a_figure_is_known_by_the_word_behind_it() -> None:
    assert take_apart("161 beats, and 12 more.", CUES).counted == {1, 4}


def test_a_word_list_follows_up_to_its_last_word() -> None:
    speech = take_apart("It may help, and it lasts.", CUES)
    assert [speech.follows("hedges", i) for i in range(3)] == [True, True, False]
    assert not speech.follows("comparatives", 0)
