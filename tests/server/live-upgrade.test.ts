import { once } from 'node:events';
import { request, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, it, onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { MAX_UP_BYTES } from '../../shared/wire/protocol.ts';
import { hello, LiveClient, tokenOf } from './support/live-client.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

interface Listening extends TestHouse {
  readonly port: number;
  /** A websocket as a browser opens it, and the cookie that came with the answer. */
  open(page: string, headers?: Record<string, string>): Promise<{ client: LiveClient; setCookie: string | null; socket: WebSocket }>;
}

async function listening(): Promise<Listening> {
  const test = await openTestHouse();
  await test.house.app.listen({ port: 0, host: '127.0.0.1' });
  const { port } = test.house.app.server.address() as AddressInfo;
  return {
    ...test,
    port,
    open: async (page, headers = {}) => {
      const socket = new WebSocket(`ws://127.0.0.1:${port}/live?page=${page}`, { headers });
      onTestFinished(() => socket.terminate());
      const client = new LiveClient(socket);
      const [answer] = (await once(socket, 'upgrade')) as [IncomingMessage];
      if (socket.readyState === WebSocket.CONNECTING) await once(socket, 'open');
      return { client, socket, setCookie: answer.headers['set-cookie']?.[0] ?? null };
    },
  };
}

function pairOf(setCookie: string | null): string {
  return setCookie?.split(';')[0] ?? '';
}

describe('the device behind a websocket', () => {
  it('W15 is new where there is no cookie, and gets one with the answer to the upgrade that scripts and other sites cannot use', async () => {
    const { open } = await listening();
    const { client, setCookie } = await open('phone');
    client.say(hello());
    await client.first('live');
    // 400 days: the most that browsers keep a cookie for (RFC 6265bis section 5.5).
    expect(setCookie).toBe(`ovenward-phone=${tokenOf(client.deviceId)}; Max-Age=34560000; Path=/; HttpOnly; SameSite=Strict`);
  });

  it('W15 is the same where the cookie comes back, and none is set again', async () => {
    const { open, house } = await listening();
    const first = await open('phone');
    first.client.say(hello());
    await first.client.first('live');
    const second = await open('phone', { cookie: pairOf(first.setCookie) });
    second.client.say(hello());
    await second.client.first('live');
    expect(second.setCookie).toBeNull();
    expect(second.client.deviceId).toBe(first.client.deviceId);
    expect((await second.client.first('welcome')).devices).toHaveLength(1);
    expect(house.hub.clientCount).toBe(2);
  });

  it('W15 is new again where the cookie names none that is known, or one of the other kind', async () => {
    const { open } = await listening();
    const first = await open('phone');
    first.client.say(hello());
    await first.client.first('live');
    const { deviceId } = first.client;
    for (const cookie of [
      `ovenward-phone=${deviceId}`,
      `ovenward-phone=${'A'.repeat(43)}`,
      'ovenward-phone=%00',
      `ovenward-wall=${tokenOf(deviceId)}`,
    ]) {
      const other = await open('phone', { cookie });
      expect(pairOf(other.setCookie)).toMatch(/^ovenward-phone=[\w-]{43}$/);
      expect(pairOf(other.setCookie)).not.toBe(`ovenward-phone=${tokenOf(deviceId)}`);
    }
    const wall = await open('wall', { cookie: `ovenward-wall=${tokenOf(deviceId)}` });
    expect(pairOf(wall.setCookie)).toMatch(/^ovenward-wall=[\w-]{43}$/);
    expect(pairOf(wall.setCookie)).not.toContain(deviceId);
  });

  it('W15 a wall and a phone in one browser are two devices, each with a cookie of its own', async () => {
    const { open } = await listening();
    const phone = await open('phone');
    const wall = await open('wall', { cookie: pairOf(phone.setCookie) });
    phone.client.say(hello());
    wall.client.say(hello({ page: 'wall' }));
    await Promise.all([phone.client.first('live'), wall.client.first('live')]);
    expect(pairOf(wall.setCookie)).toBe(`ovenward-wall=${tokenOf(wall.client.deviceId)}`);
    expect(wall.client.deviceId).not.toBe(phone.client.deviceId);
    const again = await open('wall', { cookie: `${pairOf(phone.setCookie)}; ${pairOf(wall.setCookie)}` });
    again.client.say(hello({ page: 'wall' }));
    await again.client.first('live');
    expect(again.client.deviceId).toBe(wall.client.deviceId);
  });
});

describe('the upgrade', () => {
  it.each(['http://example.net', 'http://example.net:8420', 'null', 'https://127.0.0.1'])(
    'W16 is refused with 403 where it comes from a page of another origin: %s',
    async (origin) => {
      const { port, house } = await listening();
      const socket = new WebSocket(`ws://127.0.0.1:${port}/live?page=phone`, { origin });
      const [, answer] = (await once(socket, 'unexpected-response')) as [unknown, IncomingMessage];
      expect(answer.statusCode).toBe(403);
      expect(answer.headers['set-cookie']).toBeUndefined();
      expect(house.hub.clientCount).toBe(0);
      socket.on('error', () => {});
      socket.terminate();
    },
  );

  it('W16 is granted to this server’s own pages and to programs that name no origin', async () => {
    const { port, open, house } = await listening();
    await open('phone', { origin: `http://127.0.0.1:${port}` });
    await open('phone');
    expect(house.hub.clientCount).toBe(2);
  });

  it('W16 is asked for: the address speaks nothing but websocket', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    const answer = await house.app.inject('/live');
    // 426 Upgrade Required (RFC 9110 section 15.5.22).
    expect(answer.statusCode).toBe(426);
  });

  it('W17 a message beyond the limit closes the socket with 1009, and nothing else happens', async () => {
    const { open, house } = await listening();
    const { client } = await open('phone');
    client.say(hello());
    await client.first('live');
    client.sayText(JSON.stringify({ type: 'ping', t1: 1, filling: 'x'.repeat(MAX_UP_BYTES) }));
    // 1009: a message too big to process (RFC 6455 section 7.4.1).
    expect(await client.closed()).toMatchObject({ code: 1009 });
    await client.quiet();
    expect(house.hub.clientCount).toBe(0);
    const { client: next } = await open('phone');
    next.say(hello());
    await next.first('live');
  });

  it('W8 a page that no longer answers does not hold up the end', async () => {
    const { port, house, close } = await listening();
    // Takes the upgrade and never says a word again, not even when it is told to close.
    const upgrade = request({
      port,
      host: '127.0.0.1',
      path: '/live?page=wall',
      headers: {
        connection: 'upgrade',
        upgrade: 'websocket',
        'sec-websocket-version': '13',
        'sec-websocket-key': 'AAAAAAAAAAAAAAAAAAAAAA==',
      },
    });
    upgrade.end();
    const [, socket] = (await once(upgrade, 'upgrade')) as [unknown, NodeJS.ReadableStream];
    const ended = once(socket, 'close');
    expect(house.hub.clientCount).toBe(1);
    await close();
    socket.resume();
    await ended;
  });
});
