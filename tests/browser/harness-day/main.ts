// First, as in the pages: before any schema is made.
import '../../../display/parts/no-eval.ts';
import '../../../display/day/day-page.ts';
import { PlanStore } from '../../../display/day/plan-store.ts';
import { BookStore } from '../../../display/formulas/book-store.ts';
import type { FloorView } from '../../../display/link/floor-link.ts';
import { newId } from '../../../display/link/random-id.ts';
import { showLook, type Look } from '../../../display/parts/look.ts';
import { languageOfPage } from '../../../display/words/page-language.ts';

/** What a server would answer; of several, one after the other, and the last again and again. */
export interface StagedAnswer {
  readonly status: number;
  readonly body: unknown;
}

/** A page of a day as a test puts it there. */
export interface StagedDay {
  readonly view: FloorView;
  readonly nowMs: number;
  readonly search?: string;
  readonly look?: Look;
  /** By method and path: `GET /api/book`. What is not named fails, as a server that is away does. */
  readonly answers: Readonly<Record<string, readonly StagedAnswer[]>>;
}

/** What the page asked of its server. */
export interface AskedRequest {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
}

export interface DayHarness {
  show(staged: StagedDay): Promise<void>;
  /** Another view of the same page. */
  look(view: FloorView): Promise<void>;
  /** Lets the page ask again for what runs. */
  askAgain(): Promise<void>;
  readonly asked: AskedRequest[];
  readonly wentTo: string[];
}

declare global {
  interface Window {
    dayHarness: DayHarness;
  }
}

const asked: AskedRequest[] = [];
const wentTo: string[] = [];
let answers = new Map<string, StagedAnswer[]>();
let waiting: (() => void)[] = [];
let ids = 0;

const answering: typeof fetch = (input, init) => {
  const path = typeof input === 'string' ? input : input instanceof URL ? input.pathname : input.url;
  const method = init?.method ?? 'GET';
  const body = typeof init?.body === 'string' ? (JSON.parse(init.body) as unknown) : null;
  asked.push({ method, path, body });
  const staged = answers.get(`${method} ${path}`);
  const answer = staged !== undefined && staged.length > 1 ? staged.shift() : staged?.[0];
  if (answer === undefined) return Promise.reject(new TypeError('nobody answers'));
  return Promise.resolve(new Response(answer.body === null ? null : JSON.stringify(answer.body), { status: answer.status }));
};

/** Until what was rendered is on the screen: the frame after the next one has begun. */
function drawn(): Promise<void> {
  return new Promise((resolve) => {
    requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
  });
}

window.dayHarness = {
  asked,
  wentTo,
  async show({ view, nowMs, search = '', look = 'day', answers: given }) {
    document.querySelector('day-page')?.remove();
    showLook(look);
    asked.length = 0;
    wentTo.length = 0;
    waiting = [];
    answers = new Map(Object.entries(given).map(([key, list]) => [key, [...list]]));
    const page = Object.assign(document.createElement('day-page'), {
      tools: {
        book: new BookStore(answering),
        plan: new PlanStore(answering),
        freshId: () => newId((count) => new Uint8Array(count).fill((ids += 1))),
        wait: () =>
          new Promise<void>((resolve) => {
            waiting.push(resolve);
          }),
        goTo: (to: string) => {
          wentTo.push(to);
        },
      },
      language: languageOfPage(),
      search,
      clock: { nowMs: () => nowMs, pace: () => 1 },
      view,
    });
    document.body.append(page);
    await drawn();
  },
  async look(view) {
    const page = document.querySelector('day-page');
    if (page !== null) page.view = view;
    await drawn();
  },
  async askAgain() {
    for (const go of waiting.splice(0)) go();
    await drawn();
  },
};
