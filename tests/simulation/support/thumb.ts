import { boardRows, type Row } from '../../../shared/floor/board.ts';
import { HOLD_MINUTES, MORE_TIME_MINUTES, type ClientCommand } from '../../../shared/floor/commands.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import { assert } from '../../../shared/result.ts';
import { otherWord, type OtherWord } from '../../domain/support/other-words.ts';
import type { Random } from './random.ts';
import type { SimDevice } from './sim-device.ts';

/** So many of a phone's words are none of the plain ones. */
const OTHER_SHARE = 0.3;

/** Words that need nothing looked up but the row. */
type PlainWord = Exclude<ClientCommand['type'], Exclude<OtherWord, 'finishStep'>>;

/** What the board offered at some time: a thumb may be late. */
interface Glance {
  readonly state: FloorState;
  readonly rows: readonly Row[];
}

/** Somebody's thumb on one device: taps what the board offers, now and then what it offered a while ago. */
export class Thumb {
  readonly #device: SimDevice;
  readonly #random: Random;
  #earlier: Glance | null = null;

  constructor(device: SimDevice, random: Random) {
    this.#device = device;
    this.#random = random;
  }

  /** The next thing to tap, or null where there is nothing. */
  choose(): ClientCommand | null {
    const { client, page } = this.#device;
    const random = this.#random;
    const { view } = client;
    if (view.undoable !== null && random.chance(0.15)) return { type: 'undoCommand', commandId: view.undoable.commandId };
    if (view.state === null) return null;
    const glance: Glance = { state: view.state, rows: boardRows(view.state, client.nowMs()) };
    const seen = this.#earlier !== null && random.chance(0.12) ? this.#earlier : glance;
    if (random.chance(0.1)) this.#earlier = glance;
    const pressing = seen.rows.filter((row) => row.role !== 'running');
    const rows = pressing.length > 0 && random.chance(0.75) ? pressing : seen.rows;
    if (rows.length === 0) return null;
    const row = random.pick(rows);
    return page === 'wall' ? wallWord(random, row) : phoneWord(random, row, seen, client.nowMs());
  }
}

function wallWord(random: Random, { workpieceId, stepId }: Row): ClientCommand {
  return random.chance(0.5) ? { type: 'hearAllCalls' } : { type: 'hearCall', workpieceId, stepId };
}

function phoneWord(random: Random, row: Row, { state, rows }: Glance, nowMs: number): ClientCommand {
  const { workpieceId, stepId } = row;
  const on = { workpieceId, stepId };
  const held = rows.filter((other) => other.heldUntilMs !== null);
  if (random.chance(OTHER_SHARE)) return otherWordOn(random, row, state, nowMs);
  const type = random.weighted<PlainWord>([
    ['finishStep', 50],
    ['startStep', 14],
    ['giveMoreTime', 8],
    ['hearCall', 7],
    ['hearAllCalls', 1],
    ['holdWorkpiece', 5],
    ['releaseWorkpiece', held.length > 0 ? 12 : 2],
    ['skipStep', 4],
    ['readTemperature', 4],
    ['undoCommand', 1],
    ['discardWorkpiece', 0.3],
    ['askSoundTest', 0.5],
    ['answerSoundTest', 1],
  ]);
  switch (type) {
    case 'finishStep':
      return finish(random, row, state);
    case 'startStep': {
      const mixers = state.kitchen?.document.mixers ?? [];
      return mixers.length > 0 && random.chance(0.2) ? { type, ...on, mixerId: random.pick(mixers).id } : { type, ...on };
    }
    case 'giveMoreTime':
      return { type, ...on, minutes: random.pick(MORE_TIME_MINUTES) };
    case 'holdWorkpiece':
      return { type, ...on, minutes: random.pick(HOLD_MINUTES) };
    case 'releaseWorkpiece': {
      const chosen = random.pick(held.length > 0 ? held : [row]);
      return { type, workpieceId: chosen.workpieceId, stepId: chosen.stepId };
    }
    case 'hearCall':
      return { type, ...on };
    case 'hearAllCalls':
      return { type };
    case 'skipStep':
      return { type, ...on, reason: 'not needed today' };
    case 'discardWorkpiece':
      return { type, workpieceId, reason: 'dropped' };
    case 'readTemperature':
      return { type, workpieceId, where: 'dough', celsius: random.whole(180, 320) / 10 };
    case 'askSoundTest':
      return { type };
    case 'answerSoundTest':
      return { type, heard: random.chance(0.8) };
    case 'undoCommand': {
      // Somebody else's last command, or one long gone: not for this device to undo.
      const entry = random.pick([...Object.values(state.undo), { commandId: workpieceId }]);
      return { type, commandId: entry.commandId };
    }
  }
}

/** Any of the other words, about the row that the thumb is at. */
function otherWordOn(random: Random, { workpieceId, stepId }: Row, state: FloorState, nowMs: number): ClientCommand {
  const workpiece = state.workpieces[workpieceId];
  // A row is of the state that it was made of.
  assert(workpiece !== undefined, 'a row of the board has its workpiece');
  return otherWord(random.whole(0, 2 ** 26 - 1) * 2 ** 26 + random.whole(0, 2 ** 26 - 1), state, workpiece, stepId, Math.round(nowMs));
}

function finish(random: Random, { workpieceId, stepId, pieces, verb, prompt }: Row, state: FloorState): ClientCommand {
  if (prompt !== null) return { type: 'answerPrompt', workpieceId, stepId, phase: prompt.phase };
  const cuts = state.workpieces[workpieceId]?.cuts ?? [];
  const counted = verb === 'divide' && cuts.length > 0 && random.chance(0.3);
  return {
    type: 'finishStep',
    workpieceId,
    stepId,
    ...(counted ? { cuts: cuts.map((cut) => ({ productId: cut.productId, pieces: Math.max(1, cut.pieces + random.whole(-3, 1)) })) } : {}),
    ...(pieces !== null && random.chance(0.1) ? { piecesDone: pieces } : {}),
  };
}
