import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import fc from 'fast-check';
import { pino } from 'pino';
import { readBakehouseFile } from '../../shared/documents/bakehouse-file.ts';
import { readBookFile } from '../../shared/book/book-file.ts';
import { importedRecipe } from '../../shared/book/recipe-import.ts';
import { calculate } from '../../shared/calc/calculate.ts';
import { assert } from '../../shared/result.ts';
import { readOrders } from '../../shared/plan/orders/read-orders.ts';
import { readProgenMax } from '../../shared/plan/core/read-progen-max.ts';
import { readPsplib } from '../../shared/plan/core/read-psplib.ts';
import { proposalAskSchema, tryAskSchema } from '../../shared/plan/plan-api.ts';
import { joiningAskSchema, joinRequestSchema, roleAskSchema } from '../../shared/wire/access.ts';
import type { DownMessage } from '../../shared/wire/down.ts';
import { PROTOCOL_VERSION } from '../../shared/wire/protocol.ts';
import { upMessageSchema } from '../../shared/wire/up.ts';
import { ROUTE_ROLES } from '../../server/access/roles.ts';
import { HOUSE_DEVICE_ID } from '../../server/floor/house-device.ts';
import { parseSafely } from '../../server/http/safe-json.ts';
import { openHouse, type House } from '../../server/main/house.ts';
import { inTemporaryFolder, ROOT } from '../bench/places.ts';
import { Random } from '../simulation/support/random.ts';
import { inputsOf } from '../support/inputs-of.ts';
import { mutated, mutatedText } from './mutate.ts';

/** Exit code of a command line that cannot be understood, as shells use it. */
const USAGE = 2;
const MAX_INPUTS = 100_000_000;
/** Inputs drawn from each schema, to be spoilt in ever other ways. */
const DRAWN = 400;
/** Of all inputs, so many in a hundred go each way. */
const SOCKET_SHARE = 0.45;
const HTTP_SHARE = 0.35;
/** So many inputs before what the server holds is first weighed: caches are warm by then. */
const WARM_SHARE = 0.2;
/** What the heap may grow by from there on, in bytes. */
const MOST_GROWTH_BYTES = 64 * 1024 * 1024;
const MIBIBYTE = 1024 * 1024;

export interface BadInputOptions {
  readonly inputs: number;
  readonly seed: number;
}

/** What the campaign did and found. */
export interface BadInputResult {
  readonly inputs: number;
  readonly socketMessages: number;
  readonly socketsClosed: number;
  readonly commandsAccepted: number;
  readonly requests: number;
  readonly statuses: Readonly<Record<string, number>>;
  readonly files: number;
  readonly heapGrowthMiB: number;
  readonly violations: readonly string[];
}

/**
 * `npm run -s bad-input -- --inputs N --seed S`: spoilt messages, requests and files against a whole house in this process. Nothing may throw,
 * answer 500, or change the state without saying that it did; the memory stays bounded. One line of JSON at the end; exit code 1 where
 * anything was wrong.
 */
export async function main(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (options === null) {
    process.stderr.write(`Usage: npm run -s bad-input -- [--inputs N] [--seed S]   N from 1 to ${MAX_INPUTS}\n`);
    return USAGE;
  }
  const result = await runBadInput(options);
  process.stdout.write(`${JSON.stringify(result)}\n`);
  return result.violations.length === 0 ? 0 : 1;
}

/** Runs the campaign on a house of its own. */
export function runBadInput({ inputs, seed }: BadInputOptions): Promise<BadInputResult> {
  return inTemporaryFolder(async (folder) => {
    const house = await openHouse({
      dataFolder: folder,
      pace: 1,
      log: pino({ level: 'silent' }),
      pagesFolder: join(ROOT, '.build/pages'),
      addresses: [],
      // Whatever gets past this would have been let in: who may what has tests of its own.
      roleOfGuest: () => 'manage',
      // Time stands still: nothing changes but by an input, and no limit on how much comes at once is in the way.
      clocks: new RisingClock(),
      timers: { set: () => ({ cancel: () => {} }) },
    });
    try {
      const bytes = readFileSync(join(ROOT, 'fixtures/harbour.json'));
      const bakehouse = readBakehouseFile(JSON.parse(bytes.toString('utf8')));
      assert(bakehouse.ok, 'the demo bakehouse is a bakehouse file');
      await house.bringIn({ file: bakehouse.value, digest: createHash('sha256').update(bytes).digest() });
      return await new Campaign(house, new Random(seed, 'bad input'), seed).run(inputs);
    } finally {
      await house.close();
    }
  });
}

/** A second goes by with each look: buckets are always full. */
class RisingClock {
  #ms = 0;
  wallMs(): number {
    return Date.UTC(2026, 2, 7, 3) + this.#ms;
  }
  monotonicMs(): number {
    return (this.#ms += 1);
  }
  uptimeMs(): number {
    return this.#ms;
  }
}

class Campaign {
  readonly #house: House;
  readonly #random: Random;
  readonly #messages: readonly unknown[];
  readonly #bodies: readonly unknown[];
  readonly #files: readonly unknown[];
  readonly #texts: readonly string[];
  readonly #violations: string[] = [];
  readonly #statuses: Record<string, number> = {};
  #socketMessages = 0;
  #socketsClosed = 0;
  #commandsAccepted = 0;
  #requests = 0;
  #fileCount = 0;
  /** Events of others than the house itself, which raises calls and follows its plan whatever anybody says. */
  #othersEvents = 0;

  constructor(house: House, random: Random, seed: number) {
    this.#house = house;
    this.#random = random;
    house.floor.onCommitted(({ events }) => {
      this.#othersEvents += events.filter(({ deviceId }) => deviceId !== HOUSE_DEVICE_ID).length;
    });
    const drawn = (schema: Parameters<typeof inputsOf>[0]): readonly unknown[] => fc.sample(inputsOf(schema), { numRuns: DRAWN, seed });
    const { state } = house.floor;
    const workpieces = Object.keys(state.workpieces);
    // What screens really say, of doughs that are really there: what is spoilt then is nearly right.
    const recorded = workpieces.flatMap((workpieceId) => [
      { type: 'startStep', workpieceId, stepId: 'weigh' },
      { type: 'finishStep', workpieceId, stepId: 'weigh' },
      { type: 'readTemperature', workpieceId, where: 'dough', celsius: 24 },
      { type: 'skipStep', workpieceId, stepId: 'weigh', reason: 'done' },
    ]);
    const documents = [
      ...Object.values(state.formulas).map((formula) => ({ type: 'adoptFormula', fromVersion: 1, formula })),
      ...Object.values(state.products).map((product) => ({ type: 'adoptProduct', fromVersion: 1, product })),
      { type: 'adoptKitchen', fromVersion: 1, kitchen: state.kitchen?.document },
      { type: 'adoptHouse', fromVersion: 1, house: state.house?.document },
    ];
    const commands = [...recorded, ...documents].map((command, index) => ({
      type: 'command',
      commandId: `${String(index).padStart(21, '0')}A`,
      tap: { agoMonotonicMs: 0, agoWallMs: 0 },
      command,
    }));
    this.#messages = [...drawn(upMessageSchema), ...commands, ...commands];
    this.#bodies = [
      ...drawn(joinRequestSchema),
      ...drawn(joiningAskSchema),
      ...drawn(roleAskSchema),
      ...drawn(proposalAskSchema),
      ...drawn(tryAskSchema),
      ...[...recorded, ...documents].map((command) => ({ commandId: 'AAAAAAAAAAAAAAAAAAAAAA', command })),
      { desiredDoughC: 26, temperaturesC: [22, 22, 6], riseK: 5 },
    ];
    const bakehouse: unknown = JSON.parse(readFileSync(join(ROOT, 'fixtures/harbour.json'), 'utf8'));
    const recipe = {
      '@context': 'https://schema.org',
      '@type': 'Recipe',
      name: 'Plain loaf',
      recipeIngredient: ['500 g wheat flour', '350 g water', '10 g salt'],
      recipeInstructions: [{ '@type': 'HowToStep', text: 'Mix. Rest 60 minutes. Bake 40 minutes at 230 °C.' }],
    };
    this.#files = [bakehouse, recipe, { desiredDoughC: 26, temperaturesC: [22, 22, 6], riseK: 5 }];
    this.#texts = [
      'date,product,pieces,ready,customer\n2026-03-08,country-loaf,12,07:00,Harbour café\n',
      'country loaf 12 07:00\nrye 6',
      'jobs (incl. supersource/sink ): 4\nhorizon : 10\nRESOURCES\n - renewable : 1 R\nPRECEDENCE RELATIONS:\n',
      '2\t1\t0\t0\n0\t1\t1\t1\t[0]\n1\t1\t0\n2\t1\t0\n0\t1\t0\t0\n1\t1\t2\t1\n2\t1\t0\t0\n3\n',
    ];
  }

  async run(inputs: number): Promise<BadInputResult> {
    let baseBytes = Number.NaN;
    for (let done = 0; done < inputs; done += 1) {
      const way = this.#random.share();
      if (way < SOCKET_SHARE) await this.#socketInput();
      else if (way < SOCKET_SHARE + HTTP_SHARE) await this.#request();
      else this.#file();
      if (done === Math.floor(inputs * WARM_SHARE)) baseBytes = heapBytes();
      // One fault a thousand times over says no more than once.
      if (this.#violations.length >= 20) break;
    }
    const growth = heapBytes() - baseBytes;
    if (growth > MOST_GROWTH_BYTES) this.#violations.push(`the heap grew by ${Math.round(growth / MIBIBYTE)} MiB`);
    return {
      inputs,
      socketMessages: this.#socketMessages,
      socketsClosed: this.#socketsClosed,
      commandsAccepted: this.#commandsAccepted,
      requests: this.#requests,
      statuses: this.#statuses,
      files: this.#fileCount,
      heapGrowthMiB: Math.round(growth / MIBIBYTE),
      violations: this.#violations,
    };
  }

  /** A socket that says hello as it should, and then things that it should not. */
  async #socketInput(): Promise<void> {
    const { hub, floor } = this.#house;
    const sent: DownMessage[] = [];
    let closed: number | null = null;
    const peer = {
      send: (text: string) => void sent.push(JSON.parse(text) as DownMessage),
      backlogBytes: 0,
      close: (code: number) => void (closed ??= code),
    };
    const connection = hub.connect(peer, { id: 'AAAAAAAAAAAAAAAAAAAAAA', name: 'phone', stationId: null }, 'manage', 'phone');
    assert(connection !== null, 'there is room');
    if (this.#random.chance(0.9))
      connection.receive(
        JSON.stringify({
          type: 'hello',
          protocol: PROTOCOL_VERSION,
          page: 'phone',
          pageId: 'AAAAAAAAAAAAAAAAAAAAAA',
          kitchenId: floor.kitchenId,
          lastSequence: floor.state.sequence,
          sound: 'none',
          stationId: null,
        }),
      );
    const before = this.#othersEvents;
    const message = this.#random.chance(0.05)
      ? this.#random.pick(this.#messages)
      : mutated(this.#random.pick(this.#messages), this.#random);
    let text = JSON.stringify(message) ?? 'undefined';
    if (this.#random.chance(0.15)) text = mutatedText(text, this.#random);
    this.#socketMessages += 1;
    sent.length = 0;
    this.#guarded(`a message: ${text.slice(0, 300)}`, () => connection.receive(text));
    await floor.settled();
    // The answer to a command comes a turn after it was kept.
    await new Promise((resolve) => setImmediate(resolve));
    if (closed !== null) this.#socketsClosed += 1;
    const outcomes = sent.filter((each) => each.type === 'outcome');
    const isKept = outcomes.some(({ outcome }) => outcome.ok);
    if (isKept) this.#commandsAccepted += 1;
    if (this.#othersEvents !== before && !isKept)
      this.#violations.push(`the state changed and nobody was told of it: ${text.slice(0, 300)}`);
    if (outcomes.some(({ outcome }) => !outcome.ok && outcome.refusal.code === 'notKept'))
      this.#violations.push(`the journal did not take: ${text.slice(0, 300)}`);
    connection.closed();
  }

  async #request(): Promise<void> {
    const random = this.#random;
    const [method = 'GET', pattern = '/'] = random.pick(Object.keys(ROUTE_ROLES)).split(' ');
    const workpieceId = random.pick(Object.keys(this.#house.floor.state.workpieces));
    const strange = (): string =>
      encodeURIComponent(mutatedText('AAAAAAAAAAAAAAAAAAAAAA', random).replaceAll(/[\ud800-\udfff]/g, '')).slice(0, 200);
    const part = (): string => random.pick(['AAAAAAAAAAAAAAAAAAAAAA', workpieceId, '%00', '..%2f', '__proto__', 'x'.repeat(90), strange()]);
    const path = pattern
      .replace(':id', part())
      .replace(':name', random.pick(['water', 'heat', 'core', 'formula', part()]))
      .replace('*', part());
    const query = random.chance(0.4)
      ? `?${random.pick(['after', 'limit', 'version', 'station', 'date', 'page', '__proto__', 'x'])}=${random.pick(['0', '-1', '1e9', 'NaN', '2026-03-07', 'oven', part()])}`
      : '';
    const body = method === 'POST' || method === 'PUT' ? mutated(random.pick(this.#bodies), random) : undefined;
    let payload = body === undefined ? undefined : JSON.stringify(body);
    if (payload !== undefined && random.chance(0.15)) payload = mutatedText(payload, random);
    const headers: Record<string, string> =
      payload === undefined
        ? {}
        : {
            'content-type': random.pick([
              'application/json',
              'application/json',
              'application/json',
              'text/plain',
              'application/x-www-form-urlencoded',
              'x',
            ]),
          };
    if (random.chance(0.3)) headers['cookie'] = `ovenward-${random.pick(['phone', 'wall'])}=${part()}`;
    // The way to the socket is tried above; a plan that is sought would go on beside the next inputs.
    if (pattern === '/live' || (method === 'POST' && pattern.startsWith('/api/plan/')) || pattern.startsWith('/api/devices'))
      headers['origin'] = 'http://elsewhere.example';
    const before = this.#othersEvents;
    this.#requests += 1;
    let status: number;
    try {
      const answer = await this.#house.app.inject({
        method: method as 'GET',
        url: path + query,
        headers,
        ...(payload === undefined ? {} : { payload }),
      });
      status = answer.statusCode;
      if (status >= 500 && status !== 503)
        this.#violations.push(`${method} ${path}${query} was answered ${status} to ${payload?.slice(0, 300) ?? 'nothing'}`);
      if (status >= 400 && /node_modules|\.ts:|\.js:|at \w+ \(/.test(answer.body))
        this.#violations.push(`${method} ${path} told innards: ${answer.body.slice(0, 200)}`);
    } catch (error) {
      // A path that no client could send is refused by the tool that sends it, and not by the server.
      if (!(error instanceof Error && 'code' in error && error.code === 'ERR_INVALID_URL')) throw error;
      status = 0;
    }
    this.#statuses[status] = (this.#statuses[status] ?? 0) + 1;
    if (this.#othersEvents !== before && (status < 200 || status >= 300))
      this.#violations.push(`${method} ${path} was answered ${status} and changed the state`);
  }

  /** Files and texts that are read: a fault is a result, and never thrown. */
  #file(): void {
    const random = this.#random;
    this.#fileCount += 1;
    const text = mutatedText(random.pick(this.#texts), random);
    const what = random.whole(0, 6);
    if (what <= 2) {
      const spoilt = JSON.stringify(mutated(random.pick(this.#files), random)) ?? 'null';
      const value = asRead(spoilt);
      if (value === REFUSED) return;
      const names = { formulaIds: new Set<string>(), productIds: new Set<string>(), letters: new Set<string>() };
      const readers = [
        () => readBakehouseFile(value),
        () => readBookFile(value),
        () => importedRecipe(value, [], names),
        () => calculate(random.pick(['water', 'formula', 'heat', 'rest', 'core', 'cooling']), value),
      ];
      this.#guarded(`a file: ${JSON.stringify(value)?.slice(0, 300) ?? ''}`, random.pick(readers));
      return;
    }
    const context = { products: [], serviceDate: '2026-03-08', firstDate: '2026-03-07', instantMs: () => 0 };
    this.#guarded(
      `a text: ${text.slice(0, 300)}`,
      random.pick([() => readOrders(text, context), () => readPsplib(text), () => readProgenMax(text)]),
    );
  }

  #guarded(what: string, run: () => unknown): void {
    try {
      run();
    } catch (error) {
      this.#violations.push(`${what} threw ${error instanceof Error ? (error.stack ?? error.message).slice(0, 400) : String(error)}`);
    }
  }
}

/** No file at all: it was refused before anybody looked into it. */
const REFUSED = Symbol('refused');

/** A file as it is read: what is no JSON, or only pretends to be data, is refused. */
function asRead(text: string): unknown {
  try {
    return parseSafely(text);
  } catch (error) {
    if (error instanceof SyntaxError) return REFUSED;
    throw error;
  }
}

/** What V8 clears up when it is told to: without that, what is weighed is mostly litter. */
setFlagsFromString('--expose-gc');
const clearUp = runInNewContext('gc') as () => void;

function heapBytes(): number {
  clearUp();
  return process.memoryUsage().heapUsed;
}

function readOptions(args: readonly string[]): BadInputOptions | null {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { inputs: { type: 'string', default: '20000' }, seed: { type: 'string', default: '1' } },
    });
    const [inputs, seed] = [Number(values.inputs), Number(values.seed)];
    return Number.isInteger(inputs) && inputs >= 1 && inputs <= MAX_INPUTS && Number.isInteger(seed) && seed >= 0 ? { inputs, seed } : null;
  } catch {
    // parseArgs throws on what it does not know; the usage says the rest.
    return null;
  }
}
