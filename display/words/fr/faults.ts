import type { FaultFacts } from '../../../shared/documents/fault-facts.ts';
import { bookFaultWords } from './book-faults.ts';

/** What is wrong with a kitchen, a house or the book, for the one who edits it. */
export function faultWords(facts: FaultFacts): string {
  switch (facts.code) {
    case 'idTwice':
      return `«\u00a0${facts.id}\u00a0» figure deux fois`;
    case 'idElsewhere':
      return `«\u00a0${facts.id}\u00a0» figure déjà à ${facts.path}\u202f; étages et places ont chacun leur clé dans toute la boulangerie`;
    case 'stationUnknown':
      return `le poste «\u00a0${facts.id}\u00a0» n’existe pas`;
    case 'mixerUnknown':
      return `le pétrin «\u00a0${facts.id}\u00a0» n’existe pas`;
    case 'leastOverMost':
      return 'la quantité minimale dépasse la maximale';
    case 'stillNeeded':
      return `${facts.name} sert encore\u00a0: ${facts.by.join(', ')}`;
    case 'vesselsHeld':
      return `${facts.name === null ? '' : `${facts.name}\u00a0: `}${facts.heldCount} sont occupés`;
    case 'zoneUnknown':
      return `le fuseau horaire «\u00a0${facts.zone}\u00a0» n’existe pas\u202f; les fuseaux se nomment comme Europe/Paris`;
    case 'hoursEmpty':
      return `de ${facts.at} à ${facts.at}, il n’y a pas de temps\u202f; une journée entière se fait en deux équipes`;
    case 'cleaningTooLong':
      return `il faut ${facts.minutes} min, et il y en a ${facts.windowMin}`;
    default:
      return bookFaultWords(facts);
  }
}
