import { describe, expect, test } from 'vitest';
import { BURSTS, burstLengthS, HIGHEST_HZ, partialsOf } from '../../display/sound/bursts.ts';
import { LOST_LINK_SOUND_MS, LostLinkSound } from '../../display/sound/lost-link-sound.ts';
import { SoundPlayer } from '../../display/sound/sound-player.ts';
import { soundState } from '../../display/wall/sound-state.ts';
import type { FloorView } from '../../display/link/floor-link.ts';
import { callLevelSchema, type CallLevel } from '../../shared/floor/events.ts';

describe('the bursts', () => {
  test('have the rhythm that the design gives them', () => {
    const rhythm = (burst: 'call' | 'late' | 'lost'): number[] => BURSTS[burst].map((tone) => Math.round(tone.startS * 1000));
    expect(rhythm('call')).toEqual([0, 300, 600]);
    expect(rhythm('late')).toEqual([0, 300, 600, 900]);
    const group = [0, 170, 340, 620, 790];
    expect(rhythm('lost').slice(0, 5)).toEqual(group);
    const again = rhythm('lost')[5] ?? 0;
    expect(rhythm('lost').slice(5)).toEqual(group.map((startMs) => startMs + again));
    expect(BURSTS.call.map((tone) => tone.frequencyHz)).toEqual([660, 660, 880]);
    expect(new Set(BURSTS.late.map((tone) => tone.frequencyHz))).toEqual(new Set([660]));
    expect(new Set(BURSTS.lost.map((tone) => tone.frequencyHz))).toEqual(new Set([740]));
    expect(BURSTS.call.concat(BURSTS.late).every((tone) => tone.lengthS === 0.2)).toBe(true);
    expect(BURSTS.lost.every((tone) => tone.lengthS === 0.12)).toBe(true);
  });

  test.each(callLevelSchema.options)('%s is over in 3 s and its tones do not run into one another', (burst) => {
    expect(burstLengthS(burst)).toBeLessThan(3);
    BURSTS[burst].forEach((tone, index) => {
      const next = BURSTS[burst][index + 1];
      if (next !== undefined) expect(tone.startS + tone.lengthS).toBeLessThan(next.startS);
    });
  });

  test('have harmonics of 1, .9, .8, .6, .35 up to 2500 Hz and none above', () => {
    const amplitudes = (frequencyHz: number): number[] => {
      const partials = partialsOf(frequencyHz);
      return partials.map((partial) => Math.round((partial.share / (partials[0]?.share ?? 1)) * 100) / 100);
    };
    expect(amplitudes(440)).toEqual([1, 0.9, 0.8, 0.6, 0.35]);
    expect(amplitudes(660)).toEqual([1, 0.9, 0.8]);
    expect(amplitudes(880)).toEqual([1, 0.9]);
    for (const frequencyHz of [440, 660, 740, 880]) {
      expect(partialsOf(frequencyHz).every((partial) => partial.frequencyHz <= HIGHEST_HZ)).toBe(true);
      expect(partialsOf(frequencyHz).reduce((sum, partial) => sum + partial.share, 0)).toBeCloseTo(1, 9);
    }
  });
});

/** An audio context as far as turning it on goes. */
class FakeContext extends EventTarget {
  state = 'suspended';
  allowed = false;

  resume(): Promise<void> {
    // Chromium's stays pending until a touch allows sound.
    if (!this.allowed) return new Promise(() => {});
    this.state = 'running';
    this.dispatchEvent(new Event('statechange'));
    return Promise.resolve();
  }
}

function burstTones(burst: CallLevel): number {
  return BURSTS[burst].reduce((count, tone) => count + partialsOf(tone.frequencyHz).length, 0);
}

/** A source that keeps when it was to start. */
class FakeSource extends EventTarget {
  readonly frequency = { value: 0 };
  startS = Number.NaN;

  connect(next: unknown): unknown {
    return next;
  }

  start(atS: number): void {
    this.startS = atS;
  }

  stop(): void {}
}

/** A running audio context that keeps its sources. */
class SoundingFake extends EventTarget {
  readonly state = 'running';
  readonly currentTime = 5;
  readonly destination = {};
  readonly sources: FakeSource[] = [];

  createOscillator(): FakeSource {
    const source = new FakeSource();
    this.sources.push(source);
    return source;
  }

  createGain(): unknown {
    const gain = { value: 0, setValueAtTime: () => gain, linearRampToValueAtTime: () => gain };
    return { gain, connect: (next: unknown) => next };
  }

  /** Resolves once so many sources are scheduled. */
  async asked(count: number): Promise<void> {
    for (let turn = 0; turn < 1000 && this.sources.length < count; turn += 1) await Promise.resolve();
    expect(this.sources).toHaveLength(count);
  }
}

describe('the sound player', () => {
  function player(context: FakeContext): SoundPlayer {
    return new SoundPlayer({ createContext: () => context as unknown as AudioContext, wait: () => Promise.resolve() });
  }

  test('says none where the browser has no sound', async () => {
    const none = new SoundPlayer({ createContext: null, wait: () => Promise.resolve() });
    expect(none.readiness).toBe('none');
    expect(await none.turnOn()).toBe('none');
    expect(await none.play('call')).toBe(false);
  });

  test('waits for a touch without hanging on a resume that never ends, and says so when it can sound', async () => {
    const context = new FakeContext();
    const waiting = player(context);
    const told: string[] = [];
    waiting.subscribe(() => told.push(waiting.readiness));
    expect(await waiting.turnOn()).toBe('waiting');
    expect(await waiting.play('late')).toBe(false);
    context.allowed = true;
    expect(await waiting.turnOn()).toBe('on');
    expect(told).toEqual(['on']);
  });

  test('two bursts asked for at once follow one another, and only a tone that ran out counts as sounded', async () => {
    const context = new SoundingFake();
    const sounding = new SoundPlayer({
      createContext: () => context as unknown as AudioContext,
      wait: (ms) => (ms > 1000 ? new Promise(() => {}) : Promise.resolve()),
    });
    const both = [sounding.play('call'), sounding.play('late')];
    await context.asked(burstTones('call') + burstTones('late'));
    const starts = context.sources.map((source) => source.startS);
    expect(Math.min(...starts.slice(burstTones('call')))).toBeGreaterThan(Math.min(...starts) + burstLengthS('call') + 0.5);
    for (const source of context.sources) source.dispatchEvent(new Event('ended'));
    expect(await Promise.all(both)).toEqual([true, true]);
  });

  test('a tone that never ends did not sound', async () => {
    const context = new SoundingFake();
    const mute = new SoundPlayer({ createContext: () => context as unknown as AudioContext, wait: () => Promise.resolve() });
    expect(await mute.play('call')).toBe(false);
  });

  test('says so when the sound is taken away again', async () => {
    const context = new FakeContext();
    context.allowed = true;
    const on = player(context);
    await on.turnOn();
    context.state = 'suspended';
    context.dispatchEvent(new Event('statechange'));
    expect(on.readiness).toBe('waiting');
  });
});

describe('a lost link', () => {
  test('sounds once after 30 s, and again only after the link has stood in between', () => {
    const timers: { ms: number; run: () => void; cancelled: boolean }[] = [];
    let sounded = 0;
    const lost = new LostLinkSound({
      after: (ms, run) => {
        const timer = { ms, run, cancelled: false };
        timers.push(timer);
        return () => {
          timer.cancelled = true;
        };
      },
      sound: () => {
        sounded += 1;
      },
    });
    lost.follow({ phase: 'connecting' }, 0);
    expect(timers).toHaveLength(0);
    lost.follow({ phase: 'lost', lastContactMs: 0 }, 15_000);
    lost.follow({ phase: 'connecting' }, 0);
    lost.follow({ phase: 'lost', lastContactMs: 0 }, 18_000);
    expect(timers.map((timer) => timer.ms)).toEqual([LOST_LINK_SOUND_MS - 15_000]);
    timers[0]?.run();
    lost.follow({ phase: 'lost', lastContactMs: 0 }, 40_000);
    expect([sounded, timers.length]).toEqual([1, 1]);
    lost.follow({ phase: 'live' }, 0);
    lost.follow({ phase: 'lost', lastContactMs: 0 }, 15_000);
    lost.follow({ phase: 'live' }, 0);
    expect(timers[1]?.cancelled).toBe(true);
  });
});

describe('what the wall says of sound', () => {
  const view = (soundingDeviceId: string | null): FloorView =>
    ({
      soundingDeviceId,
      device: { id: 'wall', name: 'Wall', stationId: null },
      devices: [{ id: 'oven', name: 'Oven phone', stationId: null }],
    }) as unknown as FloorView;

  test.each([
    ['wall', 'on', 'sound on', false],
    ['oven', 'none', 'sound on Oven phone', false],
    ['oven', 'waiting', 'touch for sound', false],
    [null, 'none', 'no device sounds', true],
    [null, 'on', 'no device sounds', true],
  ] as const)('%s sounds, this page is %s: %s', (sounding, readiness, words, isLate) => {
    expect(soundState(view(sounding), readiness)).toEqual({ words, isLate });
  });
});
