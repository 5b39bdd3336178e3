import fc from 'fast-check';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { nextDeed } from '../domain/support/demo-saturday.ts';
import { Digits } from '../domain/support/digits.ts';
import { Floor } from '../domain/support/floor.ts';
import { bringInCommand, OPENING_MS, SERVICE_DATE } from '../domain/support/harbour.ts';
import { OTHER_PHONE, PHONE, SERVER_DEVICE } from '../domain/support/ids.ts';
import { wordOf } from '../domain/support/other-words.ts';
import { houseFile } from '../domain/support/random-house.ts';
import { dueOf } from '../../shared/floor/due.ts';
import { weighOutOf } from '../../shared/floor/weigh-out.ts';

/** What is done with lots and what holds them; the work itself goes on between. */
const WORDS = [
  ['work', 26],
  ['weigh', 16],
  ['unweighIngredient', 2],
  ['weighAnew', 8],
  ['weighPot', 5],
  ['divide', 3],
  ['drawFrom', 4],
  ['putTrim', 4],
  ['putBack', 5],
  ['makeLoads', 3],
  ['joinWorkpieces', 3],
  ['addIngredient', 3],
  ['startFeed', 4],
  ['feed', 3],
  ['undo', 4],
  ['discard', 1],
  ['nextDay', 1],
] as const;
type Word = (typeof WORDS)[number][0];

const word = fc.oneof(...WORDS.map(([name, weight]) => ({ arbitrary: fc.constant<Word>(name), weight })));

/** A house in which much is weighed, drawn, put back, fed, divided, loaded, joined and undone. */
export interface LotHistory {
  readonly houseNumber: number;
  readonly deeds: readonly { readonly word: Word; readonly n: number; readonly isOther: boolean }[];
}

export const lotHistoryArbitrary: fc.Arbitrary<LotHistory> = fc.record({
  // Houses with pots, fillings and twins: the demo house, and those that a number makes.
  houseNumber: fc.nat(60).map((n) => (n % 4 === 0 ? n + 2 : n)),
  deeds: fc.array(fc.record({ word, n: fc.noBias(fc.maxSafeNat()), isOther: fc.boolean() }), {
    minLength: 120,
    maxLength: 340,
    size: 'max',
  }),
});

/** A floor on which it all happened. What was refused did not happen. */
export function livedWithLots({ houseNumber, deeds }: LotHistory): Floor {
  const floor = new Floor();
  const file = houseFile(houseNumber);
  floor.ok(bringInCommand(file, OPENING_MS), { deviceId: SERVER_DEVICE });
  const lastOf = new Map<string, string>();
  let day = Number(SERVICE_DATE.slice(-2));
  for (const { word: said, n, isOther } of deeds) {
    const deviceId = isOther ? OTHER_PHONE : PHONE;
    if (said === 'nextDay') {
      day += 1;
      const serviceDate = `${SERVICE_DATE.slice(0, -2)}${String(day).padStart(2, '0')}`;
      if (day < 11) floor.give(bringInCommand(file, floor.nowMs, serviceDate), { deviceId: SERVER_DEVICE });
      continue;
    }
    const command = commandOf(floor, said, n, lastOf.get(deviceId));
    if (command === null) continue;
    const { commandId, decision } = floor.give(command, { deviceId });
    if (decision.ok) lastOf.set(deviceId, commandId);
    floor.wait(n % 3);
  }
  return floor;
}

function commandOf(floor: Floor, said: Exclude<Word, 'nextDay'>, n: number, last: string | undefined): ClientCommand | null {
  const digits = new Digits(n);
  const { state } = floor;
  const open = Object.values(state.workpieces).filter(({ finishedMs }) => finishedMs === null);
  const workpiece = digits.among(open);
  if (workpiece === undefined) return null;
  const stepId = dueOf(state, workpiece)?.action.id ?? 'weigh';
  const seen = { digits, state, workpiece, stepId, nowMs: floor.nowMs };
  switch (said) {
    case 'work': {
      const deed = nextDeed(state, floor.nowMs);
      if (deed === null) return null;
      floor.until(deed.atMs);
      return deed.command;
    }
    case 'weigh':
    case 'weighAnew':
    case 'weighPot':
      return weighed(seen, said);
    case 'putTrim': {
      // Of a dough that is only weighed yet: what is on its lines may be weighed anew.
      const doughs = open.filter(({ kind }) => kind === 'batch');
      const from = digits.among(doughs.filter(({ weighed: lines }) => Object.keys(lines).length > 0));
      const into = digits.among(doughs);
      if (from === undefined || into === undefined) return null;
      return { type: 'putBack', fromWorkpieceId: from.id, toWorkpieceId: into.id, what: 'trim', grams: 20 };
    }
    case 'divide': {
      const dough = digits.among(open.filter(({ kind, cuts }) => kind === 'batch' && cuts.length > 1));
      return dough === undefined ? null : { type: 'sayWhere', workpieceId: dough.id, stepId: 'divide' };
    }
    case 'startFeed':
    case 'feed': {
      const pot = digits.among(open.filter(({ stock }) => stock !== null));
      const due = pot === undefined ? null : dueOf(state, pot);
      if (pot === undefined || due === null) return null;
      if (due.dueMs > floor.nowMs) floor.until(due.dueMs);
      return {
        type: 'finishStep',
        workpieceId: pot.id,
        stepId: 'feed',
        feed: { seedG: Math.min(400, pot.grams), flourG: 2500, waterG: 2500 },
      };
    }
    case 'undo':
      return last === undefined ? null : { type: 'undoCommand', commandId: last };
    case 'discard':
      return digits.onceIn(2) ? { type: 'discardWorkpiece', workpieceId: workpiece.id, reason: 'spoilt' } : null;
    default:
      return wordOf(said, seen);
  }
}

/** A line of what is not mixed yet, from one of a few lots; anew: a line that was weighed already, from another, or any line of a pot. */
function weighed({ digits, state }: Parameters<typeof wordOf>[1], said: 'weigh' | 'weighAnew' | 'weighPot'): ClientCommand | null {
  const lines = Object.values(state.workpieces).flatMap((workpiece) =>
    workpiece.finishedMs !== null
      ? []
      : (weighOutOf(state, workpiece)?.parts ?? []).flatMap((part) => part.lines.map((line) => ({ workpiece, line }))),
  );
  const chosen = digits.among(
    lines.filter(
      ({ workpiece, line }) =>
        !line.isIn &&
        line.ingredientId !== null &&
        (said === 'weighPot' ? workpiece.stock !== null && line.id === '0-1' : (line.weighed !== null) === (said === 'weighAnew')),
    ),
  );
  if (chosen === undefined) return null;
  const lotNumbers = Array.from({ length: digits.onceIn(6) ? 2 : 1 }, () => `W${digits.below(5)}`);
  const grams = Math.max(0.1, chosen.line.grams);
  return { type: 'weighIngredient', workpieceId: chosen.workpiece.id, lineId: chosen.line.id, grams, lotNumbers };
}
