import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { NAME_CHARACTERS } from '../../shared/documents/names.ts';
import type { AccessStatus } from '../../shared/wire/access.ts';
import { columnStyles } from '../desk/column-styles.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { JOINING } from '../words/joining.ts';
import type { JoinAnswer } from './join-store.ts';

/** Somebody wants to be let in. */
export class JoinWantedEvent extends Event {
  static readonly type = 'join-wanted';
  readonly code: string;
  readonly deviceName: string | null;

  constructor(code: string, deviceName: string | null) {
    super(JoinWantedEvent.type, { bubbles: true, composed: true });
    this.code = code;
    this.deviceName = deviceName;
  }
}

/** How the house stands to this browser: not known yet, not to be asked, or as it says. */
export type AccessShown = 'asking' | 'failed' | AccessStatus;

/** Where a browser is let in: the code of the wall or of the server's console, and what the device is to be called. */
@customElement('join-page')
export class JoinPage extends LitElement {
  static override styles = [
    deskStyles,
    columnStyles,
    plainButtonStyles,
    css`
      main {
        gap: var(--space-5);
        max-width: 34rem;
        padding: var(--space-6) var(--space-4);
      }
      form {
        display: grid;
        gap: var(--space-4);
      }
      label {
        display: grid;
        gap: var(--space-1);
        font-weight: var(--weight-word);
      }
      input {
        min-height: var(--target);
        padding: var(--space-2) var(--space-3);
        border: var(--hairline) solid var(--ink);
        border-radius: var(--radius);
        background: var(--paper);
        color: var(--ink);
        font: inherit;
        font-size: var(--type-figure);
      }
      input.name {
        font-size: var(--type-button);
      }
      button.plain {
        min-height: var(--target);
        font-size: var(--type-button);
      }
      a {
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) access: AccessShown = 'asking';
  /** The picture of a wall brought this browser here. */
  @property({ attribute: false }) isScanned = false;
  /** What it is to be let in as. */
  @property({ attribute: false }) as: 'wall' | 'phone' = 'phone';
  /** Where it goes on to. */
  @property({ attribute: false }) to = '/phone';
  /** What came of the last try; null before it, and while it is under way. */
  @property({ attribute: false }) answer: JoinAnswer | null = null;
  @property({ attribute: false }) isBusy = false;
  @state() private code = '';
  @state() private deviceName = '';
  @query('input') private codeField!: HTMLInputElement | null;

  protected override render(): TemplateResult {
    return html`<main>
      <h1>${JOINING.title}</h1>
      ${this.content()}
    </main>`;
  }

  /** The keyboard goes back to what has to be typed again. */
  protected override updated(changed: Map<PropertyKey, unknown>): void {
    if (changed.has('answer') && this.answer !== null && this.answer.kind !== 'joined') this.codeField?.select();
  }

  private content(): TemplateResult {
    const { access } = this;
    if (access === 'asking') return html`<p role="status">${JOINING.asking}</p>`;
    if (access === 'failed') return html`<p role="status">${JOINING.failed}</p>`;
    if (access.isClaimed && (!access.isJoiningOpen || (access.role !== null && !this.isScanned)))
      return html`<p role="status">${access.role === null ? JOINING.closed : JOINING.roles[access.role]}</p>
        ${access.role === null ? html`<p class="soft">${JOINING.closedMore}</p>` : html`<p><a href=${this.to}>${JOINING.goOn}</a></p>`}`;
    return this.form(access);
  }

  private form({ isClaimed }: AccessStatus): TemplateResult {
    return html`<form @submit=${(event: SubmitEvent) => this.submit(event)}>
      <p>${isClaimed ? JOINING.typeDigits : JOINING.typeConsole}</p>
      ${isClaimed && !this.isScanned && this.as === 'phone' ? html`<p class="soft">${JOINING.lookOnly}</p>` : nothing}
      <label
        >${JOINING.code}
        <input
          .value=${this.code}
          inputmode=${isClaimed ? 'numeric' : 'text'}
          autocomplete="one-time-code"
          autocapitalize="characters"
          spellcheck="false"
          required
          maxlength="40"
          aria-describedby="said"
          @input=${(event: InputEvent) => (this.code = valueOf(event))}
        />
      </label>
      <label
        >${JOINING.name}
        <input
          class="name"
          .value=${this.deviceName}
          maxlength=${NAME_CHARACTERS}
          autocomplete="off"
          placeholder=${this.as === 'wall' ? JOINING.wallExample : JOINING.phoneExample}
          @input=${(event: InputEvent) => (this.deviceName = valueOf(event))}
        />
      </label>
      <p id="said" class=${this.answer === null ? '' : 'fault'} role="alert">${this.answer === null ? nothing : saidOf(this.answer)}</p>
      <button class="plain filled" aria-disabled=${this.isBusy}>${this.isBusy ? JOINING.trying : JOINING.join}</button>
    </form>`;
  }

  private submit(event: SubmitEvent): void {
    event.preventDefault();
    const name = this.deviceName.trim();
    if (!this.isBusy && this.code.trim() !== '') this.dispatchEvent(new JoinWantedEvent(this.code.trim(), name === '' ? null : name));
  }
}

function saidOf(answer: JoinAnswer): string {
  switch (answer.kind) {
    case 'joined':
      return '';
    case 'tooManyTries':
      return JOINING.tooManyTries(answer.minutes);
    default:
      return JOINING[answer.kind];
  }
}

function valueOf(event: Event): string {
  return event.target instanceof HTMLInputElement ? event.target.value : '';
}

declare global {
  interface HTMLElementTagNameMap {
    'join-page': JoinPage;
  }
  interface HTMLElementEventMap {
    'join-wanted': JoinWantedEvent;
  }
}
