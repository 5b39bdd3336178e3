import { describe, expect, test } from 'vitest';
import { rowVerb } from '../../display/parts/row-verb.ts';
import { rowModel } from '../../display/wall/row-model.ts';
import type { BakePhase } from '../../shared/documents/method.ts';
import { asksOf, phasesAt } from '../../shared/floor/bake-phases.ts';
import { rowOf, type Row } from '../../shared/floor/board.ts';
import { roleAt } from '../../shared/floor/due.ts';
import { nextSound } from '../../shared/floor/sounding.ts';
import { assert } from '../../shared/result.ts';
import type { Floor } from './support/floor.ts';
import { ovenHouse } from './support/oven-house.ts';

const MINUTE_MS = 60_000;
const TAG = 'R1';
/** Steam for ten minutes, out and the oven down, turned after thirty. */
const PHASES: readonly BakePhase[] = [
  { minutes: 10, temperatureC: 245, steam: 'in' },
  { minutes: 20, temperatureC: 225, steam: 'out' },
  { minutes: 25, turn: true, note: 'Back row to the front.' },
];

function row(floor: Floor): Row {
  const found = rowOf(floor.state, floor.id(TAG), floor.nowMs);
  assert(found !== null, `${TAG} has a row`);
  return found;
}

function answer(floor: Floor, phase: number): Floor {
  floor.ok({ type: 'answerPrompt', workpieceId: floor.id(TAG), stepId: 'bake', phase });
  return floor;
}

describe('OV1 a bake goes by its phases', () => {
  test('a phase asks for what it says otherwise than those before it, and for a turn; the first asks for nothing', () => {
    const phases: readonly BakePhase[] = [
      { minutes: 5, temperatureC: 250, steam: 'in', vent: 'closed' },
      { minutes: 5, temperatureC: 250 },
      { minutes: 5, steam: 'out', vent: 'open' },
      { minutes: 5, temperatureC: 220, steam: 'out', turn: true },
      { minutes: 5, steam: 'in', vent: 'closed' },
    ];
    expect(phases.map((_, index) => asksOf(phases, index))).toEqual([
      [],
      [],
      ['steamOut', 'ventOpen'],
      ['turn', 'set'],
      ['steamIn', 'ventClosed'],
    ]);
    expect(asksOf(phases, 5)).toEqual([]);
  });

  test('its phases follow one another from when it went in; more time lengthens the last', () => {
    const floor = ovenHouse({ phases: PHASES });
    const minutes = (): readonly (readonly number[])[] => {
      const { step, startedMs, dueMs } = floor.due(TAG);
      const life = floor.piece(TAG).steps[step.id];
      assert(life !== undefined && startedMs !== null, 'it bakes');
      return phasesAt(step, life, dueMs).map(({ fromMs, toMs }) => [(fromMs - startedMs) / MINUTE_MS, (toMs - startedMs) / MINUTE_MS]);
    };
    expect(minutes()).toEqual([
      [0, 10],
      [10, 30],
      [30, 55],
    ]);
    floor.ok({ type: 'giveMoreTime', workpieceId: floor.id(TAG), stepId: 'take-out', minutes: 4 });
    expect(minutes().at(-1)).toEqual([30, 59]);
  });
});

describe('OV2 what a phase asks for is a call of its own', () => {
  test('the row counts down to it, says it, and the bake goes on to its own end', () => {
    const floor = ovenHouse({ phases: PHASES });
    const endMs = floor.due(TAG).dueMs;
    expect(row(floor)).toMatchObject({ role: 'running', dueMs: floor.nowMs + 10 * MINUTE_MS, stepId: 'bake' });
    expect(rowVerb(row(floor))).toBe('steam out');
    floor.wait(10);
    expect(floor.raiseCalls()).toEqual([`${TAG} bake call`]);
    expect(rowVerb(row(floor))).toBe('STEAM OUT');
    expect(rowModel(floor.state, [row(floor)], floor.nowMs).notes).toContain('set to 225 °C');
    expect(nextSound(floor.state, floor.nowMs)).toMatchObject({ burst: 'call', calls: [{ stepId: 'bake' }] });
    answer(floor, 1);
    expect(row(floor)).toMatchObject({ role: 'running', dueMs: floor.nowMs + 20 * MINUTE_MS, check: 'Back row to the front.' });
    expect(nextSound(floor.state, floor.nowMs)).toBeNull();
    answer(floor.wait(20), 2);
    expect(row(floor)).toMatchObject({ prompt: null, stepId: 'take-out', dueMs: endMs });
    expect(floor.wait(25).raiseCalls()).toEqual([`${TAG} take-out call`]);
  });

  test('left undone it becomes late by the tolerance of the bake, and when the bake is over that calls, no less pressing', () => {
    const floor = ovenHouse({ phases: PHASES });
    const { step, dueMs } = floor.due(TAG);
    floor.wait(10).raiseCalls();
    floor.wait(step.toleranceMin.late);
    expect(floor.raiseCalls()).toEqual([`${TAG} bake late`]);
    floor.until(dueMs);
    expect(row(floor)).toMatchObject({ role: 'late', prompt: null, stepId: 'take-out' });
    expect(floor.raiseCalls()).toEqual([`${TAG} take-out late`]);
    floor.finish(TAG);
    expect(roleAt(floor.due(TAG), floor.nowMs)).not.toBe('late');
  });

  test('whoever answers a later one has dealt with those before it; undo asks again', () => {
    const floor = ovenHouse({ phases: PHASES }).wait(31);
    const commandId = floor.ok({ type: 'answerPrompt', workpieceId: floor.id(TAG), stepId: 'bake', phase: 2 });
    expect(row(floor).prompt).toBeNull();
    floor.ok({ type: 'undoCommand', commandId });
    expect(row(floor).prompt).toMatchObject({ phase: 1, asks: ['steamOut', 'set'] });
  });

  test('a hold silences it too, and the bake can be ended before it', () => {
    const floor = ovenHouse({ phases: PHASES }).wait(9);
    floor.ok({ type: 'holdWorkpiece', workpieceId: floor.id(TAG), stepId: 'take-out', minutes: 5 });
    expect(floor.wait(1).raiseCalls()).toEqual([]);
    expect(floor.wait(4).raiseCalls()).toEqual([`${TAG} bake call`]);
    floor.finish(TAG);
    expect(floor.due(TAG).action.id).toBe('depan');
  });
});

describe('OV3 what a bake does not ask for is refused', () => {
  const refusal = (floor: Floor, stepId: string, phase: number): unknown => {
    const { decision } = floor.give({ type: 'answerPrompt', workpieceId: floor.id(TAG), stepId, phase });
    return decision.ok ? null : decision.fault;
  };

  test.each([
    ['the phase that whoever loads begins', 'bake', 0],
    ['a phase that there is not', 'bake', 3],
    ['another step', 'take-out', 1],
  ])('%s', (_, stepId, phase) => {
    expect(refusal(ovenHouse({ phases: PHASES }), stepId, phase)).toMatchObject({ code: 'nothingAsked', tag: TAG, phase });
  });

  test('twice', () => {
    const floor = answer(ovenHouse({ phases: PHASES }), 2);
    expect(refusal(floor, 'bake', 1)).toMatchObject({ code: 'promptAnswered', tag: TAG, phase: 1 });
  });
});
