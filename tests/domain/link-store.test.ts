import { describe, expect, test } from 'vitest';
import { tapTimeOf, type KeptRecord } from '../../display/link/kept-tap.ts';
import { PageLoadGuard } from '../../display/link/page-load-guard.ts';
import { readDown } from '../../display/link/read-down.ts';
import { RECONNECT_FIRST_MS, RECONNECT_LONGEST_MS, reconnectDelayMs, retryTapDelayMs } from '../../display/link/reconnect-delay.ts';
import { newId } from '../../display/link/random-id.ts';
import { tapStoreOn, type TextStore } from '../../display/link/tap-store.ts';
import { tapTimeSchema } from '../../shared/floor/commands.ts';
import { isId } from '../../shared/ids.ts';
import { idOf } from './support/ids.ts';

const DAY_MS = 86_400_000;

function textStore(): TextStore & { readonly texts: Map<string, string> } {
  const texts = new Map<string, string>();
  return {
    texts,
    get length() {
      return texts.size;
    },
    key: (index) => [...texts.keys()][index] ?? null,
    getItem: (key) => texts.get(key) ?? null,
    setItem: (key, value) => void texts.set(key, value),
    removeItem: (key) => void texts.delete(key),
  };
}

function record(n: number): KeptRecord {
  return {
    format: 1,
    commandId: idOf(n),
    command: { type: 'hearAllCalls' },
    kitchenId: idOf(9),
    pageId: idOf(8),
    monotonicMs: 1_000,
    wallMs: 50_000,
    tapMs: 70_000,
    order: n,
  };
}

describe('kept taps', () => {
  test('come back in the order they were made', () => {
    const texts = textStore();
    const store = tapStoreOn(texts, 'phone');
    for (const n of [3, 1, 2]) expect(store.keep(record(n))).toBe(true);
    expect(tapStoreOn(texts, 'phone').load()).toEqual([record(1), record(2), record(3)]);
    store.forget(idOf(2));
    expect(store.load().map((kept) => kept.order)).toEqual([1, 3]);
  });

  test('two tabs do not write over one another, and the wall’s are not the phone’s', () => {
    const texts = textStore();
    tapStoreOn(texts, 'phone').keep(record(1));
    tapStoreOn(texts, 'phone').keep(record(2));
    tapStoreOn(texts, 'wall').keep(record(3));
    expect(tapStoreOn(texts, 'phone').load()).toHaveLength(2);
    expect(tapStoreOn(texts, 'wall').load()).toEqual([record(3)]);
  });

  test('what is no tap is removed, what is not ours stays', () => {
    const texts = textStore();
    texts.setItem(`ovenward.tap.phone.${idOf(1)}`, '{');
    texts.setItem(`ovenward.tap.phone.${idOf(2)}`, JSON.stringify({ ...record(2), command: { type: 'blowUp' } }));
    texts.setItem('other', '{');
    tapStoreOn(texts, 'phone').keep(record(3));
    expect(tapStoreOn(texts, 'phone').load()).toEqual([record(3)]);
    expect([...texts.texts.keys()].sort()).toEqual(['other', `ovenward.tap.phone.${idOf(3)}`]);
  });

  test('a store that is full says so', () => {
    const full: TextStore = {
      ...textStore(),
      setItem: () => {
        throw new Error('quota');
      },
    };
    expect(tapStoreOn(full, 'phone').keep(record(1))).toBe(false);
  });

  test('tell how long ago by both clocks; only the wall’s after a reload', () => {
    const now = { monotonicMs: 4_000, wallMs: 53_500 };
    expect(tapTimeOf(record(1), idOf(8), now)).toEqual({ agoMonotonicMs: 3_000, agoWallMs: 3_500 });
    expect(tapTimeOf(record(1), idOf(7), now)).toEqual({ agoMonotonicMs: null, agoWallMs: 3_500 });
  });

  test('what they tell is always within what the wire allows', () => {
    for (const now of [
      { monotonicMs: 0, wallMs: -1e13 },
      { monotonicMs: 30 * DAY_MS, wallMs: 1e13 },
    ]) {
      expect(tapTimeSchema.safeParse(tapTimeOf(record(1), idOf(8), now)).success).toBe(true);
    }
  });
});

describe('small parts of the link', () => {
  test('pauses grow from a quarter second to five, and are spread', () => {
    expect(reconnectDelayMs(0, 0)).toBe(RECONNECT_FIRST_MS / 2);
    expect(reconnectDelayMs(0, 0.5)).toBeLessThan(RECONNECT_FIRST_MS);
    expect(reconnectDelayMs(1_000, 0.999)).toBeLessThanOrEqual(RECONNECT_LONGEST_MS);
    expect(reconnectDelayMs(1_000, 0)).toBe(RECONNECT_LONGEST_MS / 2);
    expect(retryTapDelayMs(1_000, 0.999)).toBeLessThanOrEqual(60_000);
  });

  test('a page loads itself again once, and again only after it has come through', () => {
    const texts = textStore();
    expect(new PageLoadGuard(texts).mayLoad()).toBe(true);
    expect(new PageLoadGuard(texts).mayLoad()).toBe(false);
    new PageLoadGuard(texts).understood();
    expect(new PageLoadGuard(texts).mayLoad()).toBe(true);
    expect(new PageLoadGuard(null).mayLoad()).toBe(false);
  });

  test('an unknown message is called by its name', () => {
    expect(readDown(JSON.stringify({ type: 'riddle' }))).toEqual({ ok: false, fault: 'riddle' });
    expect(readDown('{')).toEqual({ ok: false, fault: 'no JSON' });
    expect(readDown('[]')).toEqual({ ok: false, fault: 'no type' });
    expect(readDown(JSON.stringify({ type: 'live', sequence: -1 }))).toEqual({ ok: false, fault: 'live' });
    expect(readDown(JSON.stringify({ type: 'live', sequence: 4 }))).toEqual({ ok: true, value: { type: 'live', sequence: 4 } });
  });

  test('ids come from sixteen random bytes', () => {
    expect(isId(newId((count) => new Uint8Array(count).fill(255)))).toBe(true);
  });
});
