import type { FaultFacts } from '../../../shared/documents/fault-facts.ts';
import { bookFaultWords } from './book-faults.ts';

/** What is wrong with a kitchen, a house or the book, for the one who edits it. */
export function faultWords(facts: FaultFacts): string {
  switch (facts.code) {
    case 'idTwice':
      return `„${facts.id}“ kommt zweimal vor`;
    case 'idElsewhere':
      return `„${facts.id}“ steht schon bei ${facts.path}; jeder Herd und jeder Platz hat im ganzen Betrieb seinen eigenen Schlüssel`;
    case 'stationUnknown':
      return `den Posten „${facts.id}“ gibt es nicht`;
    case 'mixerUnknown':
      return `den Kneter „${facts.id}“ gibt es nicht`;
    case 'leastOverMost':
      return 'die kleinste Menge ist größer als die größte';
    case 'stillNeeded':
      return `${facts.name} wird noch gebraucht: ${facts.by.join(', ')}`;
    case 'vesselsHeld':
      return `${facts.name === null ? '' : `${facts.name}: `}${facts.heldCount} davon sind belegt`;
    case 'zoneUnknown':
      return `die Zeitzone „${facts.zone}“ gibt es nicht; Zeitzonen heißen wie Europe/Berlin`;
    case 'hoursEmpty':
      return `von ${facts.at} bis ${facts.at} ist keine Zeit; ein ganzer Tag sind zwei Schichten`;
    case 'cleaningTooLong':
      return `sie dauert ${facts.minutes} min, dafür sind ${facts.windowMin} min da`;
    default:
      return bookFaultWords(facts);
  }
}
