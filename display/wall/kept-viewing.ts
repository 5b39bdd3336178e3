import { kept } from '../parts/kept.ts';
import { readViewing, type Viewing } from './settings.ts';

const KEY = 'ovenward.viewing';

/** The viewing settings that hold on this screen, by the address' query; kept for the next time the page opens. */
export function keepViewing(query: string): Viewing {
  const { viewing } = readViewing(new URLSearchParams(query), kept.read(KEY));
  kept.write(KEY, JSON.stringify(viewing));
  return viewing;
}
