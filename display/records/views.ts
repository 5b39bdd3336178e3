import { html, type TemplateResult } from 'lit';
import type { NamesAnswer } from '../../shared/records/answers.ts';
import { RECORDS } from '../words/records.ts';
import type { RecordsTools } from './records-tools.ts';

/** What a view is shown with. */
export interface ViewGiven {
  readonly tools: RecordsTools;
  readonly names: NamesAnswer;
  /** The address of the page, whatever it says beside `view`. */
  readonly query: URLSearchParams;
}

/** A view of the records: its name in the menu, how it is loaded, and how it is shown once it is. */
interface RecordsView {
  readonly title: () => string;
  readonly isInMenu: boolean;
  readonly load: () => Promise<unknown>;
  readonly show: (given: ViewGiven) => TemplateResult;
}

/** Every view by its name in the address, in the order of the menu. */
export const VIEWS = {
  batches: {
    title: () => RECORDS.menu.batches,
    isInMenu: true,
    load: () => import('./batches-view.ts'),
    show: ({ tools, names, query }) => html`<batches-view .tools=${tools} .names=${names} .query=${query}></batches-view>`,
  },
  batch: {
    title: () => RECORDS.menu.batches,
    isInMenu: false,
    load: () => import('./batch-view.ts'),
    show: ({ tools, names, query }) => html`<batch-view .tools=${tools} .names=${names} .query=${query}></batch-view>`,
  },
  days: {
    title: () => RECORDS.menu.days,
    isInMenu: true,
    load: () => import('./day-view.ts'),
    show: ({ tools, names, query }) => html`<day-view .tools=${tools} .names=${names} .query=${query}></day-view>`,
  },
  weeks: {
    title: () => RECORDS.menu.weeks,
    isInMenu: true,
    load: () => import('./weeks-view.ts'),
    show: ({ tools, names, query }) => html`<weeks-view .tools=${tools} .names=${names} .query=${query}></weeks-view>`,
  },
  lessons: {
    title: () => RECORDS.menu.lessons,
    isInMenu: true,
    load: () => import('./lessons-view.ts'),
    show: ({ tools, names, query }) => html`<lessons-view .tools=${tools} .names=${names} .query=${query}></lessons-view>`,
  },
  calls: {
    title: () => RECORDS.menu.calls,
    isInMenu: true,
    load: () => import('./calls-view.ts'),
    show: ({ tools, names, query }) => html`<calls-view .tools=${tools} .names=${names} .query=${query}></calls-view>`,
  },
  trace: {
    title: () => RECORDS.menu.trace,
    isInMenu: true,
    load: () => import('./trace-view.ts'),
    show: ({ tools, names, query }) => html`<trace-view .tools=${tools} .names=${names} .query=${query}></trace-view>`,
  },
  out: {
    title: () => RECORDS.menu.out,
    isInMenu: true,
    load: () => import('./out-view.ts'),
    show: ({ query }) => html`<out-view .query=${query}></out-view>`,
  },
} as const satisfies Readonly<Record<string, RecordsView>>;

export type ViewName = keyof typeof VIEWS;

/** The view that an address asks for; the list of batches where it asks for none that there is. */
export function viewNamed(name: string | null): ViewName {
  return name !== null && Object.hasOwn(VIEWS, name) ? (name as ViewName) : 'batches';
}
