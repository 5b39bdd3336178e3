import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BackupStatus } from '../../shared/wire/backup-status.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { pastText } from '../parts/day-clock-text.ts';
import { BACKUPS } from '../words/backups.ts';
import type { BackupsShown } from './backup-store.ts';

/** Somebody wants to know how the backups stand, or wants one more now. */
export class BackupsAskedEvent extends Event {
  static readonly type = 'backups-asked';
  readonly isNow: boolean;

  constructor(isNow: boolean) {
    super(BackupsAskedEvent.type, { bubbles: true, composed: true });
    this.isNow = isNow;
  }
}

/** How the house's backups stand: the last one, what went wrong, and one more at once, before somebody pulls the stick. */
@customElement('house-backups')
export class HouseBackups extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
      }
      h3 {
        font-size: var(--type-text);
        font-weight: var(--weight-strong);
      }
      p {
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      .last {
        font-weight: var(--weight-word);
      }
      .more {
        color: var(--ink-soft);
      }
      .fault {
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--lost);
        font-weight: var(--weight-word);
      }
      progress {
        width: 100%;
      }
    `,
  ];

  @property({ attribute: false }) shown: BackupsShown = { phase: 'asking' };
  @property({ attribute: false }) zone = 'UTC';

  override connectedCallback(): void {
    super.connectedCallback();
    this.dispatchEvent(new BackupsAskedEvent(false));
  }

  protected override render(): TemplateResult {
    const { shown } = this;
    const isBusy = shown.phase === 'making' || shown.phase === 'asking';
    return html`<h3>${BACKUPS.title}</h3>
      <div role="status">${this.standing(shown)}</div>
      ${shown.phase === 'making' ? html`<progress aria-label=${BACKUPS.making}></progress>` : nothing}
      ${
        shown.phase === 'none' || shown.phase === 'forbidden'
          ? nothing
          : html`<div>
                <button type="button" class="plain" aria-disabled=${isBusy} @click=${() => this.askNow(isBusy)}>${BACKUPS.now}</button>
              </div>
              <p class="more">${BACKUPS.more}</p>`
      }`;
  }

  private standing(shown: BackupsShown): TemplateResult {
    return shown.phase === 'here' ? this.status(shown.status, shown.atMs) : html`<p>${BACKUPS[shown.phase]}</p>`;
  }

  private status({ last, kept, folder, fault, isLate }: BackupStatus, atMs: number): TemplateResult {
    return html`<p class="last">${last === null ? BACKUPS.never : BACKUPS.last(pastText(last.madeMs, atMs, this.zone))}</p>
      ${kept === 0 ? nothing : html`<p class="more">${BACKUPS.kept(kept, folder)}</p>`}
      ${fault === null ? nothing : html`<p class="fault">${BACKUPS.fault(fault)}</p>`}
      ${isLate ? html`<p class="fault">${BACKUPS.late}</p>` : nothing}`;
  }

  /** A second press while one is being made asks for nothing; the button stays where the keyboard is. */
  private askNow(isBusy: boolean): void {
    if (!isBusy) this.dispatchEvent(new BackupsAskedEvent(true));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'house-backups': HouseBackups;
  }
  interface HTMLElementEventMap {
    'backups-asked': BackupsAskedEvent;
  }
}
