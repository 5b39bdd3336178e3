import { join } from 'node:path';
import type { FloorState } from '../../shared/floor/state.ts';
import { assert } from '../../shared/result.ts';
import { startNode, startServer, type Child } from './child.ts';
import { HEARTBEAT_MS } from '../../shared/wire/protocol.ts';
import { openPages, Page } from './pages.ts';
import { FLOOR_SERVER, freePort, HARBOUR } from './places.ts';

/** A server with its pages: the real one, or the floor. */
export interface TapSide {
  readonly pages: readonly Page[];
  /** Has a page send a tap that makes one event. */
  tap(page: Page): void;
  end(): Promise<void>;
}

/** The server in a process of its own with the demo day, and so many phones on it. */
export async function realSide(folder: string, pageCount: number): Promise<TapSide> {
  const port = await freePort();
  const child = await startServer(join(folder, 'data'), port, ['--bakehouse', HARBOUR]);
  const pages = await openPages(pageCount, () => Page.live(port, 'phone'));
  const { state } = (await (await fetch(`http://127.0.0.1:${port}/api/state`)).json()) as { state: FloorState };
  const planned = Object.values(state.workpieces).filter((workpiece) => Object.keys(workpiece.steps).length === 0);
  // As pages do: who says nothing for long is taken for gone.
  const heartbeat = setInterval(() => pages.forEach((page) => page.ping()), HEARTBEAT_MS);
  let count = 0;
  return {
    pages,
    // A hold makes one event and leaves the state as large as it was, however often it is given.
    tap: (page) => {
      const workpiece = planned[(count += 1) % planned.length];
      assert(workpiece !== undefined, 'the demo day has batches');
      page.tap({ type: 'holdWorkpiece', workpieceId: workpiece.id, stepId: 'weigh', minutes: 20 });
    },
    end: () => {
      clearInterval(heartbeat);
      return ended(child, pages);
    },
  };
}

/** The floor in a process of its own: the same bytes to as many sockets. */
export async function floorSide(folder: string, real: TapSide): Promise<TapSide> {
  const like = real.pages[0];
  assert(like !== undefined && like.lastEvents !== '' && like.lastOutcome !== '', 'the real side has answered a tap');
  const port = await freePort();
  const child = startNode([FLOOR_SERVER, String(port), join(folder, 'floor.db'), like.lastEvents, like.lastOutcome]);
  await listening(port);
  const pages = await openPages(real.pages.length, () => Page.bare(port));
  const tap = { type: 'holdWorkpiece', workpieceId: 'A'.repeat(22), stepId: 'weigh', minutes: 20 } as const;
  return { pages, tap: (page) => page.tap(tap), end: () => ended(child, pages) };
}

/** Taps once and waits until every page has its events and the tapper its outcome: ms until the last had them. */
export function tapToLast(side: TapSide, tapper: Page): Promise<number> {
  return new Promise((resolve) => {
    let missing = side.pages.length;
    let hasOutcome = false;
    let lastMs = 0;
    const startMs = performance.now();
    const settle = (): void => {
      if (missing === 0 && hasOutcome) resolve(lastMs - startMs);
    };
    for (const page of side.pages) {
      page.onEvents = () => {
        page.onEvents = () => {};
        missing -= 1;
        if (missing === 0) lastMs = performance.now();
        settle();
      };
    }
    tapper.onOutcome = (text) => {
      assert(text.includes('"ok":true'), `a tap was refused: ${text}`);
      hasOutcome = true;
      settle();
    };
    side.tap(tapper);
  });
}

async function listening(port: number): Promise<void> {
  for (;;) {
    try {
      const page = await Page.bare(port);
      page.end();
      return;
    } catch {
      // Not there yet.
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }
}

async function ended(child: Child, pages: readonly Page[]): Promise<void> {
  for (const page of pages) page.end();
  await child.end('SIGKILL');
}
