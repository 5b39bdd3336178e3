import type { AccessRole, Joining } from '../../shared/wire/joining.ts';
import type { Timers } from '../floor/alarm-clock.ts';
import { freshTicket, isSameSecret, plainCode, sixDigits, type RandomBytes } from './codes.ts';

/** Joining closes by itself after so long. */
export const OPEN_MS = 10 * 60_000;
/** The wall's picture changes so often; each stands for two such spans, so that who has just scanned it has time to type. */
export const NEW_TICKET_MS = 60_000;
const TICKETS_VALID = 2;
/** Devices that one opening lets in: a house's, and not a flood of them. */
export const MAX_ADMITTED = 50;

interface Opening {
  readonly role: AccessRole;
  readonly code: string;
  readonly untilMonotonicMs: number;
  readonly untilMs: number;
  /** The newest first; used ones are gone. */
  tickets: string[];
  admitted: number;
}

export interface JoiningOptions {
  readonly clock: { monotonicMs(): number; realMs(): number };
  readonly timers: Timers;
  readonly randomBytes: RandomBytes;
  /** What walls show has changed. */
  readonly onChange: () => void;
}

/** Letting devices in: while it is open the wall shows six digits and a picture whose ticket is good for one device and two minutes. */
export class JoiningDesk {
  readonly #options: JoiningOptions;
  #opening: Opening | null = null;
  #timer: { cancel(): void } | null = null;

  constructor(options: JoiningOptions) {
    this.#options = options;
  }

  /** Opens joining anew, with a new code, for devices that are to have that role. */
  open(role: AccessRole): void {
    const { clock, randomBytes } = this.#options;
    this.#opening = {
      role,
      code: sixDigits(randomBytes),
      untilMonotonicMs: clock.monotonicMs() + OPEN_MS,
      untilMs: Math.round(clock.realMs() + OPEN_MS),
      tickets: [freshTicket(randomBytes)],
      admitted: 0,
    };
    this.#wait();
    this.#options.onChange();
  }

  close(): void {
    this.#timer?.cancel();
    this.#timer = null;
    if (this.#opening === null) return;
    this.#opening = null;
    this.#options.onChange();
  }

  /** What walls show; null while joining is closed. */
  get shown(): Joining | null {
    const opening = this.#open();
    const ticket = opening?.tickets[0];
    if (opening === null || ticket === undefined) return null;
    return { role: opening.role, code: opening.code, ticket, untilMs: opening.untilMs };
  }

  /**
   * The role that a code and a ticket give. With the digits alone a screen without a camera is let in to look, no more; with
   * the ticket of the picture as well, to what joining was opened for. Nothing is used up by asking.
   */
  roleFor(code: string, ticket: string | null): AccessRole | 'wrong' | 'closed' {
    const opening = this.#open();
    if (opening === null) return 'closed';
    if (!isSameSecret(plainCode(code), opening.code)) return 'wrong';
    if (ticket === null) return 'look';
    return opening.tickets.some((valid) => isSameSecret(valid, ticket)) ? opening.role : 'wrong';
  }

  /** Somebody was let in: the ticket is used up, and the next picture drawn; after many, joining closes. */
  use(ticket: string | null): void {
    const opening = this.#opening;
    if (opening === null) return;
    opening.admitted += 1;
    if (opening.admitted >= MAX_ADMITTED) {
      this.close();
      return;
    }
    if (ticket === null) return;
    const left = opening.tickets.filter((other) => !isSameSecret(other, ticket));
    opening.tickets = left.length === 0 || left[0] !== opening.tickets[0] ? [freshTicket(this.#options.randomBytes), ...left] : left;
    this.#options.onChange();
  }

  #open(): Opening | null {
    const opening = this.#opening;
    return opening !== null && this.#options.clock.monotonicMs() < opening.untilMonotonicMs ? opening : null;
  }

  #wait(): void {
    this.#timer?.cancel();
    this.#timer = this.#options.timers.set(() => this.#next(), NEW_TICKET_MS);
  }

  #next(): void {
    const opening = this.#open();
    if (opening === null) {
      this.close();
      return;
    }
    opening.tickets = [freshTicket(this.#options.randomBytes), ...opening.tickets].slice(0, TICKETS_VALID);
    this.#wait();
    this.#options.onChange();
  }
}
