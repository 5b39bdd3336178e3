import { cpSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { main } from '../../server/cli/calc.ts';
import { MOST_INPUT_BYTES } from '../../server/cli/read-input.ts';
import { calculate } from '../../shared/calc/calculate.ts';
import { ensureServerBuilt } from './support/server-process.ts';
import { openTestHouse } from './support/test-house.ts';
import { folderForTest } from './support/temporary-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
// baeckerlatein, "Teigtemperatur": 34 °C.
const WATER = '{"desiredDoughC":26,"temperaturesC":[22,22,6],"riseK":5}';
const WATER_ANSWER = '{"requiredC":34,"reachable":true}\n';

interface Said {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

async function calc(args: readonly string[], input: string | Uint8Array | readonly Uint8Array[]): Promise<Said> {
  let [out, err] = ['', ''];
  const chunks = typeof input === 'string' || input instanceof Uint8Array ? [input] : input;
  const code = await main(args, {
    input: (async function* () {
      yield* chunks;
    })(),
    out: (text) => (out += text),
    err: (text) => (err += text),
  });
  return { code, out, err };
}

/** A program with an input, run to its end. */
function ran(file: string, args: readonly string[], cwd: string, input: string): Promise<Said> {
  return new Promise((resolve, reject) => {
    const child = spawn(file, args, { cwd, stdio: ['pipe', 'pipe', 'pipe'] });
    let [out, err] = ['', ''];
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString('utf8')));
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString('utf8')));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
    child.stdin.end(input);
  });
}

/** What stands on stderr, which has to be one JSON object and nothing else. */
function errorOf(said: Said): unknown {
  expect(said).toMatchObject({ code: 2, out: '' });
  expect(said.err.trimEnd()).not.toContain('\n');
  return JSON.parse(said.err);
}

const fault = (code: string, field: string) => ({ error: { code, field, message: expect.stringMatching(/\w/) as string } });

describe('calc NAME', () => {
  it('K12 answers with one JSON object', async () => {
    expect(await calc(['water'], WATER)).toEqual({ code: 0, out: WATER_ANSWER, err: '' });
  });

  it('K12 reads what comes in pieces, cut within a letter', async () => {
    const bytes = new TextEncoder().encode('{"parts":[{"name":"Teig für Brötchen","items":[{"item":"Mehl","kind":"flour","g":1}]}]}');
    const cut = bytes.indexOf(0xc3) + 1;
    const said = await calc(['formula'], [bytes.subarray(0, cut), bytes.subarray(cut)]);
    expect(said.code).toBe(0);
    expect(JSON.parse(said.out)).toMatchObject({ parts: [{ name: 'Teig für Brötchen' }] });
  });

  it.each([
    ['no name', [], WATER, 'nameUnknown', 'name'],
    ['an unknown name', ['rise'], WATER, 'nameUnknown', 'name'],
    ['two names', ['water', 'heat'], WATER, 'nameUnknown', 'name'],
    ['no input', ['water'], '', 'notJson', 'body'],
    ['half an input', ['water'], WATER.slice(0, 20), 'notJson', 'body'],
    ['two inputs', ['water'], `${WATER}${WATER}`, 'notJson', 'body'],
    ['a number that is no JSON', ['water'], '{"baseC":NaN,"temperaturesC":[1]}', 'notJson', 'body'],
    ['a number beyond all', ['water'], '{"baseC":1e999,"temperaturesC":[1]}', 'notFinite', 'baseC'],
    ['a field too many', ['water'], '{"baseC":60,"temperaturesC":[22],"__proto__":1}', 'fieldUnknown', '__proto__'],
    ['bytes that are no text', ['water'], new Uint8Array([0x22, 0xff, 0x22]), 'outOfRange', 'body'],
    ['more than anybody weighs', ['water'], new Uint8Array(MOST_INPUT_BYTES + 1).fill(0x20), 'outOfRange', 'body'],
  ])('K12 refuses %s with exit code 2 and the fault alone', async (_what, args, input, code, field) => {
    expect(errorOf(await calc(args, input))).toEqual(fault(code, field));
  });

  it('K12 says nothing else as npm runs it, on either stream', async () => {
    const run = (name: readonly string[], input: string) => ran('npm', ['run', '-s', 'calc', '--', ...name], ROOT, input);
    expect(await run(['water'], WATER)).toEqual({ code: 0, out: WATER_ANSWER, err: '' });
    expect(errorOf(await run(['water'], '{'))).toEqual(fault('notJson', 'body'));
    expect(errorOf(await run([], WATER))).toEqual(fault('nameUnknown', 'name'));
  });

  it('K12 is as silent where it has to be built first, and says so where that fails', async () => {
    ensureServerBuilt();
    const copy = folderForTest();
    const copied = ['shared', 'server', 'package.json', 'package-lock.json', 'tsconfig.json', '.build/js', '.build/server.stamp.json'];
    for (const path of copied) cpSync(join(ROOT, path), join(copy, path), { recursive: true });
    symlinkSync(join(ROOT, 'node_modules'), join(copy, 'node_modules'));
    // What is built is no longer what stands there: the fault's words tell which of the two has answered.
    const source = join(copy, 'shared/calc/calculate.ts');
    writeFileSync(source, readFileSync(source, 'utf8').replace('one of: ', 'built anew: '));
    const run = (name: string) => ran(process.execPath, ['server/cli/launch.mjs', 'calc', name], copy, WATER);
    expect(errorOf(await run('rise'))).toMatchObject({ error: { message: expect.stringMatching(/^built anew: /) as string } });
    expect(await run('water')).toEqual({ code: 0, out: WATER_ANSWER, err: '' });
    writeFileSync(join(copy, 'shared/broken.ts'), 'export const half: string = 1;\n');
    const failed = await run('water');
    expect(failed).toMatchObject({ code: 1, out: '' });
    expect(failed.err).toContain('The build failed');
  }, 60_000);
});

describe('POST /api/calc/:name', () => {
  it('K13 answers as the command line does', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    const formula = { parts: [{ name: 'Dough', items: [{ item: 'flour', kind: 'flour', g: 1000 }] }], scale: { doughG: 500 } };
    const heat = { targetC: 25, parts: [{ g: 1000, kJPerKgK: 1.8, tempC: 22 }], waterG: 650, riseK: 4, flourG: 1000, hydrationKJPerKg: 0 };
    for (const [name, payload] of [
      ['formula', formula],
      ['heat', heat],
      ['water', { desiredDoughC: 26, temperaturesC: [22, 22, 6], riseK: 5 }],
      ['rest', { nominalMin: 120, referenceC: 25, doughC: 28, ambientC: 22, tauMin: 180, model: { kind: 'perKelvin', rate: 0.1 } }],
      [
        'core',
        {
          readings: [
            { atMin: 10, coreC: 50 },
            { atMin: 14, coreC: 70 },
          ],
          targetC: 90,
          altitudeM: 0,
        },
      ],
      ['cooling', { startC: 57, ambientC: 3, tauMin: 90, ruleSet: 'us-food-code' }],
    ] as const) {
      const answer = await house.app.inject({ method: 'POST', url: `/api/calc/${name}`, payload });
      expect(answer.statusCode).toBe(200);
      expect(answer.headers['content-type']).toMatch(/^application\/json/);
      const expected = calculate(name, payload);
      expect(answer.json()).toEqual(expected.ok ? expected.value : null);
    }
  });

  it.each([
    ['an unknown name', '/api/calc/rise', WATER, 404, 'nameUnknown', 'name'],
    ['a field too many', '/api/calc/water', '{"baseC":60,"temperaturesC":[22],"x":1}', 400, 'fieldUnknown', 'x'],
    ['a negative weight', '/api/calc/water', '{"baseC":60,"temperaturesC":[22],"waterG":-1}', 400, 'negative', 'waterG'],
    ['no JSON', '/api/calc/water', '{"baseC":', 400, 'notJson', 'body'],
    ['no body', '/api/calc/water', '', 400, 'notJson', 'body'],
  ])('K13 refuses %s as a problem with code, field and message', async (_what, url, payload, status, code, field) => {
    const { house } = await openTestHouse({ isEmpty: true });
    const answer = await house.app.inject({ method: 'POST', url, payload, headers: { 'content-type': 'application/json' } });
    expect(answer.statusCode).toBe(status);
    expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(answer.json()).toMatchObject({ status, code, field, message: expect.stringMatching(/\w/) as string });
  });

  it('K13 leaves what is too large and what is no JSON by its type to the rules of every route', async () => {
    const { house } = await openTestHouse({ isEmpty: true });
    const text = await house.app.inject({
      method: 'POST',
      url: '/api/calc/water',
      payload: WATER,
      headers: { 'content-type': 'text/csv' },
    });
    expect(text.statusCode).toBe(415);
    const long = await house.app.inject({ method: 'POST', url: '/api/calc/water', payload: { x: 'x'.repeat(300_000) } });
    expect(long.statusCode).toBe(413);
    expect(long.json()).toMatchObject({ type: 'urn:ovenward:problem:tooLarge' });
  });
});
