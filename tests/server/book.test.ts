import type { LightMyRequestResponse } from 'fastify';
import { describe, expect, it } from 'vitest';
import { BOOK_FORMAT, bookFileSchema, bookFormulaSchema, bookIndexSchema, type BookFile } from '../../shared/book/book-api.ts';
import type { Formula } from '../../shared/documents/formula.ts';
import { stepSchema, type Step } from '../../shared/documents/method.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { evolveAll } from '../../shared/floor/evolve.ts';
import { forScreens } from '../../shared/floor/for-screens.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import type { House } from '../../server/main/house.ts';
import { freshId, hello, LiveClient } from './support/live-client.ts';
import { MORNING_MS } from './support/machine.ts';
import { harbour, openTestHouse } from './support/test-house.ts';

const SERVICE_DATE = '2026-03-07';

function save(house: House, command: ClientCommand): Promise<LightMyRequestResponse> {
  return house.app.inject({ method: 'POST', url: '/api/commands', payload: { commandId: freshId(), command } });
}

function bringIn(house: House, file: unknown): Promise<LightMyRequestResponse> {
  return house.app.inject({ method: 'POST', url: '/api/book/import', payload: file as object });
}

async function exported(house: House): Promise<BookFile> {
  return bookFileSchema.parse((await house.app.inject('/api/book/export')).json());
}

function formulaOf(house: House, id: string): Formula {
  const formula = house.floor.state.formulas[`${id}@${house.floor.state.formulaVersions[id] ?? 0}`];
  assert(formula !== undefined, `there is no formula ${id}`);
  return formula;
}

const SOAK_STEP: Step = stepSchema.parse({ id: 'soak', verb: 'weigh', kind: 'hands', minutes: { target: 2 } });

/** A prep of the harbour's own ingredients that nothing takes. */
function soak(id: string, letters: string): Formula {
  const items = [
    { item: 'rye-flour', g: 300 },
    { item: 'water', g: 450 },
  ];
  return {
    id,
    name: `Soak ${id}`,
    letters,
    kind: 'prep',
    parts: [{ name: 'Soak', role: 'soaker', items }],
    takesBack: [],
    sidePreps: [],
    method: [SOAK_STEP],
  };
}

describe('GET /api/book', () => {
  it('R16 lists every formula with what a search looks at, and the ingredients', async () => {
    const { house } = await openTestHouse();
    const book = bookIndexSchema.parse((await house.app.inject('/api/book')).json());
    const { file } = harbour();
    expect(book.entries.map(({ id, name, letters, kind }) => [id, name, letters, kind])).toEqual(
      file.formulas.map(({ id, name, letters, kind }) => [id, name, letters, kind]),
    );
    expect(book.ingredients).toEqual(file.ingredients);
    const buns = book.entries.find(({ id }) => id === 'milk-buns');
    expect(buns).toMatchObject({ version: 1, isArchived: false, atMs: MORNING_MS });
    expect(buns?.products.map(({ id }) => id)).toEqual(file.products.filter(({ formula }) => formula === 'milk-buns').map(({ id }) => id));
  });

  it('R16 has what was saved since, and what is out of the way marked', async () => {
    const { house } = await openTestHouse();
    await house.app.inject('/api/book');
    await save(house, { type: 'adoptFormula', fromVersion: 0, formula: soak('soak', 'Sk') });
    await save(house, { type: 'archiveFormula', formulaId: 'soak', isArchived: true });
    const { entries } = bookIndexSchema.parse((await house.app.inject('/api/book')).json());
    // 450 g of water on 300 g of flour.
    expect(entries.at(-1)).toEqual({
      id: 'soak',
      name: 'Soak soak',
      letters: 'Sk',
      kind: 'prep',
      version: 1,
      isArchived: true,
      atMs: MORNING_MS,
      hydrationPct: 150,
      ingredientIds: ['rye-flour', 'water'],
      products: [],
    });
  });
});

describe('GET /api/book/formulas/:id', () => {
  it('R17 has the formula with its products, and an older version from the journal, after a restart too', async () => {
    const { house, machine, folder, close } = await openTestHouse();
    const first = formulaOf(house, 'olive-flatbread');
    for (const version of [1, 2]) {
      await machine.pass(60_000);
      await save(house, { type: 'adoptFormula', fromVersion: version, formula: { ...first, note: `Tried ${version}` } });
    }
    await close();
    const { house: again } = await openTestHouse({ folder, machine });
    const newest = bookFormulaSchema.parse((await again.app.inject('/api/book/formulas/olive-flatbread')).json());
    expect(newest).toMatchObject({ version: 3, newestVersion: 3, isArchived: false, formula: { note: 'Tried 2' }, needs: [] });
    expect(newest.history).toEqual([
      { version: 1, atMs: MORNING_MS },
      { version: 2, atMs: MORNING_MS + 60_000 },
      { version: 3, atMs: MORNING_MS + 120_000 },
    ]);
    expect(newest.products.map(({ product, version }) => [product.id, version])).toEqual([['olive-flat', 1]]);
    for (const [version, note] of [
      [1, undefined],
      [2, 'Tried 1'],
    ] as const) {
      const older = bookFormulaSchema.parse((await again.app.inject(`/api/book/formulas/olive-flatbread?version=${version}`)).json());
      expect([older.version, older.newestVersion, older.formula.note]).toEqual([version, 3, note]);
    }
  });

  it('R17 has what it takes from, at any depth', async () => {
    const { house } = await openTestHouse();
    await save(house, { type: 'adoptFormula', fromVersion: 0, formula: soak('soak', 'Sk') });
    const of = (id: string, letters: string, taken: string): Formula => ({
      ...soak(id, letters),
      parts: [
        {
          name: 'Mix',
          role: 'soaker',
          items: [
            { item: 'water', g: 5 },
            { formula: taken, g: 100 },
          ],
        },
      ],
    });
    await save(house, { type: 'adoptFormula', fromVersion: 0, formula: of('scald', 'Sc', 'soak') });
    await save(house, { type: 'adoptFormula', fromVersion: 0, formula: of('mash', 'Ma', 'scald') });
    const mash = bookFormulaSchema.parse((await house.app.inject('/api/book/formulas/mash')).json());
    expect(mash.needs.map(({ id }) => id)).toEqual(['scald', 'soak']);
  });

  it.each(['ghost', 'country?version=2', 'GHOST'])('R17 is 404 for %s, which is not there', async (path) => {
    const { house } = await openTestHouse();
    const answer = await house.app.inject(`/api/book/formulas/${path}`);
    expect([answer.statusCode, answer.json<{ type: string }>().type]).toEqual([404, 'urn:ovenward:problem:notFound']);
  });

  it('R17 is 400 for a version that is no number', async () => {
    const { house } = await openTestHouse();
    const answer = await house.app.inject('/api/book/formulas/country?version=new');
    expect([answer.statusCode, answer.json<{ type: string }>().type]).toEqual([400, 'urn:ovenward:problem:badInput']);
  });
});

describe('POST /api/commands with a formula', () => {
  it('R18 takes one of 60 lines and 40 steps, each with all that a step says', async () => {
    const { house } = await openTestHouse();
    const ids = Array.from({ length: 60 }, (_, index) => `long-name-of-an-ingredient-number-${index}`);
    const ingredients = ids.map((id) => ({ id, name: id.slice(0, 40), kind: 'flour' as const, allergens: [] }));
    const made = await bringIn(house, { format: BOOK_FORMAT, ingredients, formulas: [], products: [] });
    expect(made.statusCode).toBe(200);
    const words = 'so many words that a check may have, and a few more'.repeat(4);
    const method = Array.from({ length: 40 }, (_, index) =>
      stepSchema.parse({
        id: `step-${index}`,
        verb: 'stand',
        kind: 'judged',
        minutes: { earliest: 1, target: 2, latest: 3 },
        check: words,
        caution: words,
        claims: [{ kind: 'mixer', ids: [] }],
        additions: ids.slice(0, 10).map((item) => ({ item, pct: 0.01 })),
      }),
    );
    const formula: Formula = {
      ...soak('large', 'La'),
      parts: [{ name: 'All', role: 'soaker', items: ids.map((item) => ({ item, g: 1234.5 })) }],
      method,
    };
    const answer = await save(house, { type: 'adoptFormula', fromVersion: 0, formula });
    expect([answer.statusCode, answer.body]).toEqual([200, expect.stringContaining('"ok":true')]);
  });
});

describe('the book as a file', () => {
  it('R19 goes out as an attachment, and into another house of the same kitchen as it was', async () => {
    const { house } = await openTestHouse();
    await save(house, { type: 'adoptFormula', fromVersion: 0, formula: soak('soak', 'Sk') });
    await save(house, { type: 'archiveFormula', formulaId: 'soak', isArchived: true });
    const answer = await house.app.inject('/api/book/export');
    expect(answer.headers['content-disposition']).toBe('attachment; filename="formula-book.json"');
    expect(answer.headers['content-type']).toMatch(/^application\/json/);
    const file = await exported(house);
    const { house: other } = await openTestHouse();
    const taken = await bringIn(other, file);
    expect([taken.statusCode, taken.json()]).toEqual([
      200,
      {
        sequence: other.floor.state.sequence,
        ingredients: { new: 0, changed: 0, unchanged: file.ingredients.length },
        formulas: { new: 1, changed: 0, unchanged: file.formulas.length - 1 },
        products: { new: 0, changed: 0, unchanged: file.products.length },
      },
    ]);
    expect(await exported(other)).toEqual(file);
  });

  it('R19 taken in again changes nothing, and says so', async () => {
    const { house } = await openTestHouse();
    const { sequence } = house.floor.state;
    const again = await bringIn(house, await exported(house));
    expect([again.statusCode, again.json()]).toMatchObject([200, { sequence, formulas: { new: 0, changed: 0 } }]);
    expect(house.floor.state.sequence).toBe(sequence);
  });

  it('R20 is not taken in with faults: every one is told with its path, and nothing has happened', async () => {
    const { house } = await openTestHouse();
    const { sequence } = house.floor.state;
    const file = await exported(house);
    const noShape = await bringIn(house, { ...file, format: 7, colour: 'grey' });
    expect([noShape.statusCode, noShape.headers['content-type']]).toEqual([400, expect.stringMatching(/^application\/problem\+json/)]);
    expect(noShape.json<{ faults: { path: string }[] }>().faults.map(({ path }) => path)).toEqual(['format', '(the whole file)']);
    const unknown = Array.from({ length: 70 }, (_, index) => ({ item: `sand-${index % 60}`, g: 10 })).slice(0, 60);
    const sandy = { ...soak('sand', 'C'), parts: [{ name: 'Sand', role: 'soaker', items: unknown }] };
    const meant = await bringIn(house, { ...file, formulas: [...file.formulas, sandy] });
    const { faults } = meant.json<{ faults: { path: string; message: string; facts: object }[] }>();
    const at = file.formulas.length;
    expect(meant.statusCode).toBe(400);
    expect(faults).toHaveLength(62);
    expect(faults).toContainEqual({
      path: `formulas[${at}].parts[0].items[59].item`,
      message: 'there is no ingredient "sand-59"',
      facts: { code: 'ingredientUnknown', id: 'sand-59' },
    });
    expect(faults.filter(({ path }) => path.endsWith('.letters'))).toHaveLength(2);
    expect(house.floor.state.sequence).toBe(sequence);
  });

  it('R20 is 413 above 32 MiB, and 400 where it is no JSON', async () => {
    const { house } = await openTestHouse();
    const headers = { 'content-type': 'application/json' };
    const large = await house.app.inject({
      method: 'POST',
      url: '/api/book/import',
      headers,
      payload: `"${'x'.repeat(32 * 1024 * 1024)}"`,
    });
    expect([large.statusCode, large.json<{ detail: string }>().detail]).toEqual([413, 'At most 33554432 bytes.']);
    const broken = await house.app.inject({ method: 'POST', url: '/api/book/import', headers, payload: '{' });
    expect(broken.statusCode).toBe(400);
  });

  it('R21 is for those alone who may manage', async () => {
    const { house } = await openTestHouse({ roleOfGuest: () => 'act' });
    const answer = await bringIn(house, await exported(house));
    expect(answer.statusCode).toBe(403);
  });
});

describe('the book and the screens', () => {
  it('W26 a book of 2 000 formulas is in the list and on no phone', async () => {
    const { house } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    const formulas = Array.from({ length: 2000 }, (_, index) => soak(`soak-${index}`, lettersOf(index)));
    // There are 23 · 26 such pairs: the rest of a large book is out of the way.
    const archived = formulas.slice(598).map(({ id }) => id);
    const taken = await bringIn(house, { format: BOOK_FORMAT, ingredients: [], formulas, products: [], archived });
    expect([taken.statusCode, taken.json()]).toMatchObject([200, { formulas: { new: 2000 } }]);
    const { entries } = bookIndexSchema.parse((await house.app.inject('/api/book')).json());
    expect(entries).toHaveLength(2000 + harbour().file.formulas.length);
    await phone.give({ type: 'hearAllCalls' });
    const told = phone.of('snapshot').at(-1);
    expect(told?.state.sequence).toBeGreaterThan(2000);
    expect(Object.keys(told?.state.formulas ?? {}).sort()).toEqual(Object.keys(forScreens(house.floor.state).formulas).sort());
    expect(Object.keys(told?.state.formulas ?? {}).some((key) => key.startsWith('soak-'))).toBe(false);
    // No message that a phone got is as long as a tenth of the book.
    const longest = Math.max(...phone.messages.map((message) => JSON.stringify(message).length));
    expect(longest).toBeLessThan(JSON.stringify(formulas).length / 4);
  });

  it('W27 a batch of a formula that no screen has comes with it, also to one that was away', async () => {
    const { house } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    await save(house, { type: 'adoptFormula', fromVersion: 0, formula: soak('soak', 'Sk') });
    // Comes after it was written: this one has never heard of the soak.
    const late = await LiveClient.live(house.app);
    const away = house.floor.state.sequence;
    const plan = { formulaId: 'soak', plannedStartMs: MORNING_MS, grams: 3000, cuts: [] };
    const planned = await save(house, { type: 'planBatches', serviceDate: SERVICE_DATE, batches: [plan] });
    expect(planned.statusCode).toBe(200);
    const back = await LiveClient.connect(house.app);
    back.say(hello({ kitchenId: house.floor.kitchenId, lastSequence: away }));
    await back.first('live');
    for (const client of [phone, late, back]) {
      await client.give({ type: 'hearAllCalls' });
      const state = heldBy(client);
      expect(Object.keys(state.formulas)).toContain('soak@1');
      expect(JSON.parse(JSON.stringify(forScreens(state)))).toEqual(JSON.parse(JSON.stringify(forScreens(house.floor.state))));
    }
  });

  it('W27 one more batch of what is on the floor goes as an event', async () => {
    const { house } = await openTestHouse();
    const phone = await LiveClient.live(house.app);
    const cuts = [{ productId: 'country-loaf', pieces: 10, grams: 9000 }];
    const plan = { formulaId: 'country', plannedStartMs: MORNING_MS, grams: 9000, cuts };
    await save(house, { type: 'planBatches', serviceDate: SERVICE_DATE, batches: [plan] });
    await phone.give({ type: 'hearAllCalls' });
    expect(phone.of('snapshot')).toHaveLength(1);
    expect(phone.of('events').flatMap(({ events }) => events.map(({ event }) => event.type))).toContain('workpiecePlanned');
  });
});

/** What a page holds that has heard all this: the last snapshot, and the events since. */
function heldBy(client: LiveClient): FloorState {
  const last = client.messages.findLastIndex(({ type }) => type === 'snapshot');
  const snapshot = client.messages[last];
  assert(snapshot?.type === 'snapshot', 'the page got a snapshot');
  const events = client.of('events', last).flatMap((message) => message.events);
  return evolveAll(
    snapshot.state,
    events.filter(({ sequence }) => sequence > snapshot.sequence),
  );
}

/** The n-th pair of letters, an upper case one and a lower case one, from D on: the harbour's letters come before, or are single. */
function lettersOf(n: number): string {
  return String.fromCharCode(68 + (Math.floor(n / 26) % 23), 97 + (n % 26));
}
