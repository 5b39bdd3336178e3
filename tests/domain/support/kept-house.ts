import { readBakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import { assert } from '../../../shared/result.ts';
import type { RuleSetName } from '../../../shared/trade/holding-rules.ts';
import { Floor } from './floor.ts';
import { bringInCommand, demoJson } from './harbour.ts';
import { SERVER_DEVICE } from './ids.ts';

/** What a test says of the house. */
export interface KeptHouse {
  readonly ruleSet: RuleSetName;
  /** Of the bench and of the rack beside it. */
  readonly benchC?: number;
}

interface Editable {
  house: { ruleSet: string };
  kitchen: { restPlaces: { id: string; kind: string; temperatureC: number }[] };
  formulas: { id: string; method: { id: string; minutes: object }[] }[];
}

/** The demo bakehouse by the rules of a house, with its doughs and preps as they come. */
export function keptHouse({ ruleSet, benchC = 23 }: KeptHouse): Floor {
  const json = demoJson() as unknown as Editable;
  json.house.ruleSet = ruleSet;
  for (const place of json.kitchen.restPlaces) if (place.kind === 'bench') place.temperatureC = benchC;
  // So long that its own minutes never call before its limit does.
  const keep = json.formulas.find(({ id }) => id === 'cheese-filling')?.method.find(({ id }) => id === 'keep');
  assert(keep !== undefined, 'the filling is kept');
  keep.minutes = { earliest: 0, target: 2000, latest: 3000 };
  const file = readBakehouseFile(json);
  assert(file.ok, file.ok ? '' : JSON.stringify(file.fault));
  const floor = new Floor();
  floor.ok(bringInCommand(file.value, floor.nowMs), { deviceId: SERVER_DEVICE });
  return floor;
}

/** The same with a tub of cheese filling, Cf1, that came into the cold room a minute ago; its time counts from there. */
export function cheeseInTheCold(house: KeptHouse): Floor {
  return keptHouse(house).bringTo('Cf1', 'keep').wait(1);
}

/** The same with custard, Cu1, that has just come from the stove into the cold room, and cools. */
export function custardFromTheStove(house: KeptHouse): Floor {
  return keptHouse(house).bringTo('Cu1', 'chill');
}

/** Puts a workpiece somewhere else. */
export function move(floor: Floor, tag: string, placeId: string): Floor {
  floor.ok({ type: 'moveWorkpiece', workpieceId: floor.id(tag), placeId });
  return floor;
}

/** Says what was read of the food itself. */
export function readFood(floor: Floor, tag: string, celsius: number): Floor {
  floor.ok({ type: 'readTemperature', workpieceId: floor.id(tag), where: 'filling', celsius, despite: ['wildReading'] });
  return floor;
}
