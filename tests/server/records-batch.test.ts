import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CallLevel, FloorEvent, RecordedEvent } from '../../shared/floor/events.ts';
import { evolve } from '../../shared/floor/evolve.ts';
import { EMPTY_STATE, type FloorState, type Workpiece } from '../../shared/floor/state.ts';
import type { BatchAnswer } from '../../shared/records/answers.ts';
import { batchRecord, foldOf } from '../../shared/records/batch-record.ts';
import { dayRecord } from '../../shared/records/day-record.ts';
import { askBatch } from '../../server/records/ask-batch.ts';
import { askBatches } from '../../server/records/ask-batches.ts';
import { askDay } from '../../server/records/ask-day.ts';
import { askWeeks, mondayOf } from '../../server/records/ask-weeks.ts';
import { RecordsBuilder } from '../../server/records/records-builder.ts';
import { RecordsReader } from '../../server/records/records-reader.ts';
import { inventedEvents } from './invented-records.ts';
import { keep } from './random-history.ts';
import { temporaryFolder } from './support/temporary-folder.ts';

const MINUTE_MS = 60_000;

let folder = '';
let reader: RecordsReader;
let events: readonly RecordedEvent[] = [];
/** Every workpiece as the floor had it last, whether it is still in the live state or not. */
const last = new Map<string, Workpiece>();
let state: FloorState = EMPTY_STATE;
/** Calls that were never to be: what made them due was undone. */
const callsTakenBack: { readonly id: string; readonly level: CallLevel }[] = [];
const answers: BatchAnswer[] = [];

// The last week of October: summer time ends in the house's zone in the night to Sunday, when the doughs of that day are made.
beforeAll(async () => {
  folder = temporaryFolder();
  events = inventedEvents('2026-10-22', '2026-10-26');
  for (const recorded of events) {
    const before = state;
    state = evolve(state, recorded);
    if (recorded.event.type === 'commandUndone') {
      for (const id of recorded.event.workpieceIds) {
        const [was, is] = [before.workpieces[id]?.call ?? null, state.workpieces[id]?.call ?? null];
        if (was !== null && (is?.stepId !== was.stepId || is.level !== was.level)) callsTakenBack.push({ id, level: was.level });
      }
    }
    for (const workpiece of Object.values(state.workpieces)) last.set(workpiece.id, workpiece);
  }
  await keep(folder, events);
  const builder = await RecordsBuilder.open(folder);
  await builder?.catchUp();
  await builder?.close();
  reader = await RecordsReader.open(folder);
  for (const { id } of askBatches(reader, {}).pieces) {
    const answer = await askBatch(reader, { id });
    if (answer !== null) answers.push(answer);
  }
}, 60_000);

afterAll(async () => {
  await reader.close();
  rmSync(folder, { recursive: true, force: true });
});

/** What a call does to a workpiece is no part of its record. */
function withoutCalls(workpiece: Workpiece | undefined): unknown {
  if (workpiece === undefined) return undefined;
  const { call: _call, heldUntilMs: _held, ...rest } = workpiece;
  return rest;
}

/** The events that count: not those of commands that were taken back. */
function counted(): readonly RecordedEvent[] {
  const undone = new Set(events.flatMap(({ event }) => (event.type === 'commandUndone' ? [event.undoneCommandId] : [])));
  return events.filter(({ commandId }) => !undone.has(commandId));
}

function ofType<Type extends FloorEvent['type']>(type: Type, ids: ReadonlySet<string>): Extract<FloorEvent, { type: Type }>[] {
  return counted().flatMap(({ event }) =>
    event.type === type && 'workpieceId' in event && ids.has(event.workpieceId) ? [event as Extract<FloorEvent, { type: Type }>] : [],
  );
}

describe('BR1 a batch folded from its own events alone is the batch as the floor had it', () => {
  it('every part of every batch and prep of five days', () => {
    expect(answers.length).toBeGreaterThan(25);
    for (const answer of answers.filter(({ pieces }) => pieces[0]?.kind !== 'ferment')) {
      const ours = new Map<string, Workpiece>();
      foldOf(answer, (_recorded, after) => {
        for (const { id } of answer.pieces) {
          const workpiece = after.workpieces[id];
          if (workpiece !== undefined) ours.set(id, workpiece);
        }
      });
      for (const { id } of answer.pieces) expect(withoutCalls(ours.get(id)), id).toEqual(withoutCalls(last.get(id)));
    }
  });
});

describe('BR2 every figure of a batch’s record follows from the events, reckoned by other means', () => {
  it('what went in and its lots, temperatures, more time, losses, reasons, what was finished and discarded', () => {
    let lots = 0;
    for (const answer of answers.filter(({ pieces }) => pieces[0]?.kind !== 'ferment')) {
      const record = batchRecord(answer);
      const ids = new Set(answer.pieces.map(({ id }) => id));
      const weighed = new Map<string, { grams: number; lots: readonly string[] }>();
      for (const { event } of counted()) {
        if ((event.type === 'ingredientWeighed' || event.type === 'ingredientUnweighed') && ids.has(event.workpieceId)) {
          if (event.type === 'ingredientWeighed')
            weighed.set(`${event.workpieceId} ${event.lineId}`, { grams: event.grams, lots: event.lotNumbers });
          else weighed.delete(`${event.workpieceId} ${event.lineId}`);
        }
      }
      const added = ofType('ingredientAdded', ids);
      const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);
      expect(sum(record?.inLines.map(({ weighedG }) => weighedG) ?? [])).toBeCloseTo(
        sum([...weighed.values()].map(({ grams }) => grams)) + sum(added.map(({ grams }) => grams)),
        6,
      );
      const told = record?.inLines.flatMap(({ lotNumbers }) => lotNumbers) ?? [];
      expect([...told].sort()).toEqual(
        [...[...weighed.values()].flatMap((line) => line.lots), ...added.flatMap(({ lotNumber }) => lotNumber ?? [])].sort(),
      );
      lots += told.length;
      expect(record?.readings.map(({ celsius }) => celsius)).toEqual(ofType('temperatureRead', ids).map(({ celsius }) => celsius));
      expect(sum(record?.moreTime.map(({ minutes }) => minutes) ?? [])).toBe(
        sum(ofType('moreTimeGiven', ids).map(({ minutes }) => minutes)),
      );
      expect(sum(Object.values(record?.yielded.lossesG ?? {}))).toBeCloseTo(sum(ofType('lossNamed', ids).map(({ grams }) => grams)), 6);
      expect(record?.reasons.length).toBe(
        ofType('stepSkipped', ids).length + ofType('workpieceDiscarded', ids).length + ofType('holdingDecided', ids).length,
      );
      const pieces = (type: 'workpieceFinished' | 'workpieceDiscarded'): number =>
        sum(ofType(type, ids).map(({ workpieceId }) => last.get(workpieceId)?.pieces ?? 0));
      expect(record?.yielded.finishedPieces).toBe(pieces('workpieceFinished'));
      expect(record?.yielded.discardedPieces).toBe(pieces('workpieceDiscarded'));
    }
    expect(lots).toBeGreaterThan(100);
  });

  it('steps with the minutes that they really took, through the night in which the clocks go back', () => {
    // 02:00 British Summer Time became 01:00 Greenwich Mean Time on 25 October 2026, at 01:00 UTC (the rule of Directive 2000/84/EC, kept by the UK).
    const changeMs = Date.UTC(2026, 9, 25, 1, 0, 0);
    // A pot has the same steps again after each feed.
    const doughs = answers.filter(({ pieces }) => pieces[0]?.kind !== 'ferment');
    const across = doughs.flatMap(({ steps }) =>
      steps.filter(({ startedMs, endedMs }) => (startedMs ?? changeMs) < changeMs && (endedMs ?? 0) > changeMs),
    );
    expect(across.length).toBeGreaterThan(0);
    for (const step of across) {
      const own = ofType('stepDone', new Set([step.pieceId])).find(({ stepId }) => stepId === step.step);
      const started = ofType('stepStarted', new Set([step.pieceId])).findLast(({ stepId }) => stepId === step.step);
      const corrected = ofType('timeCorrected', new Set([step.pieceId])).filter(({ stepId }) => stepId === step.step);
      if (corrected.length > 0 || own === undefined || started === undefined) continue;
      expect(((step.endedMs ?? 0) - (step.startedMs ?? 0)) / MINUTE_MS).toBe((own.atMs - started.atMs) / MINUTE_MS);
    }
  });
});

describe('DY2 a day’s figures follow from the events', () => {
  it('pieces finished and discarded, calls by level, oven minutes, how late each dough was over', async () => {
    for (const date of ['2026-10-24', '2026-10-25']) {
      const day = await askDay(reader, { date });
      const record = day === null ? null : dayRecord(day);
      const own = [...last.values()].filter((workpiece) => workpiece.serviceDate === date && workpiece.kind !== 'ferment');
      const ids = new Set(own.map(({ id }) => id));
      expect(new Set(day?.pieces.map(({ id }) => id))).toEqual(ids);
      const calls = ofType('callRaised', ids);
      for (const level of ['call', 'late', 'lost'] as const)
        expect(day?.calls[level]).toBe(
          calls.filter((call) => call.level === level).length -
            callsTakenBack.filter((call) => ids.has(call.id) && call.level === level).length,
        );
      // Minute by minute, whether something lay in each slot.
      const stays = ofType('ovenLoaded', ids).flatMap((load) => {
        const out = ofType('ovenUnloaded', new Set([load.workpieceId])).find(({ atMs }) => atMs >= load.atMs);
        return out === undefined ? [] : [{ slotIds: load.slotIds, fromMs: load.atMs, toMs: out.atMs }];
      });
      for (const { deck, slotMin } of day?.decks ?? []) {
        const slots = state.kitchen?.document.ovens.flatMap((oven) => oven.decks).find(({ id }) => id === deck)?.slots ?? [];
        let minutes = 0;
        for (const slot of slots) {
          const taken = stays.filter(({ slotIds }) => slotIds.includes(slot.id));
          for (
            let atMs = Math.min(...stays.map(({ fromMs }) => fromMs));
            atMs < Math.max(...stays.map(({ toMs }) => toMs));
            atMs += MINUTE_MS / 10
          )
            if (taken.some(({ fromMs, toMs }) => atMs >= fromMs && atMs < toMs)) minutes += 0.1;
        }
        expect(slotMin).toBeGreaterThan(minutes - 1.5);
        expect(slotMin).toBeLessThan(minutes + 1.5);
      }
      for (const { piece, steps, offMin } of record?.rows ?? []) {
        if (offMin === null) continue;
        const lastEndMs = Math.max(...Object.values(last.get(piece.id)?.steps ?? {}).map(({ endedMs }) => endedMs ?? 0));
        const plannedMs = Math.max(...steps.map(({ plannedEndMs }) => plannedEndMs ?? 0));
        expect(offMin).toBeCloseTo((lastEndMs - plannedMs) / MINUTE_MS, 6);
      }
    }
  });

  it('a week is its days: Monday to Sunday by service date', async () => {
    const { weeks } = await askWeeks(reader, {});
    expect(weeks.map(({ monday }) => monday)).toEqual(
      [...new Set([...last.values()].map(({ serviceDate }) => mondayOf(serviceDate)))].sort(),
    );
    const batches = [...last.values()].filter(({ kind }) => kind === 'batch').length;
    expect(weeks.reduce((sum, week) => sum + week.batches, 0)).toBe(batches);
    expect(mondayOf('2026-10-25')).toBe('2026-10-19');
    expect(mondayOf('2026-10-26')).toBe('2026-10-26');
  });
});
