import { boardRows, type Row } from '../../../shared/floor/board.ts';
import { HOLD_MINUTES, MORE_TIME_MINUTES, type ClientCommand } from '../../../shared/floor/commands.ts';
import type { FloorState } from '../../../shared/floor/state.ts';
import type { Random } from './random.ts';
import type { SimDevice } from './sim-device.ts';

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
    return page === 'wall' ? wallWord(random, row) : phoneWord(random, row, seen.state);
  }
}

function wallWord(random: Random, { workpieceId, stepId }: Row): ClientCommand {
  return random.chance(0.5) ? { type: 'hearAllCalls' } : { type: 'hearCall', workpieceId, stepId };
}

function phoneWord(random: Random, row: Row, state: FloorState): ClientCommand {
  const { workpieceId, stepId } = row;
  const on = { workpieceId, stepId };
  const type = random.weighted<ClientCommand['type']>([
    ['finishStep', 50],
    ['startStep', 14],
    ['giveMoreTime', 8],
    ['hearCall', 7],
    ['hearAllCalls', 1],
    ['holdWorkpiece', 5],
    ['releaseWorkpiece', 4],
    ['skipStep', 4],
    ['readTemperature', 4],
    ['undoCommand', 1],
    ['discardWorkpiece', 0.3],
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
    case 'hearCall':
    case 'releaseWorkpiece':
      return { type, ...on };
    case 'hearAllCalls':
      return { type };
    case 'skipStep':
      return { type, ...on, reason: 'not needed today' };
    case 'discardWorkpiece':
      return { type, workpieceId, reason: 'dropped' };
    case 'readTemperature':
      return { type, workpieceId, where: 'dough', celsius: random.whole(180, 320) / 10 };
    case 'undoCommand': {
      // Somebody else's last command, or one long gone: not for this device to undo.
      const entry = random.pick([...Object.values(state.undo), { commandId: workpieceId }]);
      return { type, commandId: entry.commandId };
    }
  }
}

function finish(random: Random, { workpieceId, stepId, pieces, verb }: Row, state: FloorState): ClientCommand {
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
