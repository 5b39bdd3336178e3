import type { Page } from 'playwright-core';
import type { RecordedEvent } from '../../../shared/floor/events.ts';
import type { FloorState, Workpiece } from '../../../shared/floor/state.ts';
import type { RealServer } from './real-server.ts';

const LOOK_EVERY_MS = 25;
/** So long a tap may take to be seen, before it is taken for one that the guard let go. */
const LOOKS_FOR_A_TAP = 60;

/** The floor as the server has it. */
export async function stateOf({ port }: Pick<RealServer, 'port'>): Promise<FloorState> {
  const answer = (await (await fetch(`http://127.0.0.1:${port}/api/state`)).json()) as { state: FloorState };
  return answer.state;
}

/** Everything that the journal has, in its order. */
export async function eventsOf({ port }: Pick<RealServer, 'port'>): Promise<readonly RecordedEvent[]> {
  const all: RecordedEvent[] = [];
  for (;;) {
    const answer = (await (await fetch(`http://127.0.0.1:${port}/api/events?after=${all.length}`)).json()) as { events: RecordedEvent[] };
    all.push(...answer.events);
    if (answer.events.length === 0) return all;
  }
}

/** A workpiece of the server's floor by its tag. Throws where there is none. */
export async function workpieceOf(server: Pick<RealServer, 'port'>, tag: string): Promise<Workpiece> {
  const found = Object.values((await stateOf(server)).workpieces).find((workpiece) => workpiece.tag === tag);
  if (found === undefined) throw new Error(`${tag} is not on the floor`);
  return found;
}

/** Polls a condition of another process until it holds; the suite's time limit is the only clock. */
export async function eventually(holds: () => Promise<boolean>): Promise<void> {
  await within(Number.POSITIVE_INFINITY, holds);
}

/** Presses a button as a person does: where the guard let a tap go because something had just moved, once more. */
export async function press(page: Page, name: string | RegExp, isThere: () => Promise<boolean>): Promise<void> {
  const button = page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }).first();
  do {
    // The guard takes two taps within 600 ms for one, and lets nothing through for 400 ms after something moved.
    await page.waitForTimeout(650);
    await button.click();
    await within(LOOKS_FOR_A_TAP, isThere);
  } while (!(await isThere()));
}

async function within(looks: number, holds: () => Promise<boolean>): Promise<void> {
  for (let look = 0; look < looks && !(await holds()); look += 1) await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
}
