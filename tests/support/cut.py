"""A proxy that cuts a connection after so many bytes, on the way there or on the way back."""

import contextlib
import socket
import threading
from urllib.parse import urlsplit

from support.proxy import PATIENCE_S, Proxy


class Cutter(Proxy):
    """Listens on loopback and passes bytes on. `there` and `back` are how many pass before the next cut; None never cuts."""

    def __init__(self, url: str):
        at = urlsplit(url)
        self._to = (at.hostname, at.port)
        self.there: int | None = None
        self.back: int | None = None
        # Takes what comes and answers nothing; `silenced` counts such connections.
        self.silent = False
        self.silenced = threading.Semaphore(0)
        super().__init__()

    def serve(self, near: socket.socket) -> None:
        """Passes on in both ways."""
        if self.silent:
            self.silenced.release()
            with near, contextlib.suppress(OSError):
                while near.recv(65536):
                    pass
            return
        try:
            far = socket.create_connection(self._to, timeout=PATIENCE_S)
        except OSError:
            near.close()
            return
        both = (near, far)
        ways = [
            threading.Thread(target=self._pass, args=(near, far, self.there, both), daemon=True),
            threading.Thread(target=self._pass, args=(far, near, self.back, both), daemon=True),
        ]
        for way in ways:
            way.start()
        for way in ways:
            way.join()
        for end in both:
            end.close()

    @staticmethod
    def _pass(source: socket.socket, sink: socket.socket, left: int | None, both: tuple[socket.socket, ...]) -> None:
        try:
            while data := source.recv(65536 if left is None else min(65536, max(left, 1))):
                if left is not None:
                    data = data[:left]
                    left -= len(data)
                sink.sendall(data)
                if left == 0:
                    break
            else:
                # The sender is done: the other way may still have something to say.
                sink.shutdown(socket.SHUT_WR)
                return
        except OSError:
            pass
        # Cut: both ends hear of it at once.
        for end in both:
            try:
                end.shutdown(socket.SHUT_RDWR)
            except OSError:
                pass
