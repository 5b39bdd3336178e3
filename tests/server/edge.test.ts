import { once } from 'node:events';
import { mkdirSync, writeFileSync } from 'node:fs';
import { connect, type AddressInfo, type Socket } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { gzipSync } from 'node:zlib';
import { describe, expect, it, onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { Bucket, Buckets } from '../../server/access/bucket.ts';
import { isOwnHost, MAX_CONNECTIONS_PER_ADDRESS } from '../../server/http/edge.ts';
import { machineNames } from '../../server/main/addresses.ts';
import { CLOSE } from '../../shared/wire/protocol.ts';
import { hello, LiveClient } from './support/live-client.ts';
import { eventLoopTurns } from './support/machine.ts';
import { openTestHouse } from './support/test-house.ts';
import { folderForTest } from './support/temporary-folder.ts';

const OWN = new Set(['localhost', 'oven.example']);

describe('a request for another host', () => {
  it.each([
    ['localhost', true],
    ['localhost:8420', true],
    ['LOCALHOST:8420', true],
    ['oven.example.', true],
    ['192.0.2.7:8420', true],
    ['[2001:db8::7]:8420', true],
    ['[::1]', true],
    // What a name of somebody else's brings along that was made to lead here (DNS rebinding).
    ['evil.example', false],
    ['evil.example:8420', false],
    ['localhost.evil.example', false],
    ['192.0.2.7.evil.example', false],
    ['oven.example@evil.example', false],
    ['evil.example#localhost', false],
    ['evil.example/localhost', false],
    ['', false],
    [' ', false],
    // Numbers written in another way than addresses are (WHATWG URL section 3.5 reads them as 127.0.0.1).
    ['2130706433', false],
    ['0x7f.1', false],
  ])('ED1 %s: is this server: %s', (host, isOwn) => {
    expect(isOwnHost(host, OWN)).toBe(isOwn);
  });

  it('ED1 gets 421 and nothing of the house: page, api and websocket', async () => {
    const pagesFolder = folderForTest();
    mkdirSync(join(pagesFolder, 'assets'));
    writeFileSync(join(pagesFolder, 'index.html'), 'the entrance');
    const { house } = await openTestHouse({ isListening: true, pagesFolder });
    for (const url of ['/', '/api/state', '/api/access', '/assets/x.js', '/nothing']) {
      const answer = await house.app.inject({ url, headers: { host: 'rebound.evil.example:8420' } });
      expect([answer.statusCode, answer.json<{ type: string }>().type], url).toEqual([421, 'urn:ovenward:problem:otherHost']);
    }
    const { port } = house.app.server.address() as AddressInfo;
    const headers = { host: 'rebound.evil.example', origin: 'http://rebound.evil.example' };
    const socket = new WebSocket(`ws://127.0.0.1:${port}/live?page=wall`, { headers });
    socket.on('error', () => {});
    const [, answer] = (await once(socket, 'unexpected-response')) as [unknown, { statusCode: number }];
    socket.terminate();
    expect(answer.statusCode).toBe(421);
    expect(house.hub.clientCount).toBe(0);
  });

  it('ED1 is one for a name that was told, and for the machine’s own', async () => {
    const { house } = await openTestHouse({ names: ['oven.example'] });
    for (const host of ['oven.example', 'Oven.Example:8420', 'localhost']) {
      expect((await house.app.inject({ url: '/api/access', headers: { host } })).statusCode, host).toBe(200);
    }
    expect(machineNames('Ovens.Bakery.Example')).toEqual(['ovens.bakery.example', 'ovens', 'ovens.local']);
    expect(machineNames('')).toEqual([]);
  });
});

describe('a page of another site', () => {
  it.each(['http://evil.example', 'https://localhost', 'http://localhost:9', 'null', 'nonsense'])(
    'ED2 changes nothing from the origin %s',
    async (origin) => {
      const { house } = await openTestHouse();
      for (const [method, url] of [
        ['POST', '/api/join'],
        ['POST', '/api/commands'],
        ['DELETE', '/api/joining'],
      ] as const) {
        const answer = await house.app.inject({ method, url, headers: { origin, host: 'localhost' } });
        expect(answer.statusCode, url).toBe(403);
      }
    },
  );

  it('ED2 is answered nothing that it fetches in the background; whoever follows a link from there is', async () => {
    const { house } = await openTestHouse();
    const ask = async (mode: string): Promise<number> =>
      (await house.app.inject({ url: '/api/access', headers: { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': mode } })).statusCode;
    expect(await ask('no-cors')).toBe(403);
    expect(await ask('navigate')).toBe(200);
  });
});

describe('every answer', () => {
  it('ED3 says that nothing is guessed, framed or lent to other sites, and runs nothing that is no page', async () => {
    const { house } = await openTestHouse();
    for (const [url, status] of [
      ['/api/access', 200],
      ['/nothing', 404],
      ['/api/events', 400],
    ] as const) {
      const { statusCode, headers } = await house.app.inject(url);
      expect(statusCode).toBe(status);
      expect(headers).toMatchObject({
        'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
        'x-content-type-options': 'nosniff',
        'cross-origin-resource-policy': 'same-origin',
        'referrer-policy': 'no-referrer',
      });
      expect(headers['access-control-allow-origin']).toBeUndefined();
      expect(headers['server']).toBeUndefined();
    }
  });

  it('ED3 tells a fault of the server’s without its innards', async () => {
    const { house } = await openTestHouse();
    Object.defineProperty(house.hub, 'connectedDevices', {
      get: () => {
        throw new Error('secret at /home/baker/x.ts:1');
      },
    });
    const answer = await house.app.inject('/api/devices');
    expect(answer.statusCode).toBe(500);
    expect(answer.body).not.toMatch(/secret|baker|\.ts|at /);
  });

  it.each([
    '/assets/..%2f..%2fdevices.db',
    '/assets/%2e%2e/%2e%2e/devices.db',
    '/assets//etc/passwd',
    '/assets/%00',
    '/assets/..\\..\\devices.db',
    '/../devices.db',
  ])('ED3 gives nothing from beside the pages’ folder: %s', async (url) => {
    const pagesFolder = folderForTest();
    mkdirSync(join(pagesFolder, 'assets'));
    writeFileSync(join(pagesFolder, 'devices.db'), 'tokens');
    const { house } = await openTestHouse({ isEmpty: true, pagesFolder });
    const answer = await house.app.inject(url);
    expect(answer.statusCode).toBeGreaterThanOrEqual(400);
    expect(answer.statusCode).toBeLessThan(500);
    expect(answer.body).not.toContain('tokens');
  });
});

describe('what would reach for the prototype of objects, or stand in the way of its methods', () => {
  it.each([
    '{"code":"1","__proto__":{"role":"manage"}}',
    '{"code":"1","constructor":{"prototype":{"role":"manage"}}}',
    '{"code":{"length":{"toString":1}}}',
    '{"code":{"length":{"to\\u0053tring":1}}}',
    '[{"name":[{"valueOf":null}]}]',
  ])('ED4 is refused as a body: %s', async (payload) => {
    const { house } = await openTestHouse();
    const headers = { 'content-type': 'application/json' };
    expect((await house.app.inject({ method: 'POST', url: '/api/join', headers, payload })).statusCode).toBe(400);
    expect(Object.hasOwn(Object.prototype, 'role')).toBe(false);
  });

  it.each([
    '{"type":"ping","t1":1,"__proto__":{"role":"manage"}}',
    // Found by the campaign of bad input: zod 4.6.7 compares the length of whatever has one, and throws at this one.
    '{"type":"introduce","name":{"length":{"toString":1}},"stationId":null}',
    `{"type":${'['.repeat(20_000)}${']'.repeat(20_000)}}`,
  ])('ED4 is no message, and closes its socket: %.60s', async (text) => {
    const { house } = await openTestHouse();
    const client = await LiveClient.live(house.app);
    client.sayText(text);
    expect((await client.closed()).code).toBe(CLOSE.badMessage);
    expect((await LiveClient.live(house.app)).of('welcome')).toHaveLength(1);
  });
});

describe('what is small on the wire and large in memory', () => {
  it('ED7 is not unpacked: a body that is compressed is no JSON, however much it would be', async () => {
    const { house } = await openTestHouse();
    const bomb = gzipSync(Buffer.alloc(64 * 1024 * 1024, ' '));
    expect(bomb.length).toBeLessThan(100_000);
    for (const encoding of ['gzip', 'deflate', 'br']) {
      const headers = { 'content-type': 'application/json', 'content-encoding': encoding };
      const answer = await house.app.inject({ method: 'POST', url: '/api/join', headers, payload: bomb });
      expect(answer.statusCode, encoding).toBe(400);
    }
  });

  it('ED7 nor is a message: compression is not agreed to, and a frame that is compressed all the same ends its socket', async () => {
    const { house } = await openTestHouse({ isListening: true });
    const { port } = house.app.server.address() as AddressInfo;
    const socket = new WebSocket(`ws://127.0.0.1:${port}/live?page=phone`, { perMessageDeflate: true });
    onTestFinished(() => socket.terminate());
    await once(socket, 'open');
    expect(socket.extensions).toBe('');
    const raw = connect(port, '127.0.0.1');
    onTestFinished(() => void raw.destroy());
    raw.write(
      'GET /live?page=phone HTTP/1.1\r\nHost: localhost\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\nSec-WebSocket-Extensions: permessage-deflate\r\n\r\n',
    );
    const [answer] = (await once(raw, 'data')) as [Buffer];
    expect(answer.toString('utf8')).toMatch(/^HTTP\/1\.1 101 /);
    expect(answer.toString('utf8')).not.toMatch(/extensions/i);
    // FIN, RSV1 (RFC 7692 section 6: compressed), text, masked, two bytes under a mask of zeros.
    raw.write(Buffer.from([0xc1, 0x82, 0, 0, 0, 0, 0x4a, 0x04]));
    let said = Buffer.alloc(0);
    raw.on('data', (chunk: Buffer) => (said = Buffer.concat([said, chunk])));
    await once(raw, 'close');
    // A close frame with 1002, a protocol error (RFC 6455 section 7.4.1).
    expect(said.subarray(said.indexOf(0x88)).readUInt16BE(2)).toBe(1002);
  });
});

describe('who asks too much', () => {
  it('ED5 gets 429 and how long to wait, and nobody else does', async () => {
    const { house, machine } = await openTestHouse();
    const ask = (remoteAddress: string) => house.app.inject({ url: '/api/access', remoteAddress });
    let answer = await ask('192.0.2.9');
    for (let n = 0; n < 2100 && answer.statusCode === 200; n += 1) answer = await ask('192.0.2.9');
    expect(answer.statusCode).toBe(429);
    expect(answer.json()).toMatchObject({ type: 'urn:ovenward:problem:tooManyRequests' });
    expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0);
    expect((await ask('192.0.2.10')).statusCode).toBe(200);
    machine.passUnnoticed(1000);
    expect((await ask('192.0.2.9')).statusCode).toBe(200);
  });

  it('ED5 by a socket is closed with 4427', async () => {
    const { house } = await openTestHouse();
    const client = await LiveClient.live(house.app);
    for (let n = 0; n < 1001; n += 1) client.say({ type: 'ping', t1: n });
    expect((await client.closed()).code).toBe(4427);
    expect(CLOSE.tooMany).toBe(4427);
  });

  it('ED5 a bucket gives its burst at once and then so much a second; many are counted apart, and the one away longest is forgotten', () => {
    const bucket = new Bucket({ burst: 3, perS: 2 }, 0);
    expect([0, 0, 0, 0].map((atMs) => bucket.take(atMs))).toEqual([0, 0, 0, 500]);
    expect([250, 500, 500, 100_000].map((atMs) => bucket.take(atMs))).toEqual([250, 0, 500, 0]);
    const buckets = new Buckets({ burst: 1, perS: 1 }, 2);
    expect(['a', 'b', 'a', 'c', 'b'].map((name) => buckets.take(name, 0))).toEqual([0, 0, 1000, 0, 0]);
  });
});

describe('connections', () => {
  it('ED6 beyond what a house needs are told so, not left hanging; the house goes on', async () => {
    const { house } = await openTestHouse({ isListening: true });
    const { port } = house.app.server.address() as AddressInfo;
    const sockets: Socket[] = [];
    onTestFinished(() => sockets.forEach((socket) => socket.destroy()));
    const open = async (): Promise<Socket> => {
      const socket = connect(port, '127.0.0.1');
      socket.on('error', () => {});
      sockets.push(socket);
      await once(socket, 'connect');
      return socket;
    };
    while (sockets.length < MAX_CONNECTIONS_PER_ADDRESS) await Promise.all(Array.from({ length: 50 }, open));
    const late = await open();
    const [said] = (await once(late, 'data')) as [Buffer];
    expect(said.toString('utf8')).toMatch(/^HTTP\/1\.1 503 Service Unavailable\r\nRetry-After: 5\r\n/);
    for (const socket of sockets.splice(0, 60)) socket.destroy();
    const connections = promisify((done: (error: Error | null, count: number) => void) => house.app.server.getConnections(done));
    while ((await connections()) >= MAX_CONNECTIONS_PER_ADDRESS) await eventLoopTurns();
    const client = await LiveClient.live(house.app);
    expect((await client.give({ type: 'askSoundTest' })).ok).toBe(true);
  });

  it('ED6 on which a request trickles in are ended with 408', async () => {
    const { house } = await openTestHouse();
    // Node ends what takes longer, and looks every so often (https://nodejs.org/docs/latest-v20.x/api/http.html#serverheaderstimeout).
    expect(house.app.server).toMatchObject({ headersTimeout: 10_000, requestTimeout: 30_000 });
  });

  it('ED6 of no page, which never say hello, are let go', async () => {
    const { house, machine } = await openTestHouse();
    const mute = await LiveClient.connect(house.app);
    await machine.pass(20_000);
    expect((await mute.closed()).code).toBe(CLOSE.silent);
    const heard = await LiveClient.connect(house.app);
    heard.say(hello());
    await heard.first('live');
  });
});
