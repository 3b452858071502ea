"""The list of work: what to do about every rule that failed, the worst severity first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from garboard.reports.counts import plural
from garboard.reports.groups import by_rule
from garboard.reports.harmless import harmless, harmless_name
from garboard.reports.words import subject_word, subjects_word
from garboard.trail import FAILED, SEVERITIES, Finding, Trail


@dataclass(frozen=True, slots=True)
class Job:
    """What to do about one rule that failed, and for which findings."""

    number: int
    severity: str
    title: str
    what: str
    findings: tuple[Finding, ...]
    among: str
    dispensed: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Work:
    """All jobs; ``ending`` is the clause that every one of them ended with, said once for all."""

    jobs: tuple[Job, ...]
    ending: str

    def by_severity(self) -> Iterator[tuple[str, str, tuple[Job, ...]]]:
        """Each severity that has jobs, how many rules fail in words, and those jobs."""
        for severity in SEVERITIES:
            some = tuple(job for job in self.jobs if job.severity == severity)
            if some:
                fail = "fails" if len(some) == 1 else "fail"
                yield severity, f"{plural(len(some), 'rule')} {fail}", some


def work_of(trail: Trail) -> Work:
    """The list of work of a trail."""
    groups = by_rule(trail, FAILED)
    texts = [harmless(group.rule["recommendation"]) for group in groups]
    ending = common_ending(texts)
    several = len(trail.packs) > 1
    jobs = []
    for number, (group, text) in enumerate(zip(groups, texts, strict=True), 1):
        about = group.rule["about"]
        noun = subject_word(about) if group.among == 1 else subjects_word(about)
        title = harmless(group.rule["title"])
        jobs.append(Job(
            number, group.severity,
            f"{title} [{harmless_name(group.pack['pack'])}]" if several else title,
            f"{text.removesuffix(ending)}." if ending else text, group.findings,
            f"{len(group.findings)} of {group.among} {noun} it applies to",
            tuple(harmless_name(each["dispensation"]) for each in group.findings
                  if each.get("dispensation"))))
    return Work(tuple(jobs), ending.removeprefix(", "))


def common_ending(texts: Sequence[str]) -> str:
    """The clause, from a comma on, that several texts all end with; empty if there is none."""
    if len(texts) < 2:
        return ""
    start = texts[0].find(", ")
    while start >= 0:
        ending = texts[0][start:]
        if all(text.endswith(ending) and text != ending for text in texts):
            return ending
        start = texts[0].find(", ", start + 1)
    return ""
