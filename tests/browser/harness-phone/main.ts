// First, as in the pages: before any schema is made.
import '../../../display/parts/no-eval.ts';
import type { FloorLink, FloorView } from '../../../display/link/floor-link.ts';
import { holdPhone } from '../../../display/phone/hold-phone.ts';
import '../../../display/phone/phone-page.ts';
import { keepChoices } from '../../../display/parts/keep-choices.ts';
import { languageOfPage } from '../../../display/words/page-language.ts';
import type { ClientCommand } from '../../../shared/floor/commands.ts';
import { IN_HEALTH } from '../../../display/link/floor-link.ts';
import { NOBODY_JOINS } from '../../../shared/wire/joining.ts';

/** What a test may do to the page: say what the floor is, and see what the thumb said. */
export interface PhoneHarness {
  show(view: FloorView, nowMs: number): Promise<void>;
  readonly sent: ClientCommand[];
  readonly introduced: { name: string | null; stationId: string | null }[];
}

declare global {
  interface Window {
    phoneHarness: PhoneHarness;
  }
}

const page = document.querySelector('phone-page');
if (page === null) throw new Error('the page has no phone-page');
const shownPage = page;

shownPage.language = languageOfPage();
keepChoices(shownPage, (look) => {
  shownPage.look = look;
});

const listeners = new Set<() => void>();
const sent: ClientCommand[] = [];
const introduced: { name: string | null; stationId: string | null }[] = [];
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
  introduce: (name, stationId) => void introduced.push({ name, stationId }),
  close: () => undefined,
};

holdPhone(shownPage, link, () => performance.now());
window.phoneHarness = {
  sent,
  introduced,
  show: async (nextView, nextMs) => {
    view = nextView;
    nowMs = nextMs;
    for (const listener of listeners) listener();
    await shownPage.updateComplete;
  },
};
