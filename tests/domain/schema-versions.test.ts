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
    sha256: 'c4c240af0cdee197936dc314a154723627e67bb27cde52a9716fafa446ee6f6f',
    advice: WIRE,
  },
  {
    name: 'downMessageSchema',
    schema: downMessageSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: '1640f9061537dfc5ca1b358ed31681b7a831951e8a59737cbd04de59fdd24456',
    advice: WIRE,
  },
  {
    name: 'clientCommandSchema',
    schema: clientCommandSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: 'b8dd1119ad69a2bc1af86034e0548a8a817607d03b3526e86609c81f9296f79f',
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
    sha256: 'f8639620c225056a9be52a5f1505b31df9d29bd3e78adf513addc8f81536600d',
    advice: WIRE,
  },
  {
    name: 'floorEventSchema',
    schema: floorEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: 'c1bcf45db1da7b9bb6c309473f5af3dfab2451e7d2498afb0d327bab6ab020a1',
    advice: EVENTS,
  },
  {
    name: 'recordedEventSchema',
    schema: recordedEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: 'b7136a04b1459ba00379c85bdf7bc92f3dc882e3043ae10941ecfd3bc66e7b7c',
    advice: EVENTS,
  },
  {
    name: 'bakehouseFileSchema',
    schema: bakehouseFileSchema,
    version: BAKEHOUSE_FORMAT,
    heldVersion: 1,
    sha256: '2e56b5e68f9299a7354388ed2dca1d1d60d0eed25bbe7431e299be24c1883e42',
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
