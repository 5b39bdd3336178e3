import { checkCleanings } from './cleaning-faults.ts';
import { faultMessage, type FaultFacts } from './fault-facts.ts';
import { checkStationHours } from './hours-faults.ts';
import type { Kitchen } from './kitchen.ts';

/** One fault of a file or of a document: where it stands, and what would be right. */
export interface FileFault {
  /** Path in the file, such as `formulas[2].method[4].minutes.latest`. */
  readonly path: string;
  /** In English. */
  readonly message: string;
  /** What screens say it from in other languages; missing where only files can have the fault. */
  readonly facts?: FaultFacts | undefined;
}

/** Takes note of one fault: in facts, or in English where no screen ever tells it. */
export type Fault = (path: string, what: FaultFacts | string) => void;

/** A fault at its path. */
export function faultAt(path: string, what: FaultFacts | string): FileFault {
  return typeof what === 'string' ? { path, message: what } : { path, message: faultMessage(what), facts: what };
}

/** The ids of things that have them. */
export function idSet(items: readonly { readonly id: string }[]): ReadonlySet<string> {
  return new Set(items.map((item) => item.id));
}

/** Notes every id that stands twice in a list. */
export function uniqueIds(path: string, items: readonly { readonly id: string }[], fault: Fault): void {
  const seen = new Set<string>();
  items.forEach((item, index) => {
    if (seen.has(item.id)) fault(`${path}[${index}].id`, { code: 'idTwice', id: item.id });
    seen.add(item.id);
  });
}

/**
 * What is wrong with a kitchen whose shape is right: ids used twice, stations and mixers that are pointed at and are not
 * there, loads that no mixer can have, hours that last no time, cleanings longer than they may be. Paths begin with
 * `kitchen`. Empty where nothing is.
 */
export function kitchenFaults(kitchen: Kitchen): FileFault[] {
  const faults: FileFault[] = [];
  const fault: Fault = (path, what) => {
    faults.push(faultAt(path, what));
  };
  uniqueIds('kitchen.stations', kitchen.stations, fault);
  uniqueIds('kitchen.mixers', kitchen.mixers, fault);
  uniqueIds('kitchen.bowls', kitchen.bowls, fault);
  uniqueIds('kitchen.restPlaces', kitchen.restPlaces, fault);
  uniqueIds('kitchen.vessels', kitchen.vessels, fault);
  uniqueIds('kitchen.ovens', kitchen.ovens, fault);
  checkMixers(kitchen, fault);
  checkOvens(kitchen, fault);
  checkStationHours(kitchen, fault);
  checkCleanings(kitchen, fault);
  return faults;
}

function checkMixers(kitchen: Kitchen, fault: Fault): void {
  const stations = idSet(kitchen.stations);
  kitchen.mixers.forEach((mixer, index) => {
    if (!stations.has(mixer.station)) fault(`kitchen.mixers[${index}].station`, { code: 'stationUnknown', id: mixer.station });
    if (mixer.leastG > mixer.mostG) fault(`kitchen.mixers[${index}].leastG`, { code: 'leastOverMost' });
  });
  const mixers = idSet(kitchen.mixers);
  kitchen.bowls.forEach((bowl, index) => {
    bowl.fits.forEach((mixer, fitIndex) => {
      if (!mixers.has(mixer)) fault(`kitchen.bowls[${index}].fits[${fitIndex}]`, { code: 'mixerUnknown', id: mixer });
    });
  });
}

function checkOvens(kitchen: Kitchen, fault: Fault): void {
  const seen = new Map<string, string>();
  kitchen.ovens.forEach((oven, ovenIndex) => {
    oven.decks.forEach((deck, deckIndex) => {
      const path = `kitchen.ovens[${ovenIndex}].decks[${deckIndex}]`;
      for (const [id, at] of [
        [deck.id, `${path}.id`] as const,
        ...deck.slots.map((slot, index) => [slot.id, `${path}.slots[${index}].id`] as const),
      ]) {
        const other = seen.get(id);
        if (other !== undefined) fault(at, { code: 'idElsewhere', id, path: other });
        seen.set(id, at);
      }
    });
  });
}
