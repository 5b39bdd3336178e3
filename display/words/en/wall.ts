import type { Role } from '../../../shared/floor/due.ts';
import type { EventOf } from '../../../shared/floor/events.ts';

/** Everything else that the wall says. */
export const WALL = {
  pageTitle: 'Wall',
  doughs: 'Doughs',
  ovens: 'Ovens',
  soundOn: 'sound on',
  soundWaiting: 'touch for sound',
  soundNone: 'no device sounds',
  soundPanel: 'touch to turn the sound on',
  soundPanelMore: 'or press any key',
  tooSmallTitle: 'This screen is too small to be read from there',
  tooSmallMore: 'Try a shorter distance: add ?metres=3 to the address.',
  noLink: 'NO LINK',
  loading: 'Reaching the kitchen…',
  emptyTitle: 'No dough on the floor',
  emptyMore: 'What is started on a phone shows here.',
  emptyPhone: 'Phones:',
  otherVersionTitle: 'This page is older than its kitchen',
  otherVersionMore: 'It loads again by itself. If this stays, load it by hand.',
  forbiddenTitle: 'This screen may not be here',
  forbiddenMore: 'Whoever looks after the kitchen’s server can let it in.',
  fullTitle: 'No place left for another screen',
  fullMore: 'Close one that is not needed; this one tries again.',
  free: 'free',
  deckOut: 'OUT',
  heard: 'heard',
  moreDecks: 'more decks',
} as const;

/** Unmistakable: this is not a real day. */
export function paceWords(pace: number): string {
  return `PACE ×${pace} · not a real day`;
}

/** Another device is the one that sounds. */
export function soundOnWords(deviceName: string): string {
  return `sound on ${deviceName}`;
}

/** Calls that have no row of their own. */
export function moreWords(count: number): string {
  return `+${count} more`;
}

export function freeSlotsWords(count: number): string {
  return `${count} free`;
}

export function heldWords(clock: string): string {
  return `held to ${clock}`;
}

export function piecesWords(done: number, of: number): string {
  return `${done} of ${of}`;
}

/** Why a deck cannot be used. */
export const BLOCKED: Readonly<Record<EventOf<'resourceBlocked'>['why'], string>> = {
  cleaning: 'cleaning',
  allergenChangeOver: 'change-over',
  outOfOrder: 'out of order',
};

const ANNOUNCED: Readonly<Record<Role, string>> = { running: '', call: 'Call', late: 'Late', lost: 'Being lost' };

/** Calls of one role as one sentence, for a screen reader. */
export function announcement(role: Role, calls: readonly string[]): string {
  return `${ANNOUNCED[role]}: ${calls.join(', ')}.`;
}
