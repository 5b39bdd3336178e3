// First, as in the pages: before any schema is made.
import '../../../display/parts/no-eval.ts';
import '../../../display/formulas/book-in-out.ts';
import '../../../display/formulas/book-list.ts';
import '../../../display/formulas/size-panel.ts';
import '../../../display/formulas/version-compare.ts';
import type { DraftWantedEvent, PlanWantedEvent } from '../../../display/formulas/book-events.ts';
import type { EditorContext } from '../../../display/formulas/editor-context.ts';
import type { Formula } from '../../../shared/documents/formula.ts';

/** What every part needs beside its own properties; the formulas that a page would have loaded. */
export interface BookScene {
  readonly context: Omit<EditorContext, 'formulaOf'>;
  readonly formulas: readonly Formula[];
}

/** What a test may do to the page: show a part, and see what it asked for. */
export interface BookHarness {
  /** How long the part took from its making until it was drawn, in milliseconds. */
  show(tag: string, properties: Readonly<Record<string, unknown>>, scene: BookScene | null): Promise<number>;
  readonly asked: unknown[];
  /** How often the browser was told to print. */
  printed: number;
}

declare global {
  interface Window {
    bookHarness: BookHarness;
  }
}

const main = document.querySelector('main');
if (main === null) throw new Error('the page has no main');
const place = main;
const asked: unknown[] = [];

const NAMES = [
  'formula-wanted',
  'new-formula-wanted',
  'duplicate-wanted',
  'archive-wanted',
  'import-wanted',
  'book-changed',
  'versions-wanted',
] as const;
for (const name of NAMES) {
  place.addEventListener(name, (event) => {
    const said = Object.entries(event).filter(([key]) => key !== 'isTrusted');
    asked.push({ name, ...Object.fromEntries(said) });
  });
}
place.addEventListener('draft-wanted', ({ formula, newIngredients, product }: DraftWantedEvent) =>
  asked.push({ name: 'draft-wanted', formula, newIngredients, product }),
);
place.addEventListener('plan-wanted', ({ command }: PlanWantedEvent) => asked.push({ name: 'plan-wanted', command }));

/** Until what was rendered is on the screen: the frame after the next one has begun. */
function drawn(): Promise<void> {
  return new Promise((resolve) => {
    requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
  });
}

window.bookHarness = {
  asked,
  printed: 0,
  async show(tag, properties, scene) {
    place.querySelectorAll(':scope > :not(h1)').forEach((element) => element.remove());
    const context =
      scene === null
        ? {}
        : { context: { ...scene.context, formulaOf: (id: string) => scene.formulas.find((formula) => formula.id === id) ?? null } };
    const fromMs = performance.now();
    place.append(Object.assign(document.createElement(tag), context, properties));
    await drawn();
    return performance.now() - fromMs;
  },
};
globalThis.print = () => {
  window.bookHarness.printed += 1;
};
