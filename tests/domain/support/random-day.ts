import fc from 'fast-check';
import { callsToRaise } from '../../../shared/floor/calls.ts';
import type { FloorCommand } from '../../../shared/floor/commands.ts';
import { dueOf } from '../../../shared/floor/due.ts';
import { nextSound } from '../../../shared/floor/sounding.ts';
import type { Workpiece } from '../../../shared/floor/state.ts';
import { wayOf } from '../../../shared/floor/way.ts';
import type { Floor } from './floor.ts';
import { OTHER_PHONE, PHONE, SERVER_DEVICE } from './ids.ts';
import { otherWord } from './other-words.ts';

const MINUTE_MS = 60_000;

/** One thing that a thumb, the server or time does on a random day. What it is about is chosen among what is there then. */
export interface Deed {
  readonly what:
    | 'finish'
    | 'start'
    | 'more'
    | 'hear'
    | 'hearAll'
    | 'hold'
    | 'release'
    | 'skip'
    | 'discard'
    | 'read'
    | 'undo'
    | 'raise'
    | 'sound'
    | 'jump'
    | 'wait'
    | 'soundTest'
    | 'other';
  /** Which workpiece and which step, by a number that is taken modulo how many there are. */
  readonly pick: number;
  /** Most taps mean the step that is called; some mean another. */
  readonly isAstray: boolean;
  readonly isOther: boolean;
  /** Most hands are at the few doughs that are furthest, so that a day gets to its end. */
  readonly isNear: boolean;
  /** Whether time first runs on until the workpiece wants hands. */
  readonly whenDue: boolean;
  readonly minutes: number;
  /** For a word beside the plain ones: which, and what it says. */
  readonly word: number;
}

const what = fc.oneof(
  { arbitrary: fc.constant('finish' as const), weight: 30 },
  { arbitrary: fc.constantFrom('start' as const, 'raise' as const, 'undo' as const), weight: 9 },
  {
    arbitrary: fc.constantFrom('more' as const, 'hear' as const, 'hold' as const, 'skip' as const, 'sound' as const, 'wait' as const),
    weight: 9,
  },
  { arbitrary: fc.constant('other' as const), weight: 22 },
  { arbitrary: fc.constantFrom('hearAll' as const, 'release' as const, 'discard' as const, 'read' as const, 'jump' as const), weight: 3 },
  { arbitrary: fc.constant('soundTest' as const), weight: 4 },
);

export const deedArbitrary: fc.Arbitrary<Deed> = fc.record({
  what,
  pick: fc.nat(1000),
  isAstray: fc.integer({ min: 0, max: 7 }).map((n) => n === 0),
  isOther: fc.boolean(),
  isNear: fc.integer({ min: 0, max: 3 }).map((n) => n > 0),
  whenDue: fc.integer({ min: 0, max: 3 }).map((n) => n > 0),
  minutes: fc.integer({ min: 1, max: 30 }),
  word: fc.noBias(fc.maxSafeNat()),
});

/** A command as it was meant, and who gave it; null where there is nothing to say. */
export interface Meant {
  readonly command: FloorCommand;
  readonly deviceId: string;
  readonly tapMs: number;
  readonly stationId: string | null;
}

/** Turns a deed into a command on the floor as it stands, letting time pass where the deed says so. */
export function meant(floor: Floor, deed: Deed, lastOf: ReadonlyMap<string, string>): Meant | null {
  const all = Object.values(floor.state.workpieces);
  const open = all.filter((workpiece) => workpiece.finishedMs === null);
  const meantFor = askedFor(open, deed, floor.nowMs);
  const workpiece = pick(meantFor.length > 0 ? meantFor : deed.isAstray ? all : deed.isNear ? ahead(open) : open, deed.pick);
  if (workpiece === undefined) return null;
  const due = dueOf(floor.state, workpiece);
  if (deed.whenDue && meantFor.length === 0 && due !== null && due.dueMs > floor.nowMs) floor.until(due.dueMs);
  const deviceId = deed.isOther ? OTHER_PHONE : PHONE;
  const command = commandOf(floor, deed, workpiece, deviceId, lastOf);
  if (command === null) return null;
  const byServer = ['raiseCall', 'noteSounded', 'askDailySoundTest', 'noteSoundTestSounded', 'noteClockJump'].includes(command.type);
  // A tap may have been made up to half a minute ago.
  const tapMs = floor.nowMs - (deed.pick % 30) * 1000;
  return { command, deviceId: byServer ? SERVER_DEVICE : deviceId, tapMs, stationId: byServer ? null : stationOf(floor, deed) };
}

/** Where the thumb is: at one of the stations, or the phone has not been told. */
function stationOf(floor: Floor, deed: Deed): string | null {
  const stations = floor.state.kitchen?.document.stations ?? [];
  return deed.word % 3 === 0 ? null : (pick(stations, deed.pick)?.id ?? null);
}

/** A hold is ended where there is one, a call heard where one is out. */
function askedFor(open: readonly Workpiece[], { what: word }: Deed, nowMs: number): readonly Workpiece[] {
  if (word === 'release') return open.filter(({ heldUntilMs }) => heldUntilMs !== null && heldUntilMs > nowMs);
  return word === 'hear' ? open.filter(({ call }) => call !== null && call.heardMs === null) : [];
}

/** Where a day gets on: a few doughs, the ones that are furthest. */
function ahead(open: readonly Workpiece[]): readonly Workpiece[] {
  const made = open.filter((workpiece) => workpiece.parentId !== null);
  return made.length > 0 ? made : open.slice(0, 4);
}

function commandOf(
  floor: Floor,
  deed: Deed,
  workpiece: Workpiece,
  deviceId: string,
  lastOf: ReadonlyMap<string, string>,
): FloorCommand | null {
  const way = wayOf(floor.state, workpiece);
  const called = dueOf(floor.state, workpiece)?.action.id;
  const stepId = deed.isAstray || called === undefined ? (way[deed.pick % way.length]?.id ?? 'weigh') : called;
  const on = { workpieceId: workpiece.id, stepId };
  switch (deed.what) {
    case 'finish':
      return { type: 'finishStep', ...on };
    case 'start':
      return { type: 'startStep', ...on };
    case 'more':
      return { type: 'giveMoreTime', ...on, minutes: deed.minutes };
    case 'hear':
      return { type: 'hearCall', ...on };
    case 'hearAll':
      return { type: 'hearAllCalls' };
    case 'hold':
      return { type: 'holdWorkpiece', ...on, minutes: deed.minutes };
    case 'release':
      return { type: 'releaseWorkpiece', ...on };
    case 'skip':
      return { type: 'skipStep', ...on, reason: 'not needed' };
    case 'discard':
      return { type: 'discardWorkpiece', workpieceId: workpiece.id, reason: 'spoilt' };
    case 'read':
      return { type: 'readTemperature', workpieceId: workpiece.id, where: 'dough', celsius: 20 + (deed.pick % 15) };
    case 'undo': {
      const commandId = lastOf.get(deviceId);
      return commandId === undefined ? null : { type: 'undoCommand', commandId };
    }
    case 'raise':
      return callsToRaise(floor.state, floor.nowMs)[0] ?? null;
    case 'sound': {
      const sound = nextSound(floor.state, floor.nowMs);
      if (sound === null) return null;
      floor.until(sound.atMs);
      return { type: 'noteSounded', burst: sound.burst, calls: [...sound.calls] };
    }
    case 'soundTest':
      return soundTestWord(deed.word);
    case 'jump': {
      const byMs = (deed.pick - 500) * MINUTE_MS;
      floor.nowMs += byMs;
      return { type: 'noteClockJump', byMs };
    }
    case 'wait':
      floor.wait(deed.minutes);
      return null;
    case 'other':
      return otherWord(deed.word, floor.state, workpiece, stepId, floor.nowMs);
  }
}

function soundTestWord(word: number): FloorCommand {
  switch (word % 4) {
    case 0:
      return { type: 'askSoundTest' };
    case 1:
      return { type: 'askDailySoundTest' };
    case 2:
      return { type: 'noteSoundTestSounded' };
    default:
      return { type: 'answerSoundTest', heard: word % 8 < 6 };
  }
}

function pick<Item>(items: readonly Item[], n: number): Item | undefined {
  return items.length === 0 ? undefined : items[n % items.length];
}
