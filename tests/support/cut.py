"""A proxy that cuts a connection after so many bytes, on the way there or on the way back."""

import socket
import threading
from urllib.parse import urlsplit


class Cutter:
    """Listens on loopback and passes bytes on. `there` and `back` are how many pass before the next cut; None never cuts."""

    def __init__(self, url: str):
        at = urlsplit(url)
        self._to = (at.hostname, at.port)
        self.there: int | None = None
        self.back: int | None = None
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.url = f"http://127.0.0.1:{self._listener.getsockname()[1]}"
        self._threads: list[threading.Thread] = []
        self._start(self._accept)

    def close(self) -> None:
        """Takes no more connections, and waits until those there are have ended."""
        # Wakes the thread that waits in accept(), which closing alone does not.
        self._listener.shutdown(socket.SHUT_RDWR)
        self._listener.close()
        for thread in self._threads:
            thread.join(30)

    def _start(self, work, *arguments) -> None:
        self._threads.append(threading.Thread(target=work, args=arguments, daemon=True))
        self._threads[-1].start()

    def _accept(self) -> None:
        while True:
            try:
                near, _ = self._listener.accept()
            except OSError:
                return
            self._start(self._serve, near)

    def _serve(self, near: socket.socket) -> None:
        try:
            far = socket.create_connection(self._to, timeout=30)
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
