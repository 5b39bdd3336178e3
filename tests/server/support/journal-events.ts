import type { FloorEvent } from '../../../shared/floor/events.ts';
import type { Outcome } from '../../../shared/floor/refusals.ts';
import { derivedId, idFromBytes } from '../../../shared/ids.ts';
import type { JournalEntry } from '../../../server/journal/journal.ts';

/** The id numbered n, so that tests can name what they mean. */
export function idOf(n: number): string {
  const bytes = new Uint8Array(16);
  new DataView(bytes.buffer).setUint32(8, n);
  return idFromBytes(bytes);
}

/** An id as unlike its neighbours as a random one, but the same in every run. */
export function scatteredId(n: number): string {
  const bytes = new Uint8Array(16);
  let state = BigInt(n) + 1n;
  // splitmix64 (Steele, Lea, Flood: Fast splittable pseudorandom number generators, 2014); constants from memory.
  for (let index = 0; index < 16; index += 1) {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n);
    let mixed = BigInt.asUintN(64, (state ^ (state >> 30n)) * 0xbf58476d1ce4e5b9n);
    mixed = BigInt.asUintN(64, (mixed ^ (mixed >> 27n)) * 0x94d049bb133111ebn);
    bytes[index] = Number((mixed ^ (mixed >> 31n)) & 0xffn);
  }
  return idFromBytes(bytes);
}

export const DEVICE_ID = idOf(9_000_001);
export const START_MS = Date.UTC(2026, 2, 2, 2, 0, 0);

/** A done step and the start of the next, as one tap makes them. */
export function tapEvents(workpieceId: string, atMs: number, stepId = 'first-speed', nextId = 'second-speed'): FloorEvent[] {
  return [
    { type: 'stepDone', workpieceId, stepId, atMs, stationId: 'mixing' },
    {
      type: 'stepStarted',
      workpieceId,
      stepId: nextId,
      atMs,
      stationId: 'mixing',
      resources: [{ kind: 'mixer', id: 'spiral-80' }],
      pins: { earliestMin: 10, targetMin: 13, latestMin: 16, factor: 1, model: 'nominal', houseVersion: 1 },
    },
  ];
}

/** A command as it goes into the journal; its outcome, if none is given, names its last event. */
export function entryOf(n: number, events: readonly FloorEvent[], sequence: number, outcome?: Outcome): JournalEntry {
  return {
    commandId: idOf(n),
    deviceId: DEVICE_ID,
    receivedMs: START_MS + n * 1000,
    events,
    outcome: outcome ?? { ok: true, sequence, undoable: true },
  };
}

/** A formula with a method, as large as real ones are. */
export function formulaEvent(version = 1): FloorEvent {
  return {
    type: 'formulaAdopted',
    version,
    formula: {
      id: 'country',
      name: 'Country — pain de campagne, 78 % water',
      letters: 'C',
      kind: 'dough',
      parts: [
        {
          name: 'Levain',
          role: 'preferment',
          items: [
            { item: 'wheat-t65', g: 1500 },
            { item: 'water', g: 1500 },
          ],
        },
        {
          name: 'Dough',
          role: 'dough',
          items: [
            { item: 'wheat-t65', g: 8500.5 },
            { part: 'Levain', g: 2800 },
            { item: 'salt', g: 200 },
          ],
        },
      ],
      doughC: 24.5,
      takesBack: [],
      sidePreps: [],
      method: [
        {
          id: 'second-speed',
          verb: 'secondSpeed',
          kind: 'judged',
          station: 'mixing',
          minutes: { earliest: 3, target: 5, latest: 8 },
          toleranceMin: { late: 2, lost: 6 },
          check: 'Windowpane: a piece stretched between the fingers lets light through before it tears, everywhere and without lumps.',
          caution: 'Mixer: guard closed, hands and sleeves away from the turning tool.',
          claims: [{ kind: 'mixer', ids: ['spiral-80', 'spiral-40'], count: 1 }],
          additions: [{ item: 'water', pct: 4.25, heldBack: true }],
          ripening: { model: 'cardinal', referenceC: 24, minC: -2, optC: 30, maxC: 45 },
        },
      ],
    },
  };
}

/**
 * A day's mix of commands as the floor makes them, `count` of them: a tap closes a step and starts the next; before it the step's
 * call is raised, sounded and heard, each a command of its own. Nine workpieces a day, each with a tag and an id of its own.
 */
export function dayOfEntries(count: number, firstSequence = 0): JournalEntry[] {
  const steps = [
    'first-speed',
    'second-speed',
    'turn-out',
    'bulk',
    'fold-1',
    'fold-2',
    'divide',
    'bench-rest',
    'shape',
    'prove',
    'load',
    'bake',
  ];
  const phones = [1, 2, 3].map((n) => scatteredId(50_000_000 + n));
  const entries: JournalEntry[] = [];
  let sequence = firstSequence;
  for (let n = 0; n < count; n += 1) {
    const round = Math.floor(n / 8);
    const workpieceId = scatteredId(40_000_000 + Math.floor(round / (9 * steps.length)) * 9 + (round % 9));
    const stepId = steps[Math.floor(round / 9) % steps.length] ?? '';
    const nextId = steps[(Math.floor(round / 9) + 1) % steps.length] ?? '';
    const atMs = START_MS + n * 20_011;
    const call = { workpieceId, stepId, level: 'call' as const };
    // Of eight commands five are taps with two events or more and three are calls' with one: 1.7 events each.
    const kinds: readonly FloorEvent[][] = [
      [{ type: 'callRaised', ...call, dueMs: atMs - 400, atMs }],
      [{ type: 'callSounded', burst: 'call', calls: [call], atMs }],
      [{ type: 'callHeard', ...call, atMs }],
    ];
    const events = kinds[n % 8] ?? tapEvents(workpieceId, atMs, stepId, nextId);
    if (n % 8 === 7) events.push({ type: 'workpieceMoved', workpieceId, placeId: 'warm-shelf', atMs });
    sequence += events.length;
    entries.push({
      commandId: scatteredId(firstSequence * 8 + n),
      deviceId: phones[n % 3] ?? '',
      receivedMs: atMs + 37,
      events,
      outcome: { ok: true, sequence, undoable: n % 8 > 2 },
    });
  }
  return entries;
}

/** The id of the n-th thing a command made. */
export function childId(n: number, child: number): string {
  return derivedId(idOf(n), child);
}
