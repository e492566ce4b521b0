"""`python -m advisor.knowledge.check [FILE …]`: every problem of the knowledge, by line."""

from __future__ import annotations

import sys
from pathlib import Path

from advisor.errors import Exit, InputError
from advisor.knowledge.load import read_book
from advisor.knowledge.place import knowledge_folder
from advisor.knowledge.sentences import check_sentences
from advisor.knowledge.vocabulary import check_book


def main(arguments: list[str]) -> int:
    """Print the problems of the whole knowledge, or only those of the files named."""
    folder = knowledge_folder()
    try:
        book = read_book(folder)
        problems = [*check_book(book), *check_sentences(book)]
    except InputError as error:
        problems = list(error.problems)
    wanted = [str(Path(name).absolute()) for name in arguments]
    if wanted:
        problems = [
            p
            for p in problems
            if p.where and any(str(Path(p.where.file).absolute()).startswith(w) for w in wanted)
        ]
    for problem in problems:
        print(problem)
    print(f"{len(problems)} problems", file=sys.stderr)
    return Exit.USAGE if problems else Exit.CLEAR


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
