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
    sha256: 'ee9102357ff87d8f922272af6fa4f59824e802e74c1b9661c5974395e6401c26',
    advice: WIRE,
  },
  {
    name: 'downMessageSchema',
    schema: downMessageSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: 'a619780f894c5eac6314d575e4c32dc94d9629700979e3157b18ce91041804eb',
    advice: WIRE,
  },
  {
    name: 'clientCommandSchema',
    schema: clientCommandSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: 'e4cc96c539035aa9d15f1fd77c640260d15cbb09c81b1746c598903f80e91716',
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
    sha256: 'e5ef1980ca9820f8e5113f166d411130743dae25b72f6a830fea777a6f5938a1',
    advice: WIRE,
  },
  {
    name: 'floorEventSchema',
    schema: floorEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: 'beedffb004624d695fbef48f6852a0b9096974bca703bfdae179557e01100138',
    advice: EVENTS,
  },
  {
    name: 'recordedEventSchema',
    schema: recordedEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: '10d2b36389ded18941aa6ebbf19ab4977cd30f6a72b419b117dd5fd10ad87367',
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
