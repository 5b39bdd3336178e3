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
    sha256: '8b980d9e4f0e4c711eca5e8974f24221fa4a770f671bea8afa1a99a2358b20b9',
    advice: WIRE,
  },
  {
    name: 'downMessageSchema',
    schema: downMessageSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: '8b937df926e2173a3948109f98812266d4560c764adc152e68fef1a27da5e34d',
    advice: WIRE,
  },
  {
    name: 'clientCommandSchema',
    schema: clientCommandSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: 'd44ce4feb71e88ad0cbdac0a5a6551d75ee5d7f3aa2f9f897666cdce931fe608',
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
    sha256: 'e3dce754401ab9a2f3cc8dd3b0c1ce913206171c3f98c5d8379906de7aaa9247',
    advice: WIRE,
  },
  {
    name: 'floorEventSchema',
    schema: floorEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: 'f9c1c89f74bfe9016baf590c8d8b1d7cc7a7ecd8a613b72a0d36055667e409d3',
    advice: EVENTS,
  },
  {
    name: 'recordedEventSchema',
    schema: recordedEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: 'e0f2dcad6d2e9c319c6003320ec88e7e00b6dfb88b0785c05e7713ebf0ae8204',
    advice: EVENTS,
  },
  {
    name: 'bakehouseFileSchema',
    schema: bakehouseFileSchema,
    version: BAKEHOUSE_FORMAT,
    heldVersion: 1,
    sha256: '89abdd516958fe182efb99c2f9c1a5865e583332c8397a511fef9db8f5fcbbac',
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
