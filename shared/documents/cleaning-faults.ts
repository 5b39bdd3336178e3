import { checkLasting, minutesBetween } from './hours-faults.ts';
import { idSet, uniqueIds, type Fault } from './kitchen-faults.ts';
import type { Cleaning, Kitchen } from './kitchen.ts';

/** Cleanings of things, by hands, that are not there, and those that take longer than they may. */
export function checkCleanings(kitchen: Kitchen, fault: Fault): void {
  const { cleanings = [] } = kitchen;
  const stations = idSet(kitchen.stations);
  uniqueIds('kitchen.cleanings', cleanings, fault);
  cleanings.forEach((cleaning, index) => {
    const path = `kitchen.cleanings[${index}]`;
    const { resource, station, minutes } = cleaning;
    if (!idsToClean(kitchen, resource.kind).has(resource.id)) fault(`${path}.resource`, { code: 'claimUnknown', ...resource });
    if (station !== undefined && !stations.has(station)) fault(`${path}.station`, { code: 'stationUnknown', id: station });
    checkLasting(cleaning, path, fault);
    const windowMin = minutesBetween(cleaning);
    if (windowMin > 0 && minutes > windowMin) fault(`${path}.minutes`, { code: 'cleaningTooLong', minutes, windowMin });
  });
}

function idsToClean(kitchen: Kitchen, kind: Cleaning['resource']['kind']): ReadonlySet<string> {
  switch (kind) {
    case 'mixer':
      return idSet(kitchen.mixers);
    case 'deck':
      return idSet(kitchen.ovens.flatMap((oven) => oven.decks));
    case 'bench':
      return idSet(kitchen.restPlaces.filter((place) => place.kind === 'bench'));
  }
}
