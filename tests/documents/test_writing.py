"""Files are written whole or not at all, whatever interrupts the writer."""

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
import textwrap
from collections.abc import Callable
from pathlib import Path

import pytest

from garboard.documents import write_whole
from garboard.errors import OutputRefused


def code_of(file: Path, data: bytes = b"new") -> str:
    with pytest.raises(OutputRefused) as caught:
        write_whole(file, data)
    [problem] = caught.value.problems
    assert problem.place.file == str(file)
    assert problem.found
    return problem.code


def names_in(folder: Path) -> list[str]:
    return [entry.name for entry in folder.iterdir()]


def python(code: str, *arguments: object) -> subprocess.Popen[bytes]:
    return subprocess.Popen([sys.executable, "-c", textwrap.dedent(code), *map(str, arguments)],
                            stdout=subprocess.PIPE, stderr=subprocess.PIPE)


def test_a_new_file_and_a_replaced_one(tmp_path: Path) -> None:
    file = tmp_path / "a.trail.json"
    write_whole(file, b"one")
    assert file.read_bytes() == b"one"
    write_whole(file, b"")
    assert file.read_bytes() == b""
    assert names_in(tmp_path) == ["a.trail.json"]


def test_permissions(tmp_path: Path) -> None:
    file, other = tmp_path / "a", tmp_path / "b"
    other.touch()
    write_whole(file, b"one")
    assert file.stat().st_mode == other.stat().st_mode
    file.chmod(0o640)
    write_whole(file, b"two")
    assert file.stat().st_mode & 0o777 == 0o640


def test_a_link_is_followed(tmp_path: Path) -> None:
    file, link = tmp_path / "a", tmp_path / "link"
    file.write_bytes(b"old")
    link.symlink_to(file)
    write_whole(link, b"new")
    assert link.is_symlink()
    assert file.read_bytes() == b"new"


def test_a_relative_name(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    write_whole(Path("a"), b"new")
    assert (tmp_path / "a").read_bytes() == b"new"


def test_names_of_the_longest_length(tmp_path: Path) -> None:
    write_whole(tmp_path / ("x" * 255), b"new")
    assert names_in(tmp_path) == ["x" * 255]
    assert code_of(tmp_path / ("x" * 256)) == "output-failed"
    assert code_of(tmp_path / "a\0b") == "output-failed"


def test_where_nothing_can_be_written(tmp_path: Path) -> None:
    file = tmp_path / "a"
    file.write_bytes(b"old")
    assert code_of(tmp_path) == "output-folder"
    assert code_of(tmp_path / "none" / "b") == "output-no-folder"
    assert code_of(file / "b") == "output-no-folder"
    assert code_of(Path("/dev/null")) == "output-special"
    assert Path("/dev/null").is_char_device()
    assert code_of(Path("/proc/x")) in ("output-failed", "output-forbidden")
    assert names_in(tmp_path) == ["a"]


def test_the_nearest_folder_is_named(tmp_path: Path) -> None:
    (tmp_path / "surveys").mkdir()
    with pytest.raises(OutputRefused) as caught:
        write_whole(tmp_path / "survey" / "a", b"")
    assert "surveys" in caught.value.problems[0].hint


@pytest.mark.parametrize(("number", "code"), [
    (errno.ENOSPC, "output-full"), (errno.EDQUOT, "output-full"), (errno.EIO, "output-failed"),
    (errno.EACCES, "output-forbidden"), (errno.EROFS, "output-forbidden")])
@pytest.mark.parametrize("step", ["open", "fsync", "replace"])
def test_any_step_that_fails_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
                                                   step: str, number: int, code: str) -> None:
    def fail(*_: object, **__: object) -> None:
        raise OSError(number, os.strerror(number))

    file = tmp_path / "a"
    file.write_bytes(b"old")
    home: object = Path if step == "replace" else os
    monkeypatch.setattr(home, step, fail)
    assert code_of(file) == code
    monkeypatch.undo()
    assert file.read_bytes() == b"old"
    assert names_in(tmp_path) == ["a"]


def test_a_full_disk(tmp_path: Path) -> None:
    file = tmp_path / "a"
    file.write_bytes(b"old")
    writer = python("""
        import resource, sys
        from pathlib import Path
        from garboard.documents import write_whole
        from garboard.errors import OutputRefused
        resource.setrlimit(resource.RLIMIT_FSIZE, (50_000, 50_000))
        try:
            write_whole(Path(sys.argv[1]), bytes(200_000))
        except OutputRefused as refused:
            print(refused.problems[0].code)
        """, file)
    out, _ = writer.communicate(timeout=60)
    assert out.decode().split() == ["output-full"]
    assert file.read_bytes() == b"old"
    assert names_in(tmp_path) == ["a"]


KILLED: dict[str, str] = {
    "while writing": "documents_writing.os.fsync = stop",
    "before the name": "Path.replace = stop",
}


@pytest.mark.parametrize("patch", KILLED.values(), ids=KILLED.keys())
@pytest.mark.parametrize("old", [None, b"old"], ids=["new", "replaced"])
def test_a_killed_writer(tmp_path: Path, patch: str, old: bytes | None) -> None:
    file = tmp_path / "a"
    if old is not None:
        file.write_bytes(old)
    writer = python(f"""
        import sys, time
        from pathlib import Path
        from garboard.documents import write_whole, writing as documents_writing
        def stop(*_):
            print("there", flush=True)
            time.sleep(600)
        {patch}
        write_whole(Path(sys.argv[1]), bytes(3_000_000))
        """, file)
    assert writer.stdout is not None
    assert writer.stdout.readline() == b"there\n"
    writer.send_signal(signal.SIGKILL)
    assert writer.wait(timeout=60) == -signal.SIGKILL
    writer.communicate()
    assert (file.read_bytes() if file.exists() else None) == old
    assert all(name == "a" or name.endswith(".part") for name in names_in(tmp_path))
    write_whole(file, b"new")
    assert file.read_bytes() == b"new"


def test_an_interrupted_writer_cleans_up(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupt(_: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupt)
    with pytest.raises(KeyboardInterrupt):
        write_whole(tmp_path / "a", b"new")
    assert names_in(tmp_path) == []


def test_writers_at_the_same_time(tmp_path: Path) -> None:
    file = tmp_path / "a"
    code = """
        import sys
        from pathlib import Path
        from garboard.documents import write_whole
        for _ in range(40):
            write_whole(Path(sys.argv[1]), sys.argv[2].encode() * 100_000)
        """
    writers = [python(code, file, sign) for sign in "xyz"]
    seen: set[bytes] = set()
    while any(writer.poll() is None for writer in writers):
        if file.exists():
            seen.add(file.read_bytes())
    for writer in writers:
        _, errors = writer.communicate()
        assert (writer.returncode, errors) == (0, b"")
    assert {*seen, file.read_bytes()} <= {sign * 100_000 for sign in (b"x", b"y", b"z")}
    assert names_in(tmp_path) == ["a"]


def test_a_folder_that_cannot_be_synchronised(tmp_path: Path,
                                              monkeypatch: pytest.MonkeyPatch) -> None:
    real: Callable[[int], None] = os.fsync

    def only_files(descriptor: int) -> None:
        if Path(f"/proc/self/fd/{descriptor}").is_dir():
            raise OSError(errno.EINVAL, "Invalid argument")
        real(descriptor)

    monkeypatch.setattr(os, "fsync", only_files)
    write_whole(tmp_path / "a", b"new")
    assert (tmp_path / "a").read_bytes() == b"new"
