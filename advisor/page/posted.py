"""Reads what a form has posted, in either of the two shapes that a form without scripts has."""

from __future__ import annotations

from email.parser import BytesParser
from email.policy import HTTP
from urllib.parse import parse_qsl

from advisor.errors import InputError

MOST_FIELDS = 8


def read_fields(kind: str, body: bytes) -> dict[str, str]:
    """The fields of a form by name; a file is the field of its name with its text.

    Args:
        kind: the content type, with its boundary where it has one.
        body: what was posted.

    Raises:
        InputError: it is no form, or not UTF-8 text.
    """
    if kind.partition(";")[0].strip().lower() == "multipart/form-data":
        return _from_parts(kind, body)
    try:
        text = body.decode("ascii")
        pairs = parse_qsl(text, keep_blank_values=True, max_num_fields=MOST_FIELDS, errors="strict")
    except UnicodeDecodeError:
        raise InputError("what was sent is not UTF-8 text") from None
    except ValueError:
        raise InputError("what was sent is no form of this page") from None
    return dict(pairs)


def _from_parts(kind: str, body: bytes) -> dict[str, str]:
    head = b"Content-Type: " + kind.encode("latin-1", "replace") + b"\r\n\r\n"
    message = BytesParser(policy=HTTP).parsebytes(head + body)
    if not message.is_multipart():
        raise InputError("what was sent is no form of this page")
    fields: dict[str, str] = {}
    for part in list(message.iter_parts())[:MOST_FIELDS]:
        name = part.get_param("name", header="content-disposition")
        raw = part.get_payload(decode=True)
        if isinstance(name, str) and isinstance(raw, bytes):
            fields[name] = _text(raw)
    return fields


def _text(raw: bytes) -> str:
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise InputError("the project is not UTF-8 text") from None
