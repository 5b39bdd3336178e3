import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { BAKEHOUSE_FORMAT, bakehouseFileSchema } from '../../shared/documents/bakehouse-file.ts';
import { clientCommandSchema, tapTimeSchema } from '../../shared/floor/commands.ts';
import { EVENT_VERSION, floorEventSchema, recordedEventSchema } from '../../shared/floor/events.ts';
import { outcomeSchema } from '../../shared/floor/refusals.ts';
import { downMessageSchema } from '../../shared/wire/down.ts';
import { PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import { upMessageSchema } from '../../shared/wire/up.ts';

/** SHA-256 of a schema's description: its JSON Schema, which says shapes, ranges and patterns, not wordings of faults. */
function shapeHash(schema: z.ZodType): string {
  const description = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
  return createHash('sha256').update(JSON.stringify(description)).digest('hex');
}

const WIRE = [
  'The shape of what wall, phone and server say to one another is another than the one that this test knows.',
  'If that was meant and a version with the old shape has been given out: raise PROTOCOL_VERSION in shared/wire/protocol.ts, so that old pages are told to load again.',
  'Then write the new version and hash here, in the same commit.',
].join('\n');

const EVENTS = [
  'The shape of the events is another than the one that this test knows, and events are kept for ever.',
  'If that was meant and journals with the old shape may exist: raise EVENT_VERSION in shared/floor/events.ts and add an upcaster in server/journal/upcasters.ts that lifts the old shape, with its test.',
  'Then write the new version and hash here, in the same commit. Where state is folded otherwise, raise STATE_VERSION in shared/floor/state.ts as well.',
].join('\n');

const FILES = [
  'The shape of the bakehouse file is another than the one that this test knows.',
  'If files that were right would now be refused: raise BAKEHOUSE_FORMAT in shared/documents/bakehouse-file.ts and say in DEVELOPERS.md how a file is brought up.',
  'Then write the new version and hash here, in the same commit.',
].join('\n');

const HELD: readonly {
  readonly name: string;
  readonly schema: z.ZodType;
  readonly version: number;
  readonly heldVersion: number;
  readonly sha256: string;
  readonly advice: string;
}[] = [
  {
    name: 'upMessageSchema',
    schema: upMessageSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: '6b215f44d5854ab0bc568082eb60d3343bb2d8e08833867e9f49976007dba670',
    advice: WIRE,
  },
  {
    name: 'downMessageSchema',
    schema: downMessageSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: '1076526aeb079c8bf27162072a7207bc2c9267bcb0182f2a8d860c170f06a404',
    advice: WIRE,
  },
  {
    name: 'clientCommandSchema',
    schema: clientCommandSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: 'd61850ccf77a3cd07d5d814398cd63e9dce360f57c8efb881b223e55f0d79d4a',
    advice: WIRE,
  },
  {
    name: 'tapTimeSchema',
    schema: tapTimeSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: '6c68ae48afd8f13f0d4a94acc1ea43306794e4b70c62f74292f1e3eb4c42e852',
    advice: WIRE,
  },
  {
    name: 'outcomeSchema',
    schema: outcomeSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: 'd77f46b4acdea315122343710599d2d23e7f82c97c3bc23f8e0e12aa5bfb6378',
    advice: WIRE,
  },
  {
    name: 'floorEventSchema',
    schema: floorEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: '3ff8a095d6a650a75a4e6dd3bacc263189929f66613c9404f3868638799bd3f8',
    advice: EVENTS,
  },
  {
    name: 'recordedEventSchema',
    schema: recordedEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: '71a770b675a74a50aafa88ae3dc8497ae0d2872953b9eb11bad73fe17da6386e',
    advice: EVENTS,
  },
  {
    name: 'bakehouseFileSchema',
    schema: bakehouseFileSchema,
    version: BAKEHOUSE_FORMAT,
    heldVersion: 1,
    sha256: 'de6e4c3119a4696a4f3d5d65e9445ee38d551277b5562b7bad42c0c941ecdfec',
    advice: FILES,
  },
];

describe('D23 shapes are held against their versions', () => {
  test.each(HELD)('$name', ({ name, schema, version, heldVersion, sha256, advice }) => {
    expect({ name, version, sha256: shapeHash(schema) }, advice).toEqual({ name, version: heldVersion, sha256 });
  });

  test('the description notices a field, a range and a pattern', () => {
    const plain = z.strictObject({ n: z.number().min(0) });
    const others = [
      z.strictObject({ n: z.number().min(1) }),
      z.strictObject({ n: z.number().min(0), m: z.number().optional() }),
      z.strictObject({ n: z.string().regex(/a/) }),
      z.strictObject({ n: z.string().regex(/b/) }),
    ];
    expect(new Set([plain, ...others].map(shapeHash)).size).toBe(5);
  });
});
