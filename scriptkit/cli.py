"""The commands. Each reads, works out, and prints or writes; what they print is made in terminal and rendering."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import click
import typer

if TYPE_CHECKING:
    from scriptkit import build as building
    from scriptkit import model
    from scriptkit.findings import Finding
    from scriptkit.terminal import Ink

# without rich, `--help` and errors start in half the time
app = typer.Typer(
    name="scriptkit",
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    add_completion=False,
    no_args_is_help=True,
    help="From an episode outline to a checked, timed script and a shot list.",
)

Episode = Annotated[Path, typer.Argument(help="The episode's folder; the current one if left out.", show_default=False)]
Stage = Annotated[str, typer.Option(click_type=click.Choice(["draft", "record", "publish"]), help="What has to be right by now.")]
Strict = Annotated[bool, typer.Option("--strict", help="Warnings count as errors for the exit status.")]
Format = Annotated[str, typer.Option(click_type=click.Choice(["text", "json"]), help="For a person or for a program.")]
SheetFormat = Annotated[str, typer.Option(click_type=click.Choice(["text", "json", "csv"]), help="For a person, a program, a spreadsheet.")]
Output = Annotated[Path | None, typer.Option(help="Write into this file instead of printing.", show_default=False)]


class _Work:
    """What a command works on: the material, the facts and findings; `facts` is None where the outline cannot be read."""

    def __init__(self, episode: Path, stage: str = "record", pace: float | None = None) -> None:
        from scriptkit import build

        self.build = build
        self.name = episode.resolve().name
        self.material: building.Material = build.read(episode)
        self.facts: model.Facts | None = build.work_out(self.material, pace) if self.material.readable else None
        self.found: list[Finding] = build.check(self.facts, stage) if self.facts else build.unreadable(self.material)

    def status(self, strict: bool = False) -> int:
        """The exit status."""
        if self.facts is None:
            return 2
        counted = ("error", "warning") if strict else ("error",)
        return int(any(one.severity in counted and not one.allowed for one in self.found))

    def readable(self, fmt: str, output: Path | None) -> model.Facts:
        """The facts; where there are none, what is wrong with the outline is printed and the command ends."""
        if self.facts is None:
            self.emit(self.findings(fmt), output)
            raise typer.Exit(2)
        return self.facts

    def findings(self, fmt: str) -> bytes:
        """The findings as text or JSON."""
        if fmt != "text":
            from scriptkit.rendering import sheets

            return sheets.to_json(sheets.check_json(self.found, self.name, self.facts))
        from scriptkit import terminal
        from scriptkit.rendering import rows

        counts = rows.summary(self.found)
        return terminal.findings(self.found, self.material.folders.files, _ink(), counts).encode("utf-8")

    def emit(self, data: bytes, output: Path | None) -> None:
        """Print, or write into the file that was named."""
        if output is None:
            _print(data)
            return
        from scriptkit import writing

        folders = self.material.folders
        guarded = [base / name for base in (folders.episode, folders.channel) for name in ("segments", "templates")]
        try:
            writing.write_file(output, data, self.build.files_read(self.material), guarded)
        except (writing.Refused, OSError) as error:
            _fail(_why(error, output))


@app.command()
def new(
    folder: Annotated[Path, typer.Argument(help="The folder to make.", show_default=False)],
    sample: Annotated[bool, typer.Option("--sample", help="Copy the sample episode instead of a small start.")] = False,
) -> None:
    """An episode to start from."""
    from scriptkit import starting

    trouble = starting.start(folder, sample)
    if trouble:
        _fail(trouble)
    _print(f"{folder} is ready. Next: scriptkit check {folder}\n".encode())


@app.command()
def draft(episode: Episode = Path()) -> None:
    """Write first-draft text into segments/ where none is yet."""
    work = _Work(episode)
    work.readable("text", None)
    from scriptkit import starting

    written, trouble = starting.write_drafts(work.material.folders.episode, work.build.drafts(work.material))
    for name in written:
        _print(f"wrote {name}\n".encode())
    if trouble:
        _fail(trouble)
    _print(b"Nothing to write: every segment has a text.\n" if not written else f"{len(written)} texts. Read them aloud, then make them yours.\n".encode())


@app.command()
def check(episode: Episode = Path(), stage: Stage = "record", strict: Strict = False, format: Format = "text", output: Output = None) -> None:  # noqa: A002
    """Show what is wrong, most urgent first."""
    work = _Work(episode, stage)
    work.emit(work.findings(format), output)
    raise typer.Exit(work.status(strict))


@app.command()
def claims(episode: Episode = Path(), format: SheetFormat = "text", output: Output = None) -> None:  # noqa: A002
    """Show every spoken sentence with its kind, what gave it away, and its sources."""
    work = _Work(episode)
    facts = work.readable(format, output)
    from scriptkit.rendering import rows, sheets

    if format == "text":
        from scriptkit import terminal

        work.emit(terminal.claims(rows.sentences(facts), _ink()).encode(), output)
    else:
        data = sheets.claims_csv(facts) if format == "csv" else sheets.to_json({"episode": work.name, "sentences": rows.sentences(facts)})
        work.emit(data, output)
    raise typer.Exit(work.status())


@app.command()
def runtime(
    episode: Episode = Path(),
    pace: Annotated[float | None, typer.Option(min=60, max=400, help="Words a minute, instead of the outline's.", show_default=False)] = None,
    format: Format = "text",  # noqa: A002
    output: Output = None,
) -> None:
    """Show seconds by segment, the running clock, and the whole against the target."""
    work = _Work(episode, pace=pace)
    facts = work.readable(format, output)
    from scriptkit.rendering import rows, sheets

    row = rows.runtime(facts)
    if format == "text":
        from scriptkit import terminal

        work.emit(terminal.runtime(row, _ink()).encode(), output)
    else:
        work.emit(sheets.to_json({"episode": work.name, **row}), output)
    raise typer.Exit(work.status())


@app.command()
def shots(episode: Episode = Path(), format: SheetFormat = "text", output: Output = None) -> None:  # noqa: A002
    """Show the shot list in script order."""
    work = _Work(episode)
    facts = work.readable(format, output)
    from scriptkit.rendering import rows, sheets

    if format == "text":
        from scriptkit import terminal

        work.emit(terminal.shots(rows.shots(facts), _ink()).encode(), output)
    else:
        work.emit(sheets.shots_csv(facts) if format == "csv" else sheets.to_json(rows.shots(facts)), output)
    raise typer.Exit(work.status())


@app.command()
def build(
    episode: Episode = Path(),
    out: Annotated[Path | None, typer.Option(help="The folder to make; build/ in the episode if left out.", show_default=False)] = None,
    stage: Stage = "record",
    strict: Strict = False,
) -> None:
    """Write everything into build/."""
    work = _Work(episode, stage)
    facts = work.readable("text", None)
    from scriptkit import writing
    from scriptkit.rendering import outputs, rows

    target = out or work.material.folders.episode / "build"
    try:
        writing.replace_folder(target, outputs.render(facts, work.found, stage, work.name), work.material.folders.episode)
    except (writing.Refused, OSError) as error:
        _fail(_why(error, target))
    counts = rows.summary(work.found)
    _print(f"Wrote {len(outputs.OUTPUTS)} files into {target}; start with {target / 'index.html'}\n".encode())
    if work.status(strict):
        _print(f"Open: {counts['errors']} errors, {counts['warnings']} warnings. `scriptkit check` shows them.\n".encode())
    raise typer.Exit(work.status(strict))


@app.command()
def explain(name: Annotated[str, typer.Argument(help="The name of a finding; left out, all are listed.", show_default=False)] = "") -> None:
    """Explain a finding, with a bad and a good example."""
    from scriptkit import explaining, terminal

    if not name:
        rows = [[kind.name, kind.severity, kind.stage] for kind in explaining.kinds().values()]
        _print(terminal.table(["finding", "severity", "from stage"], rows, _ink()).encode())
        return
    found = explaining.explained(name)
    if isinstance(found, str):
        _fail(found)
    else:
        _print(terminal.explained(*found, _ink()).encode())


@app.command()
def schema(
    which: Annotated[str, typer.Argument(click_type=click.Choice(["outline", "register", "channel"]), help="Of which file.")] = "outline",
) -> None:
    """Print the JSON Schema of a file, for editors."""
    from scriptkit import build as working
    from scriptkit.rendering import sheets

    _print(sheets.to_json(working.schema(which)))


def _why(error: Exception, path: Path) -> str:
    if isinstance(error, OSError):
        return f"{path} cannot be written: {error.strerror or error}."
    return str(error)


def _fail(message: str) -> Any:
    sys.stderr.write(message.rstrip() + "\n")
    raise typer.Exit(2)


def _print(data: bytes) -> None:
    sys.stdout.flush()
    sys.stdout.buffer.write(data)
    sys.stdout.buffer.flush()


def _ink() -> Ink:
    from scriptkit.terminal import Ink

    return Ink(sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb")


def main() -> int:
    """Run the command line. A fault of scriptkit itself is one sentence, unless SCRIPTKIT_DEBUG is set."""
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
        sys.stderr.write(f"scriptkit has a fault of its own and stopped ({type(error).__name__}: {error}). Nothing of yours was changed.\n")
        return 1
    return 0
