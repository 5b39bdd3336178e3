import type { PageKind } from '../../shared/wire/up.ts';
import type { FastifyBaseLogger } from 'fastify';
import type { WebSocket } from 'ws';
import { CLOSE } from '../../shared/wire/protocol.ts';
import type { LiveHub } from '../live/live-hub.ts';
import type { Visitor } from './device-cookie.ts';

/** Connects a websocket to the hub. Text only: nothing of ours is binary. */
export function servePeer(socket: WebSocket, hub: LiveHub, { device, role }: Visitor, page: PageKind, log: FastifyBaseLogger): void {
  const connection = hub.connect(
    {
      send: (text) => socket.send(text),
      get backlogBytes() {
        return socket.bufferedAmount;
      },
      close: (code, reason) => socket.close(code, reason),
    },
    device,
    role,
    page,
  );
  if (connection === null) return;
  socket.on('message', (data, isBinary) => {
    if (isBinary) {
      socket.close(CLOSE.badMessage, 'messages are text');
      return;
    }
    try {
      connection.receive(textOf(data));
    } catch (error) {
      // A bug of ours ends this socket and no other; 1011 is RFC 6455's word for it.
      log.error({ err: error, deviceId: device?.id }, 'a message could not be taken');
      connection.closed();
      socket.close(1011, 'the server could not take this message');
    }
  });
  socket.on('close', () => connection.closed());
  // Whatever is wrong with a socket, it closes right after, with the code that says why.
  socket.on('error', () => {});
}

function textOf(data: Buffer | ArrayBuffer | Buffer[]): string {
  if (Array.isArray(data)) return Buffer.concat(data).toString('utf8');
  return Buffer.from(data instanceof ArrayBuffer ? new Uint8Array(data) : data).toString('utf8');
}
