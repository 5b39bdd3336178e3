import '../../../display/parts/no-eval.ts';
import type { FloorLink, FloorView } from '../../../display/link/floor-link.ts';
import { keepChoices } from '../../../display/parts/keep-choices.ts';
import { holdStation } from '../../../display/station/hold-station.ts';
import '../../../display/station/station-page.ts';
import type { Lit } from '../../../display/station/stay-lit.ts';
import { languageOfPage } from '../../../display/words/page-language.ts';
import type { ClientCommand } from '../../../shared/floor/commands.ts';

interface StationHarness {
  /** Draws a floor at a station as it stands at an instant. */
  show(view: FloorView, nowMs: number, stationId: string | null, lit: Lit): Promise<void>;
  /** What the page has said so far. */
  readonly sent: ClientCommand[];
  readonly introduced: { name: string | null; stationId: string | null }[];
}

declare global {
  interface Window {
    stationHarness: StationHarness;
  }
}

const page = document.querySelector('station-page');
if (page === null) throw new Error('the page has no station-page');
const shownPage = page;
page.language = languageOfPage();
keepChoices(page, (look) => {
  shownPage.look = look;
});

const listeners = new Set<() => void>();
const sent: ClientCommand[] = [];
const introduced: { name: string | null; stationId: string | null }[] = [];
let view: FloorView | null = null;
let nowMs = 0;

window.stationHarness = {
  sent,
  introduced,
  show: async (nextView, nextMs, stationId, lit) => {
    const isFirst = view === null;
    view = nextView;
    nowMs = nextMs;
    shownPage.stationId = stationId;
    shownPage.lit = lit;
    if (isFirst)
      holdStation(
        shownPage,
        linkTo(nextView),
        () => performance.now(),
        () => undefined,
      );
    for (const listener of listeners) listener();
    await shownPage.updateComplete;
  },
};

/** A floor that stands still: it says what the test says, and keeps what the page sends. */
function linkTo(first: FloorView): FloorLink {
  return {
    get view() {
      return view ?? first;
    },
    nowMs: () => nowMs,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onSound: () => () => undefined,
    send: (command) => {
      sent.push(command);
      return '';
    },
    sounded: () => undefined,
    setSound: () => undefined,
    introduce: (name, stationId) => void introduced.push({ name, stationId }),
    close: () => undefined,
  };
}
