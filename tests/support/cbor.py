"""Deterministic CBOR by the letter of RFC 8949, section 4.2.1, for the few types that the journal uses.

Written from the RFC and from nothing else, so that it can disagree with the app's own encoder.
"""


def head(major: int, argument: int) -> bytes:
    """A major type with the shortest argument (RFC 8949 sections 3 and 4.2.1)."""
    if argument < 24:
        return bytes([major << 5 | argument])
    for information, size in ((24, 1), (25, 2), (26, 4), (27, 8)):
        if argument < 1 << 8 * size:
            return bytes([major << 5 | information]) + argument.to_bytes(size, "big")
    raise ValueError(f"{argument} does not fit into 64 bits")


def encode(item: object) -> bytes:
    """The one encoding of `item`. Floats and tags do not occur in the journal and are refused."""
    match item:
        case False:
            return b"\xf4"
        case True:
            return b"\xf5"
        case None:
            return b"\xf6"
        case int():
            return head(0, item) if item >= 0 else head(1, -1 - item)
        case bytes():
            return head(2, len(item)) + item
        case str():
            text = item.encode("utf-8")
            return head(3, len(text)) + text
        case list() | tuple():
            return head(4, len(item)) + b"".join(map(encode, item))
        case dict():
            # Keys in the bytewise lexicographic order of their encodings.
            pairs = sorted((encode(key), encode(value)) for key, value in item.items())
            return head(5, len(pairs)) + b"".join(key + value for key, value in pairs)
    raise TypeError(f"a journal holds no {type(item).__name__}")
