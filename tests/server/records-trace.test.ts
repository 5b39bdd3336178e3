import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RecordedEvent } from '../../shared/floor/events.ts';
import { traceAnswerSchema, type TraceAnswer } from '../../shared/records/trace-answer.ts';
import { assert } from '../../shared/result.ts';
import { askTrace } from '../../server/records/ask-trace.ts';
import { lotHistoryArbitrary, livedWithLots } from './random-lots.ts';
import { keyOf, walkLots, type LotsWalk } from './lots-walk.ts';
import { askedOf } from './asked-of.ts';

/** The same histories each time: what others show becomes a test of its own. */
const SEED = 20_260_307;

/** What has to happen in random histories for the comparison to say anything; how often it did. */
const happened = new Map<string, number>();

function count(what: string, by = 1): void {
  happened.set(what, (happened.get(what) ?? 0) + by);
}

function countAll(recorded: readonly RecordedEvent[], walk: LotsWalk): void {
  for (const { event } of recorded) count(event.type);
  for (const [id, passed] of walk.passed) {
    const held = walk.holds.get(id) ?? new Map<string, number>();
    for (const lot of passed) if (!held.has(lot)) count('weighed anew after a draw');
  }
  for (const held of walk.holds.values()) for (const feeds of held.values()) if (feeds > 0) count('carried on in a pot');
}

function lotsOf(walk: LotsWalk): ReadonlySet<string> {
  return new Set([...walk.holds.values(), ...walk.passed.values()].flatMap((lots) => [...lots.keys()]));
}

function piecesWith(walk: LotsWalk, lot: string): readonly string[] {
  const ids = new Set([...walk.holds.keys(), ...walk.passed.keys()]);
  return [...ids].filter((id) => walk.holds.get(id)?.has(lot) === true || walk.passed.get(id)?.has(lot) === true).sort();
}

/** A workpiece with its cuts and loads. */
function partsOf(walk: LotsWalk, id: string): readonly string[] {
  const parts = [id];
  for (const part of parts) for (const [other, { partOf }] of walk.pieces) if (partOf === part) parts.push(other);
  return parts;
}

/** What is in some workpieces, each lot with the fewest feeds since. */
function heldBy(walk: LotsWalk, ids: readonly string[]): ReadonlyMap<string, number> {
  const lots = new Map<string, number>();
  for (const id of ids)
    for (const [lot, feeds] of walk.holds.get(id) ?? []) lots.set(lot, Math.min(feeds, lots.get(lot) ?? Number.POSITIVE_INFINITY));
  return lots;
}

/** The lots of an answer, each with the fewest feeds since. */
function lotsIn(answer: TraceAnswer | null): ReadonlyMap<string, number> {
  const lots = new Map<string, number>();
  for (const { ingredient, lot, feeds } of answer?.lots ?? []) {
    const key = keyOf(ingredient, lot);
    lots.set(key, Math.min(feeds, lots.get(key) ?? Number.POSITIVE_INFINITY));
  }
  return lots;
}

function sorted(lots: ReadonlyMap<string, number>): readonly (readonly [string, number])[] {
  return [...lots].sort(([a], [b]) => (a < b ? -1 : 1));
}

describe('TR1 the trace of a lot is what a plain walk over the events says', () => {
  it('onward: every workpiece that holds it or passed it on, and every product of a day', async () => {
    await fc.assert(
      fc.asyncProperty(lotHistoryArbitrary, async (history) => {
        const { recorded } = livedWithLots(history);
        const walk = walkLots(recorded);
        countAll(recorded, walk);
        await askedOf(recorded, (reader) => {
          for (const key of lotsOf(walk)) {
            const [ingredient = '', lot = ''] = key.split(' ');
            const answer = askTrace(reader, { lot, ingredient });
            assert(answer !== null && answer.nodesLeftOut === 0, `${key} is traced whole`);
            expect(traceAnswerSchema.safeParse(answer).error).toBeUndefined();
            expect(answer.nodes.map(({ piece }) => piece.id).sort()).toEqual(piecesWith(walk, key));
            for (const { piece, isInIt, feeds } of answer.nodes) {
              expect(isInIt).toBe(walk.holds.get(piece.id)?.has(key) === true);
              // A pot's own is one feed older with every feed.
              if (isInIt && piece.kind !== 'ferment') expect(feeds).toBe(walk.holds.get(piece.id)?.get(key));
            }
            expect(
              answer.products
                .map(({ product, serviceDate, pieceIds }) => ({ product, serviceDate, ids: [...pieceIds].sort() }))
                .sort(byDay),
            ).toEqual(productsOf(walk, key).sort(byDay));
            expect(answer.edges.every(({ fromId }) => walk.passed.get(fromId)?.has(key))).toBe(true);
          }
        });
      }),
      { numRuns: 8, endOnFailure: true, seed: SEED },
    );
  }, 60_000);

  it('back: every lot that is in a workpiece or in the products of a day', async () => {
    await fc.assert(
      fc.asyncProperty(lotHistoryArbitrary, async (history) => {
        const { recorded } = livedWithLots(history);
        const walk = walkLots(recorded);
        countAll(recorded, walk);
        await askedOf(recorded, (reader) => {
          for (const id of walk.pieces.keys()) {
            const answer = askTrace(reader, { id });
            expect(traceAnswerSchema.safeParse(answer).error).toBeUndefined();
            expect(sorted(lotsIn(answer))).toEqual(sorted(heldBy(walk, partsOf(walk, id))));
          }
          const days = new Set(
            [...walk.pieces.values()].flatMap(({ product, serviceDate }) => (product === null ? [] : `${product} ${serviceDate}`)),
          );
          for (const day of days) {
            const [product = '', date = ''] = day.split(' ');
            const ids = [...walk.pieces].flatMap(([id, piece]) => (piece.product === product && piece.serviceDate === date ? id : []));
            expect(sorted(lotsIn(askTrace(reader, { product, date })))).toEqual(sorted(heldBy(walk, ids)));
          }
        });
      }),
      { numRuns: 8, endOnFailure: true, seed: SEED },
    );
  }, 60_000);

  it('enough happened for that to say something', () => {
    const wanted = {
      ingredientWeighed: 100,
      ingredientUnweighed: 5,
      ingredientAdded: 5,
      workpieceDrawn: 50,
      scrapPutBack: 5,
      fermentFed: 20,
      workpieceDivided: 8,
      loadsMade: 10,
      workpiecesJoined: 3,
      commandUndone: 30,
      'carried on in a pot': 20,
      'weighed anew after a draw': 1,
    };
    for (const [what, least] of Object.entries(wanted)) expect([what, (happened.get(what) ?? 0) >= least]).toEqual([what, true]);
  });
});

interface DayOfProduct {
  readonly product: string;
  readonly serviceDate: string;
  readonly ids: readonly string[];
}

function productsOf(walk: LotsWalk, lot: string): DayOfProduct[] {
  const days = new Map<string, { product: string; serviceDate: string; ids: string[] }>();
  for (const [id, { product, serviceDate, isDivided }] of walk.pieces) {
    if (product === null || isDivided || walk.holds.get(id)?.has(lot) !== true) continue;
    const key = `${product} ${serviceDate}`;
    const day = days.get(key) ?? { product, serviceDate, ids: [] };
    day.ids.push(id);
    days.set(key, day);
  }
  return [...days.values()].map((day) => ({ ...day, ids: day.ids.sort() }));
}

function byDay(a: DayOfProduct, b: DayOfProduct): number {
  return `${a.serviceDate} ${a.product}`.localeCompare(`${b.serviceDate} ${b.product}`);
}
