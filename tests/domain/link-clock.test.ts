import { describe, expect, test } from 'vitest';
import { HouseClockReader, houseAt, NO_CLOCK, withAnchor, withPing, type HouseClock } from '../../display/link/house-clock.ts';
import { connectedPhone } from './support/link-world.ts';

const HOUR_MS = 3_600_000;
const ANCHOR = { houseMs: 1_000_000, realMs: 500_000, pace: 1 };

/** A ping to a server whose real time is `offsetMs` ahead of the page's clock, there and back in so many ms. */
function sampled(clock: HouseClock, atMs: number, offsetMs: number, thereMs: number, backMs: number): HouseClock {
  const serverMs = atMs + thereMs + offsetMs;
  return withPing(clock, { t1: atMs, t2: serverMs, t3: serverMs, t4: atMs + thereMs + backMs });
}

describe('house time', () => {
  test('a wall clock an hour wrong does no harm', () => {
    const { world, house, phone } = connectedPhone();
    phone.wallErrorMs = HOUR_MS;
    world.pass(60_000);
    expect(Math.abs(phone.client.nowMs() - house.nowMs)).toBeLessThanOrEqual(1);
    phone.finish('C1', 'weigh');
    expect(Math.abs((house.floor.piece('C1').steps['weigh']?.endedMs ?? 0) - house.nowMs)).toBeLessThanOrEqual(1);
  });

  test('runs at the house’s pace', () => {
    const { world, house, phone } = connectedPhone(60);
    const fromMs = phone.client.nowMs();
    world.pass(1_000);
    expect(phone.client.nowMs() - fromMs).toBe(60_000);
    expect(Math.abs(phone.client.nowMs() - house.nowMs)).toBeLessThanOrEqual(60);
    expect(phone.client.view.pace).toBe(60);
  });

  test('keeps counting without a server', () => {
    const { world, house, phone } = connectedPhone();
    house.isAway = true;
    house.drop();
    world.pass(HOUR_MS);
    expect(Math.abs(phone.client.nowMs() - house.nowMs)).toBeLessThanOrEqual(1);
  });

  test('believes the sample with the least round trip (RFC 5905 section 10)', () => {
    let clock = withAnchor(NO_CLOCK, ANCHOR);
    clock = sampled(clock, 0, 500_000, 5, 5);
    clock = sampled(clock, 1_000, 500_000, 190, 10);
    expect(clock.estimate.offsetMs).toBe(500_000);
  });

  test('a correction below a step never runs it backwards', () => {
    const reader = new HouseClockReader();
    let clock = sampled(withAnchor(NO_CLOCK, ANCHOR), 0, 500_100, 100, 100);
    let last = reader.read(clock, 200, 0);
    for (let n = 1; n <= 20; n += 1) {
      clock = sampled(clock, 200 + n, 500_000, 1, 1);
      const next = reader.read(clock, 202 + n, 0);
      expect(next).toBeGreaterThanOrEqual(last);
      last = next;
    }
    expect(reader.read(clock, 10_000, 0)).toBeCloseTo(1_010_000, 0);
  });

  test('a clock that stood still while the device slept is put right by the first sample', () => {
    let clock = withAnchor(NO_CLOCK, ANCHOR);
    for (let n = 0; n < 8; n += 1) clock = sampled(clock, n * 10, 500_000, 1, 1);
    // Twenty minutes of sleep: the server's time went on, and the network is slower than it was.
    clock = sampled(clock, 1_000, 500_000 + 20 * 60_000, 30, 30);
    expect(houseAt(clock, 1_000)).toBe(1_000_000 + 1_000 + 20 * 60_000);
  });

  test('a new anchor makes the samples under the old one worthless', () => {
    let clock = sampled(withAnchor(NO_CLOCK, ANCHOR), 0, 500_000, 1, 1);
    clock = withAnchor(clock, { houseMs: 9_000_000, realMs: 500_000, pace: 1 });
    expect(clock.estimate.samples).toEqual([]);
    clock = withAnchor(sampled(clock, 10, 500_000, 1, 1), { houseMs: 9_000_100, realMs: 500_100, pace: 1 });
    expect(clock.estimate.samples).toHaveLength(1);
  });

  test('the phone asks eight times on connecting, and again when it is woken', () => {
    const { world, house, phone } = connectedPhone();
    const pings = (): number => house.line.heard.filter((message) => message.type === 'ping').length;
    expect(pings()).toBe(8);
    phone.client.wake();
    world.pass(1);
    expect(pings()).toBe(16);
  });
});
