"""The commands. Each reads, works out, and prints or writes; what they print is made in terminal and rendering."""

import gc
import os
import sys
from enum import Enum
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


class StageName(str, Enum):
    """By when something has to be right."""

    draft = "draft"
    record = "record"
    publish = "publish"


class TextFormat(str, Enum):
    """How an answer is written."""

    text = "text"
    json = "json"


class TableFormat(str, Enum):
    """How a table is written."""

    text = "text"
    json = "json"
    csv = "csv"


class SchemaName(str, Enum):
    """The files that have a schema."""

    outline = "outline"
    register = "register"
    channel = "channel"


Episode = Annotated[Path, typer.Argument(help="The episode's folder; the current one if left out.", show_default=False)]
Stage = Annotated[StageName, typer.Option(help="What has to be right by now.")]
Strict = Annotated[bool, typer.Option("--strict", help="Warnings count as errors for the exit status.")]
Format = Annotated[TextFormat, typer.Option(help="For a person or for a program.")]
SheetFormat = Annotated[TableFormat, typer.Option(help="For a person, a program, a spreadsheet.")]
Output = Annotated[Path | None, typer.Option(help="Write into this file instead of printing.", show_default=False)]


@app.command()
def new(
    folder: Annotated[Path, typer.Argument(help="The folder to make.", show_default=False)],
    sample: Annotated[bool, typer.Option("--sample", help="Copy the sample episode instead of a small start.")] = False,
) -> None:
    """An episode to start from."""
    from scriptkit import starting

    trouble = starting.start(folder, sample)
    if trouble:
        session.fail(trouble)
    session.say(f"{folder} is ready. Next: scriptkit check {folder}\n".encode())


@app.command()
def draft(episode: Episode = Path()) -> None:
    """Write first-draft text into segments/ where none is yet."""
    work = session.Session(episode)
    work.readable("text", None)
    from scriptkit import starting

    written, trouble = starting.write_drafts(work.material.folders.episode, work.build.drafts(work.material))
    for name in written:
        session.say(f"wrote {name}\n".encode())
    if trouble:
        session.fail(trouble)
    session.say(
        b"Nothing to write: every segment has a text.\n"
        if not written
        else f"{len(written)} texts. Read them aloud, then make them yours.\n".encode()
    )


@app.command()
def check(
    episode: Episode = Path(),
    stage: Stage = StageName.record,
    strict: Strict = False,
    format: Format = TextFormat.text,
    output: Output = None,
) -> None:
    """Show what is wrong, most urgent first."""
    work = session.Session(episode, stage.value)
    work.give(work.findings(format.value), output)
    raise typer.Exit(work.status(strict))


@app.command()
def claims(episode: Episode = Path(), format: SheetFormat = TableFormat.text, output: Output = None) -> None:  # noqa: A002
    """Show every spoken sentence with its kind, what gave it away, and its sources."""
    work = session.Session(episode)
    facts = work.readable(format.value, output)
    from scriptkit.rendering import rows, sheets

    if format.value == "text":
        from scriptkit import terminal

        work.give(terminal.claims(rows.sentences(facts), session.ink()).encode(), output)
    else:
        data = (
            sheets.claims_csv(facts)
            if format.value == "csv"
            else sheets.to_json({"episode": work.name, "sentences": rows.sentences(facts)})
        )
        work.give(data, output)
    raise typer.Exit(work.status())


@app.command()
def runtime(
    episode: Episode = Path(),
    pace: Annotated[
        float | None,
        typer.Option(min=60, max=400, help="Words a minute, instead of the outline's.", show_default=False),
    ] = None,
    format: Format = TextFormat.text,  # noqa: A002
    output: Output = None,
) -> None:
    """Show seconds by segment, the running clock, and the whole against the target."""
    work = session.Session(episode, pace=pace)
    facts = work.readable(format.value, output)
    from scriptkit.rendering import rows, sheets

    row = rows.runtime(facts)
    if format.value == "text":
        from scriptkit import terminal

        work.give(terminal.runtime(row, session.ink()).encode(), output)
    else:
        work.give(sheets.to_json({"episode": work.name, **row}), output)
    raise typer.Exit(work.status())


@app.command()
def shots(episode: Episode = Path(), format: SheetFormat = TableFormat.text, output: Output = None) -> None:  # noqa: A002
    """Show the shot list in script order."""
    work = session.Session(episode)
    facts = work.readable(format.value, output)
    from scriptkit.rendering import rows, sheets

    if format.value == "text":
        from scriptkit import terminal

        work.give(terminal.shots(rows.shots(facts), session.ink()).encode(), output)
    else:
        work.give(sheets.shots_csv(facts) if format.value == "csv" else sheets.to_json(rows.shots(facts)), output)
    raise typer.Exit(work.status())


@app.command()
def build(
    episode: Episode = Path(),
    out: Annotated[
        Path | None, typer.Option(help="The folder to make; build/ in the episode if left out.", show_default=False)
    ] = None,
    stage: Stage = StageName.record,
    strict: Strict = False,
) -> None:
    """Write everything into build/."""
    work = session.Session(episode, stage.value)
    facts = work.readable("text", None)
    from scriptkit import writing
    from scriptkit.rendering import outputs, rows

    target = out or work.material.folders.episode / "build"
    try:
        writing.replace_folder(
            target, outputs.render(facts, work.found, stage.value, work.name), work.material.folders.episode
        )
    except (writing.Refused, OSError) as error:
        session.fail(session.why(error, target))
    counts = rows.summary(work.found)
    session.say(f"Wrote {len(outputs.OUTPUTS)} files into {target}; start with {target / 'index.html'}\n".encode())
    if work.status(strict):
        session.say(
            f"Open: {counts['errors']} errors, {counts['warnings']} warnings. `scriptkit check` shows them.\n".encode()
        )
    raise typer.Exit(work.status(strict))


@app.command()
def explain(
    name: Annotated[
        str, typer.Argument(help="The name of a finding; left out, all are listed.", show_default=False)
    ] = "",
) -> None:
    """Explain a finding, with a bad and a good example."""
    from scriptkit import explaining, terminal

    if not name:
        rows = [[kind.name, kind.severity, kind.stage] for kind in explaining.kinds().values()]
        session.say(terminal.table(["finding", "severity", "from stage"], rows, session.ink()).encode())
        return
    found = explaining.explained(name)
    if isinstance(found, str):
        session.fail(found)
    else:
        session.say(terminal.explained(*found, session.ink()).encode())


@app.command()
def schema(
    which: Annotated[SchemaName, typer.Argument(help="Of which file.")] = SchemaName.outline,
) -> None:
    """Print the JSON Schema of a file, for editors."""
    from scriptkit import build as working
    from scriptkit.rendering import sheets

    session.say(sheets.to_json(working.schema(which.value)))


def main() -> int:
    """Run the command line. A fault of scriptkit itself is one sentence, unless SCRIPTKIT_DEBUG is set."""
    # a run builds trees of some hundred thousand small objects and ends: looking for garbage among them is a sixth of its time
    gc.set_threshold(200_000, 20, 100)
    try:
        app()
    except SystemExit as ended:
        return int(ended.code or 0) if not isinstance(ended.code, str) else 2
    except BrokenPipeError:
        # whoever read our output has stopped; say nothing more, not even while closing
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except Exception as error:
        if os.environ.get("SCRIPTKIT_DEBUG"):
            raise
        sys.stderr.write(
            f"scriptkit has a fault of its own and stopped ({type(error).__name__}: {error}). Nothing of yours was changed.\n"
        )
        return 1
    return 0
