import type { PageKind } from '../../shared/wire/up.ts';
import type { WebSocket } from 'ws';
import { CLOSE } from '../../shared/wire/protocol.ts';
import type { LiveHub } from '../live/live-hub.ts';
import type { Visitor } from './device-cookie.ts';

/** Connects a websocket to the hub. Text only: nothing of ours is binary. */
export function servePeer(socket: WebSocket, hub: LiveHub, { device, role }: Visitor, page: PageKind): void {
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
    connection.receive(textOf(data));
  });
  socket.on('close', () => connection.closed());
  // Whatever is wrong with a socket, it closes right after, with the code that says why.
  socket.on('error', () => {});
}

function textOf(data: Buffer | ArrayBuffer | Buffer[]): string {
  if (Array.isArray(data)) return Buffer.concat(data).toString('utf8');
  return Buffer.from(data instanceof ArrayBuffer ? new Uint8Array(data) : data).toString('utf8');
}
