"""Who is let in from the same network: by a code that serves once, for reading and ticking.

Nothing of it is kept: codes and guests end with the page. A code has 8 signs out of 31, some
8.5 × 10¹¹ of them; it is void once it was used, after ten minutes, and after 20 wrong guesses,
of which five in a minute are listened to. While nobody is listened to the right code is refused
as well, for else guessing would go on.
"""

from __future__ import annotations

import hmac
import secrets
import time
from collections import deque
from collections.abc import Callable
from hashlib import sha256
from threading import Lock
from typing import Final

from msgspec import Struct, field

#: Signs that are not taken for one another: no 0 and O, no 1, I and L.
SIGNS: Final = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"
LENGTH: Final = 8
CODE_S: Final = 600.0
GUEST_S: Final = 12 * 3600.0
MINUTE_S: Final = 60.0
WRONG_A_MINUTE: Final = 5
WRONG_A_CODE: Final = 20
MOST_GUESTS: Final = 20


class NotLetInError(Exception):
    """A code that lets nobody in; the text says why, and nothing about the right one."""


class Door(Struct):
    """One code at a time, and those who came in by one."""

    clock: Callable[[], float] = time.monotonic
    _code: str = ""
    _until: float = 0.0
    _wrong: int = 0
    _guesses: deque[float] = field(default_factory=lambda: deque(maxlen=WRONG_A_MINUTE))
    _guests: dict[str, float] = field(default_factory=dict)
    _lock: Lock = field(default_factory=Lock)

    def new_code(self) -> str:
        """A fresh code; the one before, if any, is void from now on."""
        with self._lock:
            self._code = "".join(secrets.choice(SIGNS) for _ in range(LENGTH))
            self._until, self._wrong = self.clock() + CODE_S, 0
            return self._code

    @property
    def code(self) -> str:
        """The code that lets somebody in now; empty where it was used or is void."""
        with self._lock:
            return self._valid()

    @property
    def minutes(self) -> int:
        """For how many minutes the code still serves, begun ones counted."""
        with self._lock:
            return int(-(-max(0.0, self._until - self.clock()) // 60)) if self._code else 0

    @property
    def guests(self) -> int:
        """How many are in."""
        with self._lock:
            return len(self._inside())

    def enter(self, said: str) -> str:
        """Let in whoever says the code: the secret by which they are known from now on.

        Raises:
            NotLetInError: it is not the code, or nobody is listened to or let in now.
        """
        plain = "".join(c for c in said.upper()[:40] if c.isalnum())
        with self._lock:
            self._listen()
            if not hmac.compare_digest(plain.encode(), self._valid().encode()) or not plain:
                self._guessed()
                raise NotLetInError(_WRONG)
            if len(self._inside()) >= MOST_GUESTS:
                raise NotLetInError(f"{MOST_GUESTS} are in already, and that is the most.")
            self._code = ""
            secret = secrets.token_urlsafe(32)
            self._guests[_hidden(secret)] = self.clock() + GUEST_S
            return secret

    def knows(self, secret: str) -> bool:
        """Whether a secret is that of somebody who is in."""
        with self._lock:
            return bool(secret) and _hidden(secret[:100]) in self._inside()

    def put_out(self) -> None:
        """Put everybody out, and void the code."""
        with self._lock:
            self._guests.clear()
            self._code = ""

    def _valid(self) -> str:
        return self._code if self.clock() < self._until else ""

    def _inside(self) -> dict[str, float]:
        now = self.clock()
        for key in [key for key, until in self._guests.items() if until <= now]:
            del self._guests[key]
        return self._guests

    def _listen(self) -> None:
        full = len(self._guesses) == WRONG_A_MINUTE
        if full and self.clock() - self._guesses[0] < MINUTE_S:
            raise NotLetInError("Too many wrong codes came in. Wait a minute, then try again.")

    def _guessed(self) -> None:
        self._guesses.append(self.clock())
        self._wrong += 1
        if self._wrong >= WRONG_A_CODE:
            self._code = ""


_WRONG: Final = (
    "This code lets nobody in: it is mistyped, used already, or older than ten minutes. "
    "A new one is made on the page at the machine itself."
)


def _hidden(secret: str) -> str:
    """What is kept of a secret, so that looking one up tells nothing by its time."""
    return sha256(secret.encode("utf-8", "replace")).hexdigest()
