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
    sha256: '710efe1f6f60b007988d710a7ecbdb4253ae4df2618edcf5937a820e7f20863c',
    advice: WIRE,
  },
  {
    name: 'downMessageSchema',
    schema: downMessageSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: '7d0b6cedf888adf83aec95c7c875cc30aea5e92b259dd05475b9d40c64542da2',
    advice: WIRE,
  },
  {
    name: 'clientCommandSchema',
    schema: clientCommandSchema,
    version: PROTOCOL_VERSION,
    heldVersion: 1,
    sha256: '412cd710f858cc4e089db3e692e9e8df75add23f4339bbe623da53871d6fa1c8',
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
    sha256: '4eaa194e2aa13ac2fb02ee5e00715a36ebf371d09f7d9a1378a4eb92ae97a707',
    advice: WIRE,
  },
  {
    name: 'floorEventSchema',
    schema: floorEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: 'ec629c3e68149c45e1f0b193fc00b4b995f6369c02af3e7e837f6dcf6d03ec64',
    advice: EVENTS,
  },
  {
    name: 'recordedEventSchema',
    schema: recordedEventSchema,
    version: EVENT_VERSION,
    heldVersion: 1,
    sha256: 'd6d5f2dad541bd0ef87c0b44dc231ee107cd3cf509948c545e75f4eacee87ad4',
    advice: EVENTS,
  },
  {
    name: 'bakehouseFileSchema',
    schema: bakehouseFileSchema,
    version: BAKEHOUSE_FORMAT,
    heldVersion: 1,
    sha256: 'b6878e44d2857b62ec9d081f9941baf68373d08d25436063b2cefb8e5579244c',
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
