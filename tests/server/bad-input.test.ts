import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { runBadInput } from '../bad-input/main.ts';
import { ensurePartsBuilt } from './support/server-process.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

beforeAll(() => ensurePartsBuilt(['server', 'tests']), 240_000);
vi.setConfig({ testTimeout: 120_000 });

describe('the campaign of bad input', () => {
  it('BI1 20 000 spoilt messages, requests and files: nothing throws, is answered 500, or changes the state unsaid', async () => {
    const program = pathToFileURL(join(ROOT, '.build/js/tests/bad-input/main.js')).href;
    const { runBadInput: run } = (await import(/* @vite-ignore */ program)) as { runBadInput: typeof runBadInput };
    const result = await run({ inputs: 20_000, seed: 20_261_128 });
    expect(result.violations).toEqual([]);
    expect(result.socketMessages).toBeGreaterThan(8000);
    // Most is refused, and some of it is right: both sides of every check are come by.
    expect(result.socketsClosed).toBeGreaterThan(5000);
    expect(result.commandsAccepted).toBeGreaterThan(20);
    expect(Object.keys(result.statuses)).toEqual(expect.arrayContaining(['200', '400', '403', '404', '415']));
    expect(result.files).toBeGreaterThan(3000);
  });
});
