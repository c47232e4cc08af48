"""The only door to the recogniser: sound to utterances, utterances to words, words to the lines that they may be of."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from scriptkit.model.recording import TimedWord, Utterance
from scriptkit.reading.recordings import language
from scriptkit.reading.recordings.opening import Unreadable

MISSING = (
    "it is sound, and the part that listens to sound is not installed. Install it with "
    "pip install 'scriptkit[take]', or name captions of it (WebVTT, SRT) or a recogniser's JSON"
)
COMMON_WORDS = 1000
LONGEST = 20.0  # seconds of an utterance; a longer one is cut, so that no speaker without a pause fills the memory
FRAMES = 100  # a second
PAUSE, SPEECH = 0.3, 0.9  # seconds that are looked at, and the share of them by which speech begins and ends
# In one utterance each line may be said or left out, it may begin and end inside of a line, and between two lines
# anything may be said, sound by sound, at so small a chance that the lines come first.
SAID, LEFT_OUT, WITHIN, ENDS, SOUND = 0.9, 0.02, 0.01, 0.3, 1e-14
_SOUNDS = "AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH".split()
_OTHER_WAY = re.compile(r"\(\d+\)$")  # how a second pronunciation of a word is told

Step = tuple[int, int, float] | tuple[int, int, float, str]


class Recogniser:
    """Knows a script: the words of each of its lines. Words without a known pronunciation are passed over.

    Sound is 16-bit samples of one channel, `rate` of them a second.
    """

    def __init__(self, lines: Sequence[Sequence[str]], rate: int) -> None:
        self.rate = rate
        self._library = _library()
        try:
            # the best path is looked for in a graph of words, which the grammars below make endlessly large
            # a little noise, the same each time: in the nothing that an editor leaves between words, words drown
            self._decoder = self._library.Decoder(
                lm=None, samprate=rate, bestpath=False, dither=True, seed=1, loglevel="FATAL"
            )
            self.lines = [[word for word in line if self._decoder.lookup_word(word)] for line in lines]
            if not any(self.lines):
                raise Unreadable("the script has no word that the recogniser knows")
            self._learn()
        except (RuntimeError, ValueError, OSError):
            raise Unreadable(f"the part that listens to sound does not start; install it anew. {MISSING}") from None
        self._grammars = 0

    def _learn(self) -> None:
        """Make the model of the script, and a word of each single sound."""
        made = language.arpa(self.lines, self._common())
        with TemporaryDirectory() as folder:
            path = Path(folder) / "script.arpa"
            path.write_text(made, encoding="utf-8", newline="\n")
            model = self._library.NGramModel(self._decoder.config, self._decoder.logmath, str(path))
        self._decoder.add_lm("script", model)
        for sound in _SOUNDS:
            self._decoder.add_word(_word_of(sound), sound, update=False)
        self._decoder.activate_search("script")

    def _common(self) -> dict[str, float]:
        """The commonest words of English as the recogniser knows them, with their shares."""
        folder = Path(self._library.get_model_path("en-us"))
        model = self._library.NGramModel(self._decoder.config, self._decoder.logmath, str(folder / "en-us.lm.bin"))
        words = {line.split(" ", 1)[0] for line in (folder / "cmudict-en-us.dict").read_text("utf-8").splitlines()}
        plain = [word for word in words if word.replace("'", "").isalpha()]
        best = sorted(((model.prob([word]), word) for word in plain), reverse=True)[:COMMON_WORDS]
        shares = {word: self._decoder.logmath.exp(value) for value, word in best}
        whole = sum(shares.values())
        return {word: share / whole for word, share in shares.items()}

    def utterances(self, sound: Iterable[bytes]) -> Iterator[tuple[Utterance, bytes]]:
        """The stretches with speech in them, between pauses, and the sound of each."""
        ear = self._library.Endpointer(PAUSE, SPEECH, 0, self.rate)
        start, kept = None, bytearray()
        for frame in _framed(sound, ear.frame_bytes, self.rate):
            speech = ear.process(frame)
            if speech is None:
                continue
            start = ear.speech_start if start is None else start
            kept += speech
            if ear.in_speech and len(kept) < LONGEST * self.rate * 2:
                continue
            end = start + len(kept) / (self.rate * 2)
            yield Utterance(start, end), bytes(kept)
            start, kept = (end if ear.in_speech else None), bytearray()
        if kept and start is not None:
            yield Utterance(start, start + len(kept) / (self.rate * 2)), bytes(kept)

    def words(self, at: Utterance, sound: bytes) -> list[TimedWord]:
        """What was said, as far as it is of the script; the rest becomes common words that nobody may have said."""
        self._decoder.activate_search("script")
        return self._heard(at, sound)

    def placed(self, at: Utterance, sound: bytes, lines: Sequence[int]) -> list[TimedWord]:
        """Those words of some lines, in their order, that were said, with exact times."""
        lines = [number for number in lines if self.lines[number]]
        if not lines:
            return []
        self._grammars += 1
        name = f"lines {self._grammars}"
        self._decoder.add_fsg(
            name, self._decoder.create_fsg(name, 0, 1, _steps([self.lines[number] for number in lines]))
        )
        self._decoder.activate_search(name)
        try:
            return self._heard(at, sound)
        finally:  # a search that is taken away while it is active brings the whole process down
            self._decoder.activate_search("script")
            self._decoder.remove_search(name)

    def _heard(self, at: Utterance, sound: bytes) -> list[TimedWord]:
        self._decoder.start_utt()
        self._decoder.process_raw(sound, full_utt=True)
        self._decoder.end_utt()
        found = []
        for one in self._decoder.seg() or ():
            word = _OTHER_WAY.sub("", one.word)
            if word[:1].isalpha():
                start, end = at.start + one.start_frame / FRAMES, at.start + (one.end_frame + 1) / FRAMES
                found.append(TimedWord(word, round(start, 3), round(end, 3), exact=True))
        return found


def demand() -> None:
    """Raise Unreadable with what to install where the recogniser is not there."""
    _library()


def _library() -> Any:
    try:
        import pocketsphinx
    except ImportError:
        raise Unreadable(MISSING) from None
    return pocketsphinx


def _word_of(sound: str) -> str:
    return f"+{sound.lower()}"


def _framed(sound: Iterable[bytes], size: int, rate: int) -> Iterator[bytes]:
    """Sound in frames of one size, and two seconds of silence behind it, by which the last utterance ends."""
    kept = b""
    for stretch in sound:
        kept += stretch
        whole = len(kept) - len(kept) % size
        for at in range(0, whole, size):
            yield kept[at : at + size]
        kept = kept[whole:]
    if kept:
        yield kept.ljust(size, b"\0")
    for _ in range(4 * rate // size):
        yield bytes(size)


def _steps(lines: Sequence[Sequence[str]]) -> list[Step]:
    """The ways through some lines: state, next state, chance, and the word if one is said. 0 begins, 1 ends."""
    made: list[Step] = [(0, 2, 0.5)]
    gap = 2  # before the first line
    for line in lines:
        behind = gap + len(line)
        for at, word in enumerate(line):
            made.append((gap + at, gap + at + 1, SAID, word))
        for state in range(gap + 1, behind):
            made += [(0, state, WITHIN), (state, 1, WITHIN)]
        made += [(gap, behind, LEFT_OUT), (gap, 1, ENDS), *_anything(gap)]
        if gap > 2:
            made.append((0, gap, 5 * WITHIN))
        gap = behind
    return [*made, (gap, 1, ENDS), *_anything(gap)]


def _anything(state: int) -> list[Step]:
    return [(state, state, SOUND, _word_of(sound)) for sound in _SOUNDS]
