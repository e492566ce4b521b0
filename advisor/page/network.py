"""At which address of this machine a page may be shared: one of its own network and no other."""

from __future__ import annotations

import socket
from ipaddress import AddressValueError, IPv4Address

from advisor.errors import InputError, Problem

#: An address for documentation only (RFC 5737). Naming it to a datagram socket sends nothing; the
#: system then says from which of its own addresses it would.
_SOMEWHERE = ("192.0.2.1", 9)


def share_address(said: str = "") -> str:
    """The address of this machine on its network, the one that was said or the one found.

    Raises:
        InputError: there is none, or it can be reached from the internet.
    """
    try:
        found = IPv4Address(said or _own())
    except AddressValueError:
        raise InputError(
            Problem(f"'{said}' is no address here", None, "four numbers, as in 192.168.1.20")
        ) from None
    if found.is_unspecified or found.is_multicast or found.is_reserved:
        raise InputError(f"{found} is not one address of this machine; nothing is shared there")
    if found.is_global:
        raise InputError(f"{found} can be reached from the internet; nothing is shared there")
    return str(found)


def _own() -> str:
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asked:
        try:
            asked.connect(_SOMEWHERE)
            found = str(asked.getsockname()[0])
        except OSError:
            found = ""
    if not found or IPv4Address(found).is_loopback or IPv4Address(found).is_unspecified:
        raise InputError(
            "this machine seems to be in no network; where it is in one, name its address there "
            "with --address"
        )
    return found
