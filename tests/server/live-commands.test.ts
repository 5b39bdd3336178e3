import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../shared/floor/refusals.ts';
import { freshId, LiveClient } from './support/live-client.ts';
import { MORNING_MS } from './support/machine.ts';
import { openTestHouse, type TestHouse } from './support/test-house.ts';

const NOW = { agoMonotonicMs: 0, agoWallMs: 0 };

async function houseWithTwoPhones(): Promise<TestHouse & { phone: LiveClient; other: LiveClient; workpieceId: string }> {
  const test = await openTestHouse({ isListening: true });
  const phone = await LiveClient.live(test.house.app);
  const other = await LiveClient.live(test.house.app);
  const workpieceId = test.workpiece('C1').id;
  expect(await phone.give({ type: 'startStep', workpieceId, stepId: 'weigh' })).toMatchObject({ ok: true });
  await Promise.all([phone.first('events'), other.first('events')]);
  return { ...test, phone, other, workpieceId };
}

/** How often a step was done, by the journal. */
async function timesDone(events: TestHouse['events'], stepId: string): Promise<number> {
  return (await events()).filter(({ event }) => event.type === 'stepDone' && event.stepId === stepId).length;
}

describe('a tap', () => {
  it('W9 is kept, then acknowledged to its phone, then told to everybody', async () => {
    const { phone, other, workpieceId, events } = await houseWithTwoPhones();
    const from = phone.messages.length;
    const otherFrom = other.messages.length;
    const commandId = freshId();
    const outcome = await phone.give({ type: 'finishStep', workpieceId, stepId: 'weigh' }, commandId);
    const told = await phone.first('events', from);
    const kept = (await events()).filter((event) => event.commandId === commandId);
    expect(kept.map(({ event }) => event.type)).toEqual(['stepDone']);
    expect(outcome).toEqual({ ok: true, sequence: kept.at(-1)?.sequence, undoable: true });
    expect(phone.messages.slice(from, from + 2).map(({ type }) => type)).toEqual(['outcome', 'events']);
    expect(told.events).toEqual(kept);
    expect(await other.first('events', otherFrom)).toEqual(told);
    expect(kept[0]?.deviceId).toBe(phone.deviceId);
  });

  it('W10 sent again gets the same outcome and makes no second event, on the same connection, another one, and after a restart', async () => {
    const { phone, other, workpieceId, house, close, folder, machine } = await houseWithTwoPhones();
    const commandId = freshId();
    const finish = { type: 'finishStep', workpieceId, stepId: 'weigh' } as const;
    const first = await phone.give(finish, commandId);
    const outcomes: Outcome[] = [first];
    outcomes.push(await phone.give(finish, commandId));
    await phone.leave(house.hub);
    const back = await LiveClient.live(house.app, { deviceId: phone.deviceId });
    outcomes.push(await back.give(finish, commandId), await other.give(finish, commandId));
    await close();
    const again = await openTestHouse({ folder, machine });
    const afterRestart = await LiveClient.live(again.house.app, { deviceId: phone.deviceId });
    outcomes.push(await afterRestart.give(finish, commandId));
    expect(first).toMatchObject({ ok: true, undoable: true });
    for (const outcome of outcomes) expect(outcome).toEqual(first);
    expect(await timesDone(again.events, 'weigh')).toBe(1);
  });

  it('W10 doubled within one group makes one set of events too', async () => {
    const { phone, workpieceId, events } = await houseWithTwoPhones();
    const commandId = freshId();
    const finish = { type: 'finishStep', workpieceId, stepId: 'weigh' } as const;
    phone.say({ type: 'command', commandId, tap: NOW, command: finish });
    phone.say({ type: 'command', commandId, tap: NOW, command: finish });
    const outcomesOf = (): readonly unknown[] => phone.of('outcome').filter((message) => message.commandId === commandId);
    await phone.until(() => outcomesOf().length === 2);
    const outcomes = outcomesOf();
    expect(outcomes[0]).toEqual(outcomes[1]);
    expect(await timesDone(events, 'weigh')).toBe(1);
  });

  it('W10 that was refused is refused the same way for ever', async () => {
    const { phone, workpieceId, house } = await houseWithTwoPhones();
    const commandId = freshId();
    const divide = { type: 'finishStep', workpieceId, stepId: 'divide' } as const;
    const refusal = await phone.give(divide, commandId);
    expect(refusal).toMatchObject({ ok: false, refusal: { code: 'stepNotReached', currentStepId: 'weigh' } });
    await phone.give({ type: 'finishStep', workpieceId, stepId: 'weigh' });
    expect(await phone.give(divide, commandId)).toEqual(refusal);
    expect(house.floor.state.workpieces[workpieceId]?.steps['divide']).toBeUndefined();
  });

  it('W11 of two devices on one step: one counts, and the second is told by whom and when', async () => {
    const { phone, other, workpieceId, machine, events } = await houseWithTwoPhones();
    machine.passUnnoticed(90_000);
    const finish = { type: 'finishStep', workpieceId, stepId: 'weigh' } as const;
    const [first, second] = await Promise.all([phone.give(finish), other.give(finish)]);
    expect(first).toMatchObject({ ok: true });
    expect(second).toEqual({
      ok: false,
      refusal: { code: 'stepAlreadyDone', tag: 'C1', stepId: 'weigh', atMs: MORNING_MS + 90_000, deviceId: phone.deviceId, skipped: false },
    });
    expect(await timesDone(events, 'weigh')).toBe(1);
  });

  it('W12 counts when the thumb was there, by the phone’s two clocks where they agree, and else when it arrived', async () => {
    const { phone, workpieceId, machine, events } = await houseWithTwoPhones();
    machine.passUnnoticed(10 * 60_000);
    const give = async (stepId: string, tap: { agoMonotonicMs: number | null; agoWallMs: number }): Promise<void> => {
      const from = phone.messages.length;
      phone.say({ type: 'command', commandId: freshId(), tap, command: { type: 'finishStep', workpieceId, stepId } });
      await phone.first('outcome', from);
    };
    await give('weigh', { agoMonotonicMs: 4 * 60_000, agoWallMs: 4 * 60_000 + 900 });
    // The phone's wall clock was set by an hour meanwhile.
    await give('fill-bowl', { agoMonotonicMs: 60_000, agoWallMs: 61 * 60_000 });
    const done = (await events()).map(({ event }) => event).filter((event) => event.type === 'stepDone');
    expect(done).toMatchObject([
      { stepId: 'weigh', atMs: MORNING_MS + 6 * 60_000 },
      { stepId: 'fill-bowl', atMs: MORNING_MS + 10 * 60_000, tapUncertain: true },
    ]);
    expect(done[0]).not.toHaveProperty('tapUncertain');
  });

  it('W13 can be undone by its own device, and by no other', async () => {
    const { phone, other, workpieceId, house } = await houseWithTwoPhones();
    const before = house.floor.state.workpieces[workpieceId];
    const commandId = freshId();
    await phone.give({ type: 'finishStep', workpieceId, stepId: 'weigh' }, commandId);
    expect(await other.give({ type: 'undoCommand', commandId })).toEqual({ ok: false, refusal: { code: 'nothingToUndo' } });
    expect(await phone.give({ type: 'undoCommand', commandId })).toMatchObject({ ok: true, undoable: false });
    expect(house.floor.state.workpieces[workpieceId]).toEqual(before);
  });

  it('W14 of a phone that is gone before the answer counts all the same', async () => {
    const { phone, workpieceId, house, events } = await houseWithTwoPhones();
    const commandId = freshId();
    phone.say({ type: 'command', commandId, tap: NOW, command: { type: 'finishStep', workpieceId, stepId: 'weigh' } });
    await phone.leave(house.hub);
    await house.floor.settled();
    const { sequence } = (await events()).filter((event) => event.commandId === commandId).at(-1) ?? { sequence: 0 };
    expect(house.floor.state.workpieces[workpieceId]?.steps['weigh']?.status).toBe('done');
    const back = await LiveClient.live(house.app, { deviceId: phone.deviceId });
    expect(await back.give({ type: 'finishStep', workpieceId, stepId: 'weigh' }, commandId)).toEqual({
      ok: true,
      sequence,
      undoable: true,
    });
  });
});
