import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { TRUST } from '../../display/words/en/trust.ts';
import { axeFaults } from './support/axe-faults.ts';
import { launchForHouse } from './support/house-pages.ts';
import { startServer, type RealServer } from './support/real-server.ts';

let browser: Browser;
let server: RealServer;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'ovenward-trust-'));
  const tls = ['--here', '--tls', '--tls-port', '0'];
  [browser, server] = await Promise.all([launchForHouse(), startServer(join(folder, 'data'), 0, 1, 'fixtures/harbour-plain.json', tls)]);
});

afterAll(async () => {
  await browser.close();
  await server.stop();
  await rm(folder, { recursive: true, force: true });
});

/** `trusts`: whatever certificate comes, as a browser that has the root takes ours. */
async function opened(trusts: boolean, path: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, reducedMotion: 'reduce', ignoreHTTPSErrors: trusts });
  const page = await context.newPage();
  await page.goto(`http://localhost:${server.port}${path}`);
  return page;
}

describe('TL7 the page that says how a phone takes in the root', () => {
  test('shows the root, what to do, and that this browser does not come through', async () => {
    const page = await opened(false, '/trust?to=%2Fphone');
    await page.getByText(TRUST.notYet).waitFor();
    const { fingerprint } = (await (await fetch(`http://localhost:${server.port}/api/trust`)).json()) as { fingerprint: string };
    await page.getByText(fingerprint).waitFor();
    expect(await page.getByText(TRUST.take).getAttribute('href')).toBe('/root.crt');
    expect(await axeFaults(page)).toEqual([]);
    expect(await page.evaluate(() => [document.cookie, document.documentElement.scrollWidth <= innerWidth])).toEqual(['', true]);
    await page.screenshot({ path: '.build/pictures/trust.png', fullPage: true });
    await page.context().close();
  });

  test('leads on over TLS once the browser comes through, to where it was going, and what was scanned comes along', async () => {
    const page = await opened(true, '/trust?to=%2Fjoin#b3ZlbndhcmQgdGlja2V0IQ');
    await page.getByText(TRUST.isTrusted).waitFor();
    const { port } = (await (await fetch(`http://localhost:${server.port}/api/trust`)).json()) as { port: number };
    expect(await page.getByText(TRUST.goOn).getAttribute('href')).toBe(`https://localhost:${port}/join#b3ZlbndhcmQgdGlja2V0IQ`);
    expect(await page.evaluate(() => document.cookie)).toBe('ovenward-trusts=1');
    expect(await axeFaults(page)).toEqual([]);
    await page.getByText(TRUST.goOn).click();
    await page.waitForURL(`https://localhost:${port}/join`);
    await page.getByRole('heading').first().waitFor();
    expect(await page.evaluate(() => isSecureContext)).toBe(true);
    await page.context().close();
  });

  test('a wall on this machine is there over TLS too, sockets and all', async () => {
    const { port } = (await (await fetch(`http://localhost:${server.port}/api/trust`)).json()) as { port: number };
    const context = await browser.newContext({ viewport: { width: 1920, height: 1080 }, ignoreHTTPSErrors: true });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
    await page.goto(`https://localhost:${port}/wall`);
    await page.locator('wall-row').first().waitFor();
    expect((await context.cookies()).map(({ name, secure, httpOnly }) => [name, secure, httpOnly])).toEqual([
      ['__Host-ovenward-wall', true, true],
    ]);
    expect(faults).toEqual([]);
    await context.close();
  });
});
