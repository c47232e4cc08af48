"""The commands; each reads, works out, and prints or writes, and what they print is made elsewhere."""

import atexit
import gc
import os
import sys
from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from scriptkit import session

# without rich, `--help` and errors start in half the time
app = typer.Typer(
    name="scriptkit",
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    add_completion=False,
    no_args_is_help=True,
    help="From an episode outline to a checked, timed script and a shot list.",
)


class StageName(StrEnum):
    """By when something has to be right."""

    draft = "draft"
    record = "record"
    publish = "publish"


class TableFormat(StrEnum):
    """How a table is written."""

    text = "text"
    json = "json"
    csv = "csv"
    xlsx = "xlsx"


TextFormat = StrEnum("TextFormat", ("text", "json"))  # how an answer is written
SchemaName = StrEnum("SchemaName", ("outline", "register", "channel"))  # the files that have a schema
OrderName = StrEnum("OrderName", ("script", "shoot"))  # of shots
Episode = Annotated[
    Path,
    typer.Argument(help="The episode's folder; the current one if left out.", metavar="EPISODE", show_default=False),
]
Stage = Annotated[StageName, typer.Option(help="What has to be right by now.")]
Order = Annotated[OrderName, typer.Option(help="As they are seen, or as they are filmed, with the clock of the day.")]
Strict = Annotated[bool, typer.Option("--strict", help="Warnings count as errors for the exit status.")]
Format = Annotated[TextFormat, typer.Option("--format", help="For a person or for a program.")]
BookFormat = Annotated[TableFormat, typer.Option("--format", help="For a person, a program, a spreadsheet.")]
Verdicts = Annotated[
    Path | None,
    typer.Option(help="A ledger (CSV, XLSX) with verdicts filled in, to be taken in first.", show_default=False),
]
Output = Annotated[Path | None, typer.Option(help="Write into this file instead of printing.", show_default=False)]
Pace = Annotated[
    float | None, typer.Option(min=60, max=400, help="Words a minute, instead of the outline's.", show_default=False)
]
Fitted = Annotated[
    str | None,
    typer.Option("--fit", help="Find what to cut to this time: 9:30, 570s.", metavar="TIME", show_default=False),
]
Copy = Annotated[
    Path | None,
    typer.Option("--write", help="With --fit: make this folder, a copy without the cuts.", show_default=False),
]
Out = Annotated[
    Path | None, typer.Option(help="The folder to make; build/ in the episode if left out.", show_default=False)
]
Crlf = Annotated[bool, typer.Option("--crlf", help="End the lines of captions.srt in CR LF, for players that want it.")]
Folder = Annotated[Path, typer.Argument(help="The folder to make.", metavar="FOLDER", show_default=False)]
Sample = Annotated[bool, typer.Option("--sample", help="Copy the sample episode instead of a small start.")]
FindingName = Annotated[
    str, typer.Argument(help="The name of a finding; left out, all are listed.", metavar="NAME", show_default=False)
]
Taken = Annotated[Path, typer.Argument(help="The episode's folder.", metavar="EPISODE", show_default=False)]
Recorded = Annotated[
    list[Path] | None,
    typer.Argument(help="WebVTT, SRT, JSON with words, or WAV; several are one.", metavar="FILE", show_default=False),
]
Forget = Annotated[
    bool, typer.Option("--forget", help="Take the pace and the times of this episode out of what is kept.")
]
Which = Annotated[SchemaName, typer.Argument(help="Of which file: outline, register or channel.", metavar="FILE")]


@app.command()
def new(folder: Folder, sample: Sample = False) -> None:
    """Make an episode to start from."""
    from scriptkit import answers, starting, writing

    try:
        starting.start(folder, sample=sample)
    except (writing.Refused, OSError) as error:
        session.fail(session.why(error, folder))
    session.say(answers.started(folder))


@app.command()
def draft(episode: Episode = Path()) -> None:
    """Write first-draft text into segments/ where none is yet."""
    from scriptkit import starting, writing

    work = session.Session(episode)
    work.readable()
    folder = work.material.folders.episode
    try:
        for name in starting.write_drafts(folder, work.build.drafts(work.material)):
            session.say(f"Wrote {name}\n")
    except (writing.Refused, OSError) as error:
        session.fail(session.why(error, folder / "segments"))
    work.tell_open()
    session.say("Every segment has a text now. Read them aloud, and make them yours.\n")


@app.command()
def check(
    episode: Episode = Path(),
    stage: Stage = StageName.record,
    strict: Strict = False,
    fmt: Format = TextFormat.text,
    output: Output = None,
) -> None:
    """Show what is wrong, most urgent first."""
    work = session.Session(episode, stage.value)
    work.demand_folder(fmt.value)
    work.give(work.findings(fmt.value), output)
    sys.exit(work.status(strict=strict))


def _demand_file(fmt: TableFormat, output: Path | None, name: str) -> None:
    """End a command that would print a workbook on a terminal."""
    if fmt is TableFormat.xlsx and output is None and sys.stdout is not None and sys.stdout.isatty():
        session.fail(f"A workbook cannot be shown here. Name a file for it: --output {name}")


@app.command()
def claims(
    episode: Episode = Path(),
    verdicts: Verdicts = None,
    fmt: BookFormat = TableFormat.text,
    output: Output = None,
) -> None:
    """Show each spoken sentence: its kind, why, its sources; take verdicts in."""
    from scriptkit import answers

    work = session.Session(episode)
    facts = work.readable(fmt.value, output)
    _demand_file(fmt, output, "claims.xlsx")
    if verdicts is None:
        work.give(answers.claims(work, facts, fmt.value), output)
        work.end()
    work, answer, clean = answers.verdicts_taken(work, facts, verdicts, fmt.value)
    work.give(answer, output)
    work.end(clean=clean)


@app.command()
def runtime(
    episode: Episode = Path(),
    pace: Pace = None,
    fit: Fitted = None,
    write: Copy = None,
    fmt: Format = TextFormat.text,
    output: Output = None,
) -> None:
    """Show seconds by segment, the whole against the target, and what to cut."""
    from scriptkit import answers

    wanted = answers.time_to_fit(fit, write)
    work = session.Session(episode, pace=pace)
    facts = work.readable(fmt.value, output)
    fitted = None if wanted is None else answers.fitted(work, facts, wanted, pace, write)
    work.give(answers.runtime(work, facts, fmt.value, fitted), output)
    work.end(clean=fitted is None or fitted.reached)


@app.command()
def shots(
    episode: Episode = Path(),
    order: Order = OrderName.script,
    fmt: BookFormat = TableFormat.text,
    output: Output = None,
) -> None:
    """Show the shot list in script order, or in shooting order with the clock of the day."""
    from scriptkit import answers

    work = session.Session(episode)
    facts = work.readable(fmt.value, output)
    _demand_file(fmt, output, f"{'shoot' if order is OrderName.shoot else 'shots'}.xlsx")
    work.give((answers.shoot if order is OrderName.shoot else answers.shots)(work, facts, fmt.value), output)
    work.end()


@app.command()
def grades(episode: Episode = Path(), fmt: Format = TextFormat.text, output: Output = None) -> None:
    """Show how each grade comes about, and how firm it is."""
    from scriptkit import answers

    work = session.Session(episode, drawn=True)
    work.give(answers.grades(work, work.readable(fmt.value, output), fmt.value), output)
    work.end()


@app.command()
def take(
    episode: Taken,
    recording: Recorded = None,
    forget: Forget = False,
    fmt: Format = TextFormat.text,
    output: Output = None,
) -> None:
    """Hold a recording against the script: what was said, when, and what differs."""
    from scriptkit import answers

    work = session.Session(episode)
    facts = work.readable(fmt.value, output)
    if forget:
        session.say(answers.take_forgotten(work))
        return
    if not recording:
        session.fail("Name the recording: captions (WebVTT, SRT), a recogniser's JSON, or a WAV; several in order.")
    answer, clean = answers.take(work, facts, recording, fmt.value)
    work.give(answer, output)
    work.end(clean=clean)


@app.command()
def build(
    episode: Episode = Path(),
    out: Out = None,
    stage: Stage = StageName.record,
    strict: Strict = False,
    crlf: Crlf = False,
) -> None:
    """Write everything into build/."""
    from scriptkit import answers

    work = session.Session(episode, stage.value, drawn=True)
    session.say(answers.built(work, work.readable(), out or episode / "build", crlf=crlf))
    sys.exit(work.status(strict=strict))


@app.command()
def explain(name: FindingName = "") -> None:
    """Explain a finding, with a bad and a good example."""
    from scriptkit import explaining, terminal

    if not name:
        session.say(terminal.all_explained(explaining.summaries(), session.ink()))
        return
    found = explaining.explained(name)
    if isinstance(found, str):
        session.fail(found)
    session.say(terminal.explained(*found, session.ink()))


@app.command()
def schema(which: Which = SchemaName.outline) -> None:
    """Print the JSON Schema of a file, for editors."""
    from scriptkit import build as working
    from scriptkit.rendering import sheets

    session.say(sheets.to_json(working.schema(which.value)))


def main() -> int:
    """Run the command line. A fault of scriptkit itself is one sentence, unless SCRIPTKIT_DEBUG is set."""
    # a run makes some hundred thousand small objects and ends: looking for garbage among them is a sixth of its time,
    # and looking once more when Python shuts down a twelfth, unless they are set aside first
    gc.set_threshold(1_000_000, 20, 100)
    atexit.register(gc.freeze)
    try:
        app()
    except SystemExit as ended:
        return ended.code if isinstance(ended.code, int) else 2 * bool(ended.code)
    except Exception as error:
        if os.environ.get("SCRIPTKIT_DEBUG"):
            raise
        if isinstance(error, FileNotFoundError) and error.filename is None:
            session.tell("The folder you are in is not there any more. Change into another one and run it again.")
            return 2
        if isinstance(error, OSError) and error.filename is None:  # no file: what typer prints by itself, like help
            return session.unprinted(error)
        fault = f"{type(error).__name__}: {error}"
        session.tell(f"scriptkit has a fault of its own and stopped ({fault}). Nothing of yours was changed.")
        return 1
    return 0
