import { accepted, refused } from '../../result.ts';
import type { CommandContext, CommandOf } from '../commands.ts';
import type { FloorEvent } from '../events.ts';
import type { DoughReading } from '../dough-reading.ts';
import { saneBound } from '../sane-readings.ts';
import type { FloorState, Workpiece } from '../state.ts';
import type { Decision } from './decision.ts';
import { standingOf } from './standing.ts';

/** What a reading of the dough teaches; null where it teaches nothing. */
type Teaching = (state: FloorState, workpiece: Workpiece, doughC: number, atMs: number) => DoughReading | null;

/**
 * A temperature that somebody read. A reading says nothing of a step, so its time is the tap's. The dough's own after mixing
 * teaches by how much the mixer warmed it: `teaching` says what, or nothing on pages that leave it to the server. One that is
 * far from what was to be expected is refused until it is said knowingly.
 */
export function decideReadTemperature(
  state: FloorState,
  command: CommandOf<'readTemperature'>,
  context: CommandContext,
  teaching: Teaching,
): Decision {
  const standing = standingOf(state, command.workpieceId, context);
  if (!standing.ok) return standing;
  const { workpiece } = standing.value;
  const { where, celsius } = command;
  const atMs = context.tapMs;
  const taught = where === 'dough' ? teaching(state, workpiece, celsius, atMs) : null;
  const expectedC = taught?.isWild === true ? taught.expectedC : saneBound(where, celsius);
  const isWild = expectedC !== null;
  if (isWild && command.despite?.includes('wildReading') !== true)
    return refused({ code: 'wildReading', tag: workpiece.tag, celsius, expectedC: Math.round(expectedC * 10) / 10 });
  const read: FloorEvent = {
    type: 'temperatureRead',
    workpieceId: workpiece.id,
    where,
    celsius,
    atMs,
    ...(isWild ? { despite: ['wildReading'] } : {}),
  };
  return accepted(taught === null ? [read] : [read, learnedOf(taught, workpiece.id, workpiece.formulaId, atMs)]);
}

function learnedOf({ mixerId, loadG, riseK }: DoughReading, workpieceId: string, formulaId: string, atMs: number): FloorEvent {
  return { type: 'riseLearned', workpieceId, mixerId, formulaId, loadG, riseK, atMs };
}
