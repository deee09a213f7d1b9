"""Compares the words of PDFs, and their order, with two other readers: pdftotext (Debian poppler-utils) and pypdfium2 (PyPI).

    cargo build -p everyclause-paper --example text_of
    python3 crates/paper/tests/oracle.py target/debug/examples/text_of FILE.pdf...

Not part of `cargo test`. For each file and reader: how many words the two have in common in the same order, of all that either has.
Raised figures and built fractions are levelled first, as the other readers put them down as plain figures.
"""

import difflib
import re
import subprocess
import sys

import pypdfium2

RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁄", "0123456789-/")


def words(text):
    text = text.translate(RAISED).replace("\u00ad", "-").replace("\ufffe", "-").replace("\u0002", "-")
    text = re.sub(r"\[(\w)\]", r"\1", text)
    text = re.sub(r"-\s*\n\s*", "-", text)
    text = re.sub(r"\[Figure:.*?\]|-{4,}", " ", text)
    for ligature, letters in {"ﬀ": "ff", "ﬁ": "fi", "ﬂ": "fl", "ﬃ": "ffi", "ﬄ": "ffl"}.items():
        text = text.replace(ligature, letters)
    return re.findall(r"[^\W_]+|[^\w\s]", text.replace("-", ""))


def run(*command):
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout


def pdfium(path):
    document = pypdfium2.PdfDocument(path)
    return "\n".join(page.get_textpage().get_text_range() for page in document)


def main():
    ours, *paths = sys.argv[1:]
    for path in paths:
        mine = words(run(ours, path))
        for name, text in {
            "pdftotext -layout": run("pdftotext", "-layout", path, "-"),
            "pypdfium2": pdfium(path),
        }.items():
            theirs = words(text)
            matcher = difflib.SequenceMatcher(None, mine, theirs, autojunk=False)
            common = sum(block.size for block in matcher.get_matching_blocks())
            share = 2 * common / (len(mine) + len(theirs))
            print(f"{path}  {name}: {len(mine)} and {len(theirs)} words, {100 * share:.2f} % alike in order")
            for tag, a, b, c, d in matcher.get_opcodes():
                if tag != "equal":
                    print(f"    {' '.join(mine[a:b])!r} for {' '.join(theirs[c:d])!r}")


main()
