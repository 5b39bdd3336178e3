import { readBakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import { assert } from '../../../shared/result.ts';
import { sphereTauMin } from '../../../shared/trade/time-constant.ts';
import { Floor } from './floor.ts';
import { bringInCommand, harbourJson } from './harbour.ts';
import { SERVER_DEVICE } from './ids.ts';

/** What a test says of the house; missing: a yeasted dough, a shelf as warm as its reference. */
export interface RulerHouse {
  readonly ripening?: Readonly<Record<string, unknown>>;
  /** Of the shelf on which it rests. */
  readonly placeC?: number;
  /** How fast the dough takes on the temperature of the air: it is as heavy as a sphere that does. */
  readonly tauMin?: number;
  readonly selfHeatKPerH?: number;
}

interface Editable {
  kitchen: { mixers: { leastG: number }[]; restPlaces: { id: string; temperatureC: number }[] };
  formulas: { id: string; doughC: number; selfHeatKPerH?: number; method: Record<string, unknown>[] }[];
  day: { batches: Record<string, unknown>[] };
}

/** A floor with one dough, C1, that has just begun a rest of 120 min at a reference of 25 °C. Nobody has read it yet. */
export function ruler({ ripening, placeC = 25, tauMin = 180, selfHeatKPerH }: RulerHouse): Floor {
  const json = harbourJson() as unknown as Editable;
  for (const mixer of json.kitchen.mixers) mixer.leastG = 100;
  for (const place of json.kitchen.restPlaces) if (place.id === 'warm-shelf') place.temperatureC = placeC;
  const country = json.formulas.find(({ id }) => id === 'country');
  assert(country !== undefined, 'the house makes country dough');
  country.doughC = 25;
  if (selfHeatKPerH !== undefined) country.selfHeatKPerH = selfHeatKPerH;
  const rest = country.method.find((step) => step['id'] === 'bulk-1');
  assert(rest !== undefined, 'it rests');
  rest['minutes'] = { earliest: 60, target: 120, latest: 240 };
  rest['ripening'] = ripening ?? { model: 'perKelvin', rate: 0.1, referenceC: 25 };
  json.day.batches = [
    { formula: 'country', start: { afterLoadMin: 0 }, doughG: gramsOf(tauMin), cuts: [{ product: 'country-loaf', pieces: 1 }] },
  ];
  const file = readBakehouseFile(json);
  assert(file.ok, file.ok ? '' : JSON.stringify(file.fault));
  const floor = new Floor();
  floor.ok(bringInCommand(file.value, floor.nowMs), { deviceId: SERVER_DEVICE });
  return floor.bringTo('C1', 'bulk-1');
}

/** How heavy a sphere of dough is that has a time constant, to a hundredth of a gram. */
function gramsOf(tauMin: number): number {
  let [low, high] = [1, 100_000];
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (sphereTauMin(middle) < tauMin) low = middle;
    else high = middle;
  }
  return Math.round(low * 100) / 100;
}
