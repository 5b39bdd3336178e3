// First, as in the pages: before any schema is made.
import '../../../display/parts/no-eval.ts';
import type { FloorLink, FloorView } from '../../../display/link/floor-link.ts';
import { keepChoices } from '../../../display/parts/keep-choices.ts';
import { holdWeigh } from '../../../display/weigh/hold-weigh.ts';
import '../../../display/weigh/weigh-page.ts';
import type { ClientCommand } from '../../../shared/floor/commands.ts';
import { IN_HEALTH } from '../../../display/link/floor-link.ts';
import { NOBODY_JOINS } from '../../../shared/wire/joining.ts';

/** What a test may do to the page: say what the floor is, and see what the thumb said. */
export interface WeighHarness {
  show(view: FloorView, nowMs: number): Promise<void>;
  readonly sent: ClientCommand[];
}

declare global {
  interface Window {
    weighHarness: WeighHarness;
  }
}

const page = document.querySelector('weigh-page');
if (page === null) throw new Error('the page has no weigh-page');
const shownPage = page;
keepChoices(shownPage, () => undefined);

const listeners = new Set<() => void>();
const sent: ClientCommand[] = [];
let view: FloorView = {
  state: null,
  sequence: 0,
  connection: { phase: 'connecting' },
  device: null,
  devices: [],
  addresses: [],
  pace: 1,
  kept: [],
  lastAnswer: null,
  undoable: null,
  refusedHere: null,
  soundingDeviceId: null,
  soundingPage: null,
  planNews: 0,
  joining: NOBODY_JOINS,
  health: IN_HEALTH,
};
let nowMs = 0;

/** A floor that stands still: it says what the test says, and keeps what the page sends. */
const link: FloorLink = {
  get view() {
    return view;
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
  introduce: () => undefined,
  close: () => undefined,
};

holdWeigh(shownPage, link, () => performance.now());
window.weighHarness = {
  sent,
  show: async (nextView, nextMs) => {
    view = nextView;
    nowMs = nextMs;
    for (const listener of listeners) listener();
    await shownPage.updateComplete;
  },
};
