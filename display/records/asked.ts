import { html, type ReactiveController, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { z } from 'zod';
import type { QuestionName } from '../../shared/records/questions.ts';
import { RECORDS } from '../words/records.ts';
import type { Asked, AskedWith } from './records-store.ts';
import type { RecordsTools } from './records-tools.ts';

/** Records that are only being made are asked again after so long. */
const ASK_AGAIN_MS = 700;

/** Keeps the answer to one question for an element: asks when what it is asked with changes, and again while the records are being made. */
export class AskedController<Value> implements ReactiveController {
  shown: Asked<Value> = { phase: 'asking' };
  readonly #host: ReactiveControllerHost;
  readonly #name: QuestionName;
  readonly #schema: z.ZodType<Value>;
  #key = '';
  #round = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(host: ReactiveControllerHost, name: QuestionName, schema: z.ZodType<Value>) {
    this.#host = host;
    this.#name = name;
    this.#schema = schema;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.#round += 1;
    clearTimeout(this.#timer);
  }

  /** Asks, unless it was asked the same last. Call it in `willUpdate`. */
  ask(tools: RecordsTools, asked: AskedWith): void {
    const key = JSON.stringify(asked);
    if (key === this.#key) return;
    this.#key = key;
    this.shown = { phase: 'asking' };
    this.#askNow(tools, asked);
  }

  /** Asks again what was asked last: something has changed. */
  again(tools: RecordsTools, asked: AskedWith): void {
    this.#key = JSON.stringify(asked);
    this.#askNow(tools, asked);
  }

  #askNow(tools: RecordsTools, asked: AskedWith): void {
    this.#round += 1;
    const round = this.#round;
    clearTimeout(this.#timer);
    void tools.ask(this.#name, asked, this.#schema).then((shown) => {
      // Something else has been asked since.
      if (round !== this.#round) return;
      this.shown = shown;
      this.#host.requestUpdate();
      const isBeingMade = shown.phase === 'asking' || (shown.phase === 'here' && shown.progress.sequence < shown.progress.of);
      if (isBeingMade) this.#timer = setTimeout(() => this.#askNow(tools, asked), ASK_AGAIN_MS);
    });
  }
}

/** What stands where an answer is to stand: the answer, with how far the records are while they are being made; or why there is none. */
export function askedView<Value>(shown: Asked<Value>, view: (answer: Value) => TemplateResult): TemplateResult {
  if (shown.phase !== 'here') {
    if (shown.phase === 'forbidden')
      return html`<p role="status">${RECORDS.forbidden} <a href="/join?to=%2Frecords">${RECORDS.toJoin}</a></p>`;
    return html`<p role="status">${RECORDS[shown.phase]}</p>`;
  }
  const { sequence, of } = shown.progress;
  if (sequence >= of) return view(shown.answer);
  return html`<p role="status">
      <label>${RECORDS.beingMade(sequence, of)} <progress max=${of} value=${sequence}></progress></label>
    </p>
    ${view(shown.answer)}`;
}
