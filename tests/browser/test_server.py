"""What the server answers to others than its own page."""

import base64
import os
import socket
from urllib.parse import urlsplit


def handshake(server, host, origin):
    """The first line that a call for a web socket gets."""
    where = urlsplit(server)
    key = base64.b64encode(os.urandom(16)).decode()
    with socket.create_connection((where.hostname, where.port), timeout=20) as line:
        line.sendall(
            f"GET /_stcore/stream HTTP/1.1\r\nHost: {host}\r\nOrigin: {origin}\r\n"
            "Upgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Version: 13\r\n"
            f"Sec-WebSocket-Key: {key}\r\n\r\n".encode()
        )
        return line.recv(200).split(b"\r\n")[0].decode()


def test_a_foreign_host_or_origin_is_refused_at_once(server):
    own = urlsplit(server).netloc
    assert "101" in handshake(server, own, server)
    assert "403" in handshake(server, "evil.example", "http://evil.example")
    assert "403" in handshake(server, own, "http://evil.example")
    assert "403" in handshake(server, "evil.example", server)
