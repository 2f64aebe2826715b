"""What stands between a caller and a server in these tests: a listener on loopback that has each connection served on a thread of its own."""

import socket
import threading

PATIENCE_S = 30


class Proxy:
    """Listens until it is closed. Whoever makes one of it says in `serve` what becomes of a connection, and calls this `__init__` last."""

    def __init__(self):
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.url = f"http://127.0.0.1:{self._listener.getsockname()[1]}"
        self._threads: list[threading.Thread] = []
        self.start(self._accept)

    def serve(self, near: socket.socket) -> None:
        """One connection, to its end."""
        raise NotImplementedError

    def start(self, work, *arguments) -> None:
        """Has `work` done on a thread that `close` waits for."""
        self._threads.append(threading.Thread(target=work, args=arguments, daemon=True))
        self._threads[-1].start()

    def close(self) -> None:
        """Takes no more connections, and waits until those there are have ended."""
        # Wakes the thread that waits in accept(), which closing alone does not.
        self._listener.shutdown(socket.SHUT_RDWR)
        self._listener.close()
        for thread in self._threads:
            thread.join(PATIENCE_S)

    def _accept(self) -> None:
        while True:
            try:
                near, _ = self._listener.accept()
            except OSError:
                return
            self.start(self.serve, near)
