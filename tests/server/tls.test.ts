import { execFileSync } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { once } from 'node:events';
import { statSync, writeFileSync } from 'node:fs';
import { request as plainRequest, type IncomingMessage } from 'node:http';
import { request } from 'node:https';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { connect, createServer, type TLSSocket } from 'node:tls';
import { beforeAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { WebSocket } from 'ws';
import { LEAF_DAYS, openAuthority, type Authority, type Credentials } from '../../server/tls/authority.ts';
import { isLocalAddress } from '../../server/tls/name-constraints.ts';
import { SecureServer } from '../../server/tls/secure-server.ts';
import { hello, LiveClient, tokenOf } from './support/live-client.ts';
import { Machine } from './support/machine.ts';
import { ensureServerBuilt, ServerProcess } from './support/server-process.ts';
import { folderForTest } from './support/temporary-folder.ts';
import { openTestHouse } from './support/test-house.ts';

const DAY_MS = 24 * 3_600_000;

beforeAll(ensureServerBuilt, 120_000);
vi.setConfig({ testTimeout: 60_000 });

/** What a client that trusts nothing but the root makes of a certificate for a name: null where it is taken, else why not. */
async function refusal(root: string, credentials: Credentials, servername: string): Promise<string | null> {
  const server = createServer({ key: credentials.key, cert: credentials.cert });
  onTestFinished(() => void server.close());
  server.on('tlsClientError', () => {});
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const socket: TLSSocket = connect({ host: '127.0.0.1', port: (server.address() as AddressInfo).port, ca: [root], servername });
  const [error] = (await Promise.race([once(socket, 'secureConnect').then(() => [null]), once(socket, 'error')])) as [
    (Error & { code?: string }) | null,
  ];
  socket.destroy();
  return error === null ? null : `${error.code ?? ''}: ${error.message}`;
}

function authorityFor(
  names: readonly string[],
  addresses: readonly string[] = [],
  folder = join(folderForTest(), 'tls'),
): Promise<Authority> {
  return openAuthority(folder, names, addresses, Date.now());
}

describe('the bakehouse’s authority', () => {
  it('TL1 is made on first use and the same ever after; its key is the server’s alone', async () => {
    const folder = join(folderForTest(), 'tls');
    const first = await authorityFor(['oven.example'], [], folder);
    const second = await authorityFor(['other.example'], [], folder);
    expect(second.root).toBe(first.root);
    expect(first.fingerprint).toBe(new X509Certificate(first.root).fingerprint256);
    expect(statSync(join(folder, 'root-key.pem')).mode & 0o777).toBe(0o600);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
  });

  it('TL1 makes leaves that a client takes which knows the root, for the names and addresses that they are for', async () => {
    const authority = await authorityFor(['oven.example']);
    const leaf = await authority.leaf(['oven.example', 'ovens.local'], ['192.168.7.9'], Date.now());
    expect(await refusal(authority.root, leaf, 'oven.example')).toBeNull();
    expect(await refusal(authority.root, leaf, 'ovens.local')).toBeNull();
    expect(await refusal(authority.root, leaf, 'localhost')).toBeNull();
    expect(await refusal(authority.root, leaf, 'else.example')).toMatch(/^ERR_TLS_CERT_ALTNAME_INVALID/);
    const certificate = new X509Certificate(leaf.cert);
    expect(certificate.checkIP('192.168.7.9')).toBe('192.168.7.9');
    expect(certificate.checkIP('192.168.7.8')).toBeUndefined();
    expect(certificate.keyUsage).toEqual(['1.3.6.1.5.5.7.3.1']);
    expect(new Date(certificate.validTo).getTime() - Date.now()).toBeLessThan(LEAF_DAYS * DAY_MS + 1);
  });

  // RFC 5280 section 4.2.1.10, held by OpenSSL's own reading of it: the key of one root, and the name of another that may speak for all.
  it.each([['bank.example'], ['evil-oven.example'], ['localhost.evil.example']])(
    'TL2 cannot speak for %s, whoever has its key',
    async (name) => {
      const folder = join(folderForTest(), 'tls');
      const authority = await authorityFor(['oven.example'], [], folder);
      writeFileSync(join(folder, 'permitted.json'), JSON.stringify({ names: [name], addresses: [] }));
      const thief = await authorityFor([], [], folder);
      expect(thief.root).toBe(authority.root);
      const leaf = await thief.leaf([name], [], Date.now());
      expect(leaf.leftOut).toEqual([]);
      expect(await refusal(authority.root, leaf, name)).toMatch(/permitted subtree violation/);
    },
  );

  it('TL2 nor for an address that is not of a local network, save this machine’s own', async () => {
    const folder = join(folderForTest(), 'tls');
    const own = await authorityFor(['oven.example'], ['203.0.113.7'], folder);
    expect(await refusal(own.root, await own.leaf(['oven.example'], ['203.0.113.7'], Date.now()), 'oven.example')).toBeNull();
    writeFileSync(join(folder, 'permitted.json'), JSON.stringify({ names: ['oven.example'], addresses: ['203.0.113.8'] }));
    const thief = await authorityFor([], [], folder);
    expect(await refusal(own.root, await thief.leaf(['oven.example'], ['203.0.113.8'], Date.now()), 'oven.example')).toMatch(
      /permitted subtree violation/,
    );
    for (const [address, isLocal] of [
      ['10.1.2.3', true],
      ['100.64.0.1', true],
      ['100.128.0.1', false],
      ['172.31.255.1', true],
      ['172.32.0.1', false],
      ['192.168.0.1', true],
      ['169.254.9.9', true],
      ['192.169.0.1', false],
      ['8.8.8.8', false],
    ] as const)
      expect(isLocalAddress(address), address).toBe(isLocal);
  });

  it('TL2 leaves out of a certificate what the root may not speak for, and says so: it would be good for nothing at all', async () => {
    const authority = await authorityFor(['oven.example']);
    const leaf = await authority.leaf(
      ['oven.example', 'renamed.example', 'sub.oven.example', 'ovens.local'],
      ['192.168.7.9', '203.0.113.9'],
      Date.now(),
    );
    expect(leaf.leftOut).toEqual(['renamed.example', '203.0.113.9']);
    expect(await refusal(authority.root, leaf, 'sub.oven.example')).toBeNull();
    await expect(openAuthority(join(folderForTest(), 'tls'), [], [], Date.UTC(1970, 0, 2))).rejects.toThrow('years behind');
  });

  it('TL2 by what openssl reads of its root: an authority for leaves alone, with its constraints critical', async () => {
    const folder = folderForTest();
    const authority = await authorityFor(['oven.example']);
    writeFileSync(join(folder, 'root.pem'), authority.root);
    const text = execFileSync('openssl', ['x509', '-in', join(folder, 'root.pem'), '-noout', '-text'], { encoding: 'utf8' });
    expect(text).toMatch(/X509v3 Basic Constraints: critical\s+CA:TRUE, pathlen:0/);
    expect(text).toMatch(/X509v3 Name Constraints: critical\s+Permitted:/);
    for (const permitted of ['DNS:oven.example', 'DNS:localhost', 'DNS:local', 'IP:10.0.0.0/255.0.0.0', 'IP:192.168.0.0/255.255.0.0'])
      expect(text).toContain(permitted);
  });
});

async function secureHouse() {
  let secure: { server: SecureServer; port: number } | null = null;
  const test = await openTestHouse({
    isListening: true,
    trusted: () =>
      secure === null ? null : { root: secure.server.authority.root, fingerprint: secure.server.authority.fingerprint, port: secure.port },
  });
  const machine = new Machine(Date.now());
  let addresses: readonly string[] = [];
  const warned: unknown[] = [];
  const server = await SecureServer.open({
    app: test.house.app,
    folder: join(test.folder, 'tls'),
    names: ['ovens.local'],
    addresses: () => addresses,
    wallMs: () => machine.wallMs(),
    timers: machine,
    log: { warn: (...said: readonly unknown[]) => void warned.push(said) } as never,
  });
  onTestFinished(() => server.close());
  const port = await server.listen(0, '127.0.0.1');
  secure = { server, port };
  const plainPort = (test.house.app.server.address() as AddressInfo).port;
  return { ...test, server, port, plainPort, machine, warned, move: (to: readonly string[]) => (addresses = to) };
}

/** A request over TLS by a client that knows the root alone. */
async function over(
  root: string,
  port: number,
  path: string,
  headers: Record<string, string> = {},
): Promise<{ status: number; serial: string; body: unknown }> {
  const asked = request({
    host: '127.0.0.1',
    port,
    path,
    ca: [root],
    servername: 'localhost',
    agent: false,
    headers: { host: `localhost:${port}`, ...headers },
  });
  asked.end();
  const [answer] = (await once(asked, 'response')) as [IncomingMessage];
  const serial = (answer.socket as TLSSocket).getPeerCertificate().serialNumber;
  const chunks: Buffer[] = [];
  for await (const chunk of answer) chunks.push(chunk as Buffer);
  return { status: answer.statusCode ?? 0, serial, body: JSON.parse(Buffer.concat(chunks).toString('utf8')) as unknown };
}

describe('a house that speaks TLS', () => {
  it('TL3 has the same api and socket there, and its cookies go by TLS alone', async () => {
    const { server, port, house: plainHouse } = await secureHouse();
    const { root } = server.authority;
    expect((await over(root, port, '/api/access')).status).toBe(200);
    const socket = new WebSocket(`wss://localhost:${port}/live?page=phone`, { ca: [root], origin: `https://localhost:${port}` });
    onTestFinished(() => socket.terminate());
    const client = new LiveClient(socket);
    const [answer] = (await once(socket, 'upgrade')) as [IncomingMessage];
    if (socket.readyState === WebSocket.CONNECTING) await once(socket, 'open');
    client.say(hello());
    await client.first('live');
    expect(answer.headers['set-cookie']?.[0]).toMatch(/^__Host-ovenward-phone=[\w-]{43}; .*Path=\/; HttpOnly; SameSite=Strict; Secure$/);
    expect((await client.give({ type: 'askSoundTest' })).ok).toBe(true);
    // A token that went over plain http once is worth nothing over TLS, and the other way round.
    const token = answer.headers['set-cookie']?.[0]?.split(/[=;]/)[1] ?? '';
    expect((await over(root, port, '/api/access', { cookie: `__Host-ovenward-phone=${token}` })).body).toMatchObject({ role: 'manage' });
    expect(
      (
        await over(root, port, '/api/access', {
          cookie: `__Host-ovenward-phone=${tokenOf((await LiveClient.live(plainHouse.app)).deviceId)}`,
        })
      ).body,
    ).toMatchObject({ role: null });
  });

  it('TL4 renews its certificate a month before it ends, and when this machine has another address; nobody has to do anything', async () => {
    const { server, port, machine, move, warned } = await secureHouse();
    const { root } = server.authority;
    const first = await over(root, port, '/api/access');
    await machine.pass(3_600_000);
    expect((await over(root, port, '/api/access')).serial).toBe(first.serial);
    move(['192.168.7.9']);
    await server.look();
    const second = await over(root, port, '/api/access');
    expect(second.serial).not.toBe(first.serial);
    machine.passUnnoticed((LEAF_DAYS - 31) * DAY_MS);
    await server.look();
    expect((await over(root, port, '/api/access')).serial).toBe(second.serial);
    machine.passUnnoticed(2 * DAY_MS);
    await server.look();
    expect(server.notAfterMs - machine.wallMs()).toBe(LEAF_DAYS * DAY_MS);
    // Made by a clock that was a year ahead, and set right since.
    const ahead = server.notAfterMs;
    machine.setWallClock(-365 * DAY_MS);
    await server.look();
    expect(server.notAfterMs).toBe(ahead - 365 * DAY_MS);
    expect(warned).toEqual([]);
    move(['203.0.113.9']);
    await server.look();
    expect(warned).toEqual([[{ leftOut: ['203.0.113.9'] }, expect.stringContaining('cannot speak for them')]]);
  });

  it('TL5 gives over plain http only its root and what is to be done with it, and leads on who has come through by TLS', async () => {
    const { house, port, server } = await secureHouse();
    const ask = async (url: string, headers: Record<string, string> = {}, method: 'GET' | 'POST' = 'GET') =>
      house.app.inject({ method, url, headers: { host: 'ovens.local:8420', ...headers }, remoteAddress: '192.0.2.7' });
    const named = await openTestHouse({
      names: ['ovens.local'],
      trusted: () => ({ root: server.authority.root, fingerprint: server.authority.fingerprint, port }),
    });
    const by = async (url: string, headers: Record<string, string> = {}, method: 'GET' | 'POST' = 'GET') =>
      named.house.app.inject({ method, url, headers: { host: 'ovens.local:8420', ...headers }, remoteAddress: '192.0.2.7' });
    expect((await ask('/api/trust')).statusCode).toBe(421);
    expect((await by('/api/trust')).json()).toEqual({ fingerprint: server.authority.fingerprint, port });
    const root = await by('/root.crt');
    expect(root.headers['content-type']).toBe('application/x-x509-ca-cert');
    expect(new X509Certificate(root.body).fingerprint256).toBe(server.authority.fingerprint);
    expect((await by('/api/state')).statusCode).toBe(403);
    expect((await by('/api/join', {}, 'POST')).statusCode).toBe(403);
    const untrusting = await by('/phone?language=fr');
    expect([untrusting.statusCode, untrusting.headers.location]).toEqual([303, '/trust?to=%2Fphone%3Flanguage%3Dfr']);
    const trusting = await by('/phone?language=fr', { cookie: 'ovenward-trusts=1' });
    expect([trusting.statusCode, trusting.headers.location]).toEqual([307, `https://ovens.local:${port}/phone?language=fr`]);
    expect(trusting.headers['strict-transport-security']).toBeUndefined();
  });

  it('TL5 goes on over plain http on its own machine, and says that there is no root where there is no TLS', async () => {
    const { plainPort } = await secureHouse();
    const asked = plainRequest({ host: '127.0.0.1', port: plainPort, path: '/api/state' });
    asked.end();
    const [answer] = (await once(asked, 'response')) as [IncomingMessage];
    answer.resume();
    expect(answer.statusCode).toBe(200);
    const { house } = await openTestHouse();
    for (const url of ['/root.crt', '/api/trust']) expect((await house.app.inject(url)).statusCode).toBe(404);
  });

  it('TL6 is started by an option, and the console shows where and by which root', async () => {
    const server = await ServerProcess.started([
      '--data',
      join(folderForTest(), 'data'),
      '--port',
      '0',
      '--tls-port',
      '0',
      '--tls',
      '--here',
    ]);
    const port = Number(/^TLS {4}https:\/\/localhost:(\d+)\/$/m.exec(server.stdout)?.[1]);
    const { fingerprint } = (await server.get('/api/trust')).body as { fingerprint: string };
    expect(server.stdout).toContain(fingerprint);
    const root = await (await fetch(`http://127.0.0.1:${server.port}/root.crt`)).text();
    expect((await over(root, port, '/api/access')).status).toBe(200);
    expect((await server.end('SIGTERM')).code).toBe(0);
  });
});
