import * as fc from 'fast-check';
import type { FloorEvent } from '../../../shared/floor/events.ts';
import { allergenSchema } from '../../../shared/documents/allergen.ts';
import { idFromBytes } from '../../../shared/ids.ts';

/** Plain objects, as JSON makes them. */
function record<Shape>(model: { [Key in keyof Shape]: fc.Arbitrary<Shape[Key]> }): fc.Arbitrary<Shape>;
function record<Shape, Required extends keyof Shape>(
  model: { [Key in keyof Shape]: fc.Arbitrary<Shape[Key]> },
  options: { requiredKeys: Required[] },
): fc.Arbitrary<Pick<Shape, Required> & Partial<Shape>>;
function record<Shape, Required extends keyof Shape>(
  model: { [Key in keyof Shape]: fc.Arbitrary<Shape[Key]> },
  options?: { requiredKeys: Required[] },
): fc.Arbitrary<unknown> {
  return fc.record(model, { ...options, noNullPrototype: true });
}

const ids = fc.uint8Array({ minLength: 16, maxLength: 16 }).map(idFromBytes);
const keys = fc.stringMatching(/^[a-z][a-z0-9-]{0,39}$/);
const instants = fc.integer({ min: 0, max: 8.64e15 });
/** Any text a phone can send: every plane of Unicode, NUL, half surrogate pairs, and texts that look like names or ids. */
const texts = fc.oneof(
  fc.string({ unit: 'binary', minLength: 1, maxLength: 240 }),
  fc.string({ unit: fc.integer({ min: 0, max: 0xffff }).map((unit) => String.fromCharCode(unit)), minLength: 1, maxLength: 60 }),
  fc.constantFrom('0', '12', '["atMs"]', 'type', 'stepDone', 'half \ud800 pair', 'nul\0nul', 'AAAAAAAAAAAAAAAAAAAAAA'),
);
const weights = fc.double({ min: 0, max: 1e7, noNaN: true }).map((g) => g + 0);
const onStep = { workpieceId: ids, stepId: keys, atMs: instants };

function eventsOf<Type extends FloorEvent['type'], Rest extends object>(
  type: Type,
  record: fc.Arbitrary<Rest>,
): fc.Arbitrary<Rest & { type: Type }> {
  return record.map((rest) => ({ type, ...rest }));
}

const steps = record(
  {
    id: keys,
    verb: fc.constantFrom('bulk' as const, 'fold' as const),
    kind: fc.constantFrom('timed' as const, 'judged' as const),
    minutes: record({ earliest: weights, target: weights, latest: weights }, { requiredKeys: ['target'] }),
    toleranceMin: record({ late: weights, lost: weights }, { requiredKeys: ['late'] }),
    check: texts,
    claims: fc.array(
      record({ kind: fc.constantFrom('mixer' as const, 'bowl' as const), ids: fc.array(keys, { maxLength: 3 }), count: fc.integer() }),
      { maxLength: 3 },
    ),
    additions: fc.array(record({ item: keys, pct: weights, heldBack: fc.boolean() }, { requiredKeys: ['item', 'heldBack'] }), {
      maxLength: 3,
    }),
  },
  { requiredKeys: ['id', 'verb', 'kind', 'minutes', 'toleranceMin', 'claims', 'additions'] },
);

/** Events of a handful of types, a document among them, in every shape that the journal has to keep. */
export const floorEvents: fc.Arbitrary<FloorEvent> = fc.oneof(
  eventsOf(
    'stepDone',
    record(
      { ...onStep, stationId: keys, piecesDone: fc.nat(), inferred: fc.constant(true as const) },
      { requiredKeys: ['workpieceId', 'stepId', 'atMs'] },
    ),
  ),
  eventsOf('stepSkipped', record({ ...onStep, reason: texts })),
  eventsOf(
    'ingredientAdded',
    record(
      { ...onStep, ingredientId: keys, grams: weights, lotNumber: texts },
      { requiredKeys: ['workpieceId', 'stepId', 'atMs', 'ingredientId', 'grams'] },
    ),
  ),
  eventsOf('clockJumped', record({ byMs: fc.maxSafeInteger().map((byMs) => byMs + 0), atMs: instants })),
  eventsOf(
    'callSounded',
    record({
      burst: fc.constant('late' as const),
      calls: fc.array(record({ workpieceId: ids, stepId: keys, level: fc.constant('lost' as const) }), { minLength: 1, maxLength: 5 }),
      atMs: instants,
    }),
  ),
  eventsOf('dayClosed', record({ serviceDate: fc.constant('2026-03-02'), carriedOver: fc.array(ids, { maxLength: 20 }) })),
  eventsOf(
    'workpieceDrawn',
    record({
      fromWorkpieceId: ids,
      toWorkpieceId: ids,
      grams: weights,
      allergens: fc.array(fc.constantFrom(...allergenSchema.options), { maxLength: 4 }),
      lotNumbers: fc.array(record({ ingredientId: keys, lotNumber: texts }), { maxLength: 3 }),
      atMs: instants,
    }),
  ),
  eventsOf(
    'formulaAdopted',
    record({
      version: fc.integer({ min: 1 }),
      formula: record({
        id: keys,
        name: texts,
        letters: fc.constant('C'),
        kind: fc.constant('dough' as const),
        parts: fc.array(
          record({
            name: texts,
            role: fc.constant('dough' as const),
            items: fc.array(fc.oneof(record({ item: keys, g: weights }), record({ part: texts, g: weights })), { maxLength: 4 }),
          }),
          { maxLength: 3 },
        ),
        takesBack: fc.array(record({ what: fc.constant('trim' as const), capPct: weights, ageMin: weights }), { maxLength: 2 }),
        sidePreps: fc.array(
          record(
            { formula: keys, joins: keys, readyMin: weights, notBefore: keys, withinMin: weights },
            { requiredKeys: ['formula', 'joins', 'readyMin'] },
          ),
          { maxLength: 2 },
        ),
        method: fc.array(steps, { maxLength: 6 }),
      }),
    }),
  ),
);
