import { describe, expect, test } from 'vitest';
import { BURSTS, burstLengthS, HIGHEST_HZ, partialsOf } from '../../display/sound/bursts.ts';
import { gainOf } from '../../display/sound/loudness.ts';
import { LOST_LINK_SOUND_MS, LostLinkSound } from '../../display/sound/lost-link-sound.ts';
import { OwnVoice } from '../../display/sound/own-voice.ts';
import { SoundPlayer } from '../../display/sound/sound-player.ts';
import { answerSoundRequests } from '../../display/sound/sound-requests.ts';
import { vibrationOf } from '../../display/sound/vibration.ts';
import { isHearKey, type KeyPress } from '../../display/wall/hear-key.ts';
import { soundState } from '../../display/wall/sound-state.ts';
import type { FloorLink, FloorView, SoundRequest } from '../../display/link/floor-link.ts';
import { soundSettingsSchema } from '../../shared/documents/house.ts';
import { EMPTY_STATE, type FloorState } from '../../shared/floor/state.ts';
import { harbourFile } from './support/harbour.ts';
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
    expect(await none.play('call', 100)).toBe(false);
  });

  test('waits for a touch without hanging on a resume that never ends, and says so when it can sound', async () => {
    const context = new FakeContext();
    const waiting = player(context);
    const told: string[] = [];
    waiting.subscribe(() => told.push(waiting.readiness));
    expect(await waiting.turnOn()).toBe('waiting');
    expect(await waiting.play('late', 100)).toBe(false);
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
    const both = [sounding.play('call', 100), sounding.play('late', 100)];
    await context.asked(burstTones('call') + burstTones('late'));
    const starts = context.sources.map((source) => source.startS);
    expect(Math.min(...starts.slice(burstTones('call')))).toBeGreaterThan(Math.min(...starts) + burstLengthS('call') + 0.5);
    for (const source of context.sources) source.dispatchEvent(new Event('ended'));
    expect(await Promise.all(both)).toEqual([true, true]);
  });

  test('a tone that never ends did not sound', async () => {
    const context = new SoundingFake();
    const mute = new SoundPlayer({ createContext: () => context as unknown as AudioContext, wait: () => Promise.resolve() });
    expect(await mute.play('call', 100)).toBe(false);
  });

  test('gives up a context that says it runs while its clock stands, and goes on with a new one', async () => {
    const made: { currentTime: number; state: string; closed: number }[] = [];
    const create = (): AudioContext => {
      const context = Object.assign(new EventTarget(), {
        state: 'running',
        currentTime: 1,
        closed: 0,
        close: () => Promise.resolve((context.closed += 1)),
      });
      made.push(context);
      return context as unknown as AudioContext;
    };
    const watched = new SoundPlayer({ createContext: create, wait: () => Promise.resolve() });
    const told: string[] = [];
    watched.subscribe(() => told.push(watched.readiness));
    await watched.watch();
    expect(made).toEqual([]);
    await watched.turnOn();
    const [first] = made;
    for (const currentTime of [1, 6, 11]) {
      Object.assign(first ?? {}, { currentTime });
      await watched.watch();
    }
    expect([made.length, told]).toEqual([1, ['on']]);
    await watched.watch();
    expect([made.length, made[0]?.closed, told]).toEqual([2, 1, ['on', 'waiting', 'on']]);
    // One that only waits for a touch stands still as it should.
    Object.assign(made[1] ?? {}, { state: 'suspended' });
    await watched.watch();
    await watched.watch();
    expect(made).toHaveLength(2);
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

describe('S15 a phone that loses its link', () => {
  const view = (soundingDeviceId: string | null, connection: FloorView['connection'], pace = 1): FloorView =>
    ({ connection, soundingDeviceId, device: { id: 'phone' }, pace }) as unknown as FloorView;
  const followed = (...views: readonly FloorView[]): (readonly [string, number])[] => {
    const told: (readonly [string, number])[] = [];
    const voice = new OwnVoice({ follow: ({ phase }, goneMs) => told.push([phase, goneMs]) });
    for (const seen of views) voice.follow(seen, 60_000);
    return told;
  };
  const lost = { phase: 'lost', lastContactMs: 40_000 } as const;

  test('says so where it was the house’s voice, and only then', () => {
    expect(followed(view('phone', { phase: 'live' }), view(null, lost))).toEqual([
      ['live', 0],
      ['lost', 20_000],
    ]);
    expect(followed(view('wall', { phase: 'live' }), view(null, lost))).toEqual([['live', 0]]);
    expect(followed(view('phone', { phase: 'live' }), view('wall', { phase: 'live' }), view(null, lost))).toHaveLength(2);
    expect(followed(view(null, lost))).toEqual([]);
  });

  test('counts in real time, whatever the house’s pace', () => {
    expect(followed(view('phone', { phase: 'live' }), view(null, lost, 20)).at(-1)).toEqual(['lost', 1_000]);
  });
});

describe('S19 what the wall says of sound', () => {
  const HEARD_MS = Date.UTC(2026, 2, 7, 5);
  const view = (soundingDeviceId: string | null, state: Partial<FloorState> = {}, sound: object = {}): FloorView =>
    ({
      soundingDeviceId,
      device: { id: 'wall', name: 'Wall', stationId: null },
      devices: [
        { id: 'wall', name: 'Wall', stationId: null },
        { id: 'oven', name: 'Oven phone', stationId: null },
      ],
      state: {
        ...EMPTY_STATE,
        house: { version: 1, document: { ...harbourFile().house, zone: 'UTC', sound: soundSettingsSchema.parse(sound) } },
        soundHeardMs: HEARD_MS,
        ...state,
      },
    }) as unknown as FloorView;
  const HOUR_MS = 3_600_000;

  test.each([
    ['wall', 'on', 'sound ok 05:00', false],
    ['oven', 'none', 'sound on Oven phone', false],
    ['oven', 'waiting', 'touch for sound', false],
    [null, 'none', 'no device sounds', true],
    [null, 'on', 'no device sounds', true],
  ] as const)('%s sounds, this page is %s: %s', (sounding, readiness, words, isLate) => {
    expect(soundState(view(sounding), readiness, HEARD_MS + HOUR_MS)).toEqual({ words, isLate });
  });

  test.each([
    ['never tested', { soundHeardMs: null }, 1, 'sound not tested', true],
    ['heard yesterday, less than a day ago', {}, 20, 'sound ok Sat 05:00', false],
    ['heard more than a day ago', {}, 25, 'sound last heard Sat 05:00', true],
    ['not heard', { soundUnheardMs: HEARD_MS + HOUR_MS }, 2, 'sound not heard 06:00', true],
  ] as const)('%s', (_what, state, hours, words, isLate) => {
    expect(soundState(view('wall', state), 'on', HEARD_MS + hours * HOUR_MS)).toEqual({ words, isLate });
  });

  test('in quiet hours, calmly, till when; but not where a call would not be heard at all', () => {
    const quiet = { quiet: { from: '22:00', to: '05:00' } };
    const nightMs = HEARD_MS + 18 * HOUR_MS;
    expect(soundState(view('wall', {}, quiet), 'on', nightMs)).toEqual({ words: 'quiet till 05:00', isLate: false });
    expect(soundState(view('wall', { soundHeardMs: null }, quiet), 'on', nightMs)).toEqual({ words: 'sound not tested', isLate: true });
  });
});

describe('S12 how loud a percentage is', () => {
  test('half of it is 10 dB less, as loud as half in sones; full is full, none is none', () => {
    const dB = (volumePct: number): number => 20 * Math.log10(gainOf(volumePct));
    expect([100, 50, 25].map((pct) => Math.round(dB(pct) * 100) / 100)).toEqual([0, -10, -20]);
    expect([gainOf(0), gainOf(100), gainOf(150)]).toEqual([0, 1, 1]);
  });

  test('more is never less', () => {
    const gains = Array.from({ length: 100 }, (_, index) => gainOf(index + 1));
    gains.forEach((gain, index) => expect(gain).toBeGreaterThan(gains[index - 1] ?? 0));
  });
});

describe('S15 what is felt', () => {
  test.each(callLevelSchema.options)('%s has the rhythm of its burst: as long on, as long off', (burst) => {
    const pattern = vibrationOf(burst);
    expect(pattern).toHaveLength(BURSTS[burst].length * 2 - 1);
    expect(pattern.every((ms) => Number.isInteger(ms) && ms > 0)).toBe(true);
    expect(pattern.reduce((sum, ms) => sum + ms, 0)).toBe(Math.round(burstLengthS(burst) * 1000));
  });
});

describe('S15 a page that may be put to sleep', () => {
  test('says that it waits while nobody looks at it, and what it was again when it is seen', () => {
    const told: string[] = [];
    const link = { setSound: (readiness: string) => told.push(readiness), onSound: () => () => {} } as unknown as FloorLink;
    const player = { readiness: 'on', subscribe: () => () => {} } as unknown as SoundPlayer;
    let hidden = false;
    const sounding = answerSoundRequests(link, player, { isHidden: () => hidden, felt: () => {} });
    hidden = true;
    sounding.tell();
    hidden = false;
    sounding.tell();
    expect(told).toEqual(['on', 'waiting', 'on']);
  });

  test('feels and sounds what it is asked for, as loud as asked, and says so only once it has sounded', async () => {
    const log: string[] = [];
    const requests: ((asked: SoundRequest) => void)[] = [];
    const link = {
      setSound: () => {},
      onSound: (listener: (asked: SoundRequest) => void) => {
        requests.push(listener);
        return () => {};
      },
      sounded: (asked: SoundRequest) => log.push(`said ${asked.soundId}`),
    } as unknown as FloorLink;
    const player = {
      readiness: 'on',
      subscribe: () => () => {},
      play: (burst: CallLevel, volumePct: number) => {
        log.push(`${burst} at ${volumePct}`);
        return Promise.resolve(burst !== 'lost');
      },
    } as unknown as SoundPlayer;
    answerSoundRequests(link, player, { isHidden: () => false, felt: ({ burst }) => log.push(`felt ${burst}`) });
    const asked = (soundId: string, burst: CallLevel): SoundRequest => ({ soundId, burst, volumePct: 30, isTest: false, calls: [] });
    for (const request of requests) {
      request(asked('first', 'late'));
      request(asked('mute', 'lost'));
    }
    await Promise.resolve();
    await Promise.resolve();
    expect(log).toEqual(['felt late', 'late at 30', 'felt lost', 'lost at 30', 'said first']);
  });
});

describe('S20 a key on the wall', () => {
  const press = (key: string, more: Partial<KeyPress> = {}): KeyPress => ({
    key,
    code: '',
    repeat: false,
    ctrlKey: false,
    altKey: false,
    metaKey: false,
    ...more,
  });

  test.each([
    press('Enter'),
    press(' '),
    press('PageUp'),
    press('PageDown'),
    press('5', { code: 'Numpad5' }),
    press('Enter', { code: 'NumpadEnter' }),
  ])('%j means heard', (key) => {
    expect(isHearKey(key)).toBe(true);
  });

  test.each([press('a'), press('5', { code: 'Digit5' }), press('Tab'), press('Enter', { repeat: true }), press(' ', { ctrlKey: true })])(
    '%j does not',
    (key) => {
      expect(isHearKey(key)).toBe(false);
    },
  );
});
