import { readBakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import type { BakePhase } from '../../../shared/documents/method.ts';
import { assert } from '../../../shared/result.ts';
import { Floor } from './floor.ts';
import { bringInCommand, harbourJson } from './harbour.ts';
import { SERVER_DEVICE } from './ids.ts';

/** What a test says of the bake; missing: the harbour's seeded rye, 55 min with steam for the first ten. */
export interface OvenHouse {
  readonly phases?: readonly BakePhase[];
  readonly minutes?: { readonly earliest?: number; readonly latest?: number };
  /** Null: none. */
  readonly coreC?: number | null;
  readonly altitudeM?: number;
  /** How far its day has come; missing: it has just gone into the oven. */
  readonly to?: 'prove' | 'bake';
}

/** Its decks heat and cool as fast as that, in kelvin a minute. */
export const DECK_RATES = { heatKPerMin: 5, coolKPerMin: 3 };

interface Editable {
  house: { altitudeM?: number };
  kitchen: { ovens: { decks: object[] }[] };
  products: { id: string; way: Record<string, unknown>[] }[];
  day: { batches: Record<string, unknown>[] };
}

/** A floor with one load of seeded rye, R1, that has just gone into the oven. */
export function ovenHouse({ phases, minutes = {}, coreC, altitudeM = 0, to = 'bake' }: OvenHouse = {}): Floor {
  const json = harbourJson() as unknown as Editable;
  json.house.altitudeM = altitudeM;
  for (const deck of json.kitchen.ovens.flatMap(({ decks }) => decks)) Object.assign(deck, DECK_RATES);
  const bake = json.products.find(({ id }) => id === 'rye-tin')?.way.find((step) => step['id'] === 'bake');
  assert(bake !== undefined, 'the house bakes rye');
  if (phases !== undefined) bake['bake'] = phases;
  const target = (bake['bake'] as BakePhase[]).reduce((sum, phase) => sum + phase.minutes, 0);
  bake['minutes'] = { target, ...minutes };
  if (coreC === null) delete bake['coreC'];
  else if (coreC !== undefined) bake['coreC'] = coreC;
  json.day.batches = [{ formula: 'rye', start: { afterLoadMin: 0 }, cuts: [{ product: 'rye-tin', pieces: 8 }] }];
  const file = readBakehouseFile(json);
  assert(file.ok, file.ok ? '' : JSON.stringify(file.fault));
  const floor = new Floor();
  floor.ok(bringInCommand(file.value, floor.nowMs), { deviceId: SERVER_DEVICE });
  const tag = Object.values(floor.state.workpieces).find((piece) => piece.kind === 'batch')?.tag;
  assert(tag !== undefined, 'there is a batch');
  return floor.bringTo(tag, to);
}
