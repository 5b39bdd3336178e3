import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { namesAnswerSchema, type NamesAnswer } from '../../shared/records/answers.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import type { LookChoice } from '../parts/look.ts';
import '../parts/page-choices.ts';
import type { Language } from '../words/page-language.ts';
import { RECORDS } from '../words/records.ts';
import { following } from './follow.ts';
import { NO_NAMES, searchOf, type RecordsTools } from './records-tools.ts';
import { VIEWS, viewNamed, type ViewName } from './views.ts';

/** Names are asked for again after so long where nothing came. */
const NAMES_AGAIN_MS = 2000;

/** What happened, asked and answered: one page, whose address says which view of the records it shows and of what. */
@customElement('records-page')
export class RecordsPage extends LitElement {
  static override styles = [
    deskStyles,
    css`
      :host {
        display: block;
        max-width: 110rem;
        margin: 0 auto;
        padding: 0 var(--space-4) var(--space-6);
      }
      header {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-5);
        padding: var(--space-3) 0;
        border-bottom: 2px solid var(--ink);
      }
      h1 {
        font-size: var(--type-figure);
        line-height: 1.1;
      }
      h1 span {
        display: block;
        font-size: var(--type-text);
        font-weight: var(--weight-text);
        color: var(--ink-soft);
      }
      nav ul {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-1) var(--space-4);
      }
      nav a {
        display: inline-block;
        min-height: var(--target-desk);
        padding: 8px 2px 6px;
        border-bottom: 4px solid transparent;
        color: var(--ink);
        font-size: var(--type-text);
        font-weight: var(--weight-word);
        line-height: 1.3;
        text-decoration: none;
      }
      nav a:hover {
        border-bottom-color: var(--line);
      }
      nav a[aria-current] {
        border-bottom-color: var(--ink);
      }
      page-choices {
        margin-inline-start: auto;
      }
      main {
        padding-top: var(--space-4);
      }
      @media print {
        header {
          display: none;
        }
        :host {
          max-width: none;
          padding: 0;
        }
        main {
          padding: 0;
        }
      }
    `,
  ];

  @property({ attribute: false }) tools: RecordsTools | null = null;
  /** Of the address: which view, and of what. */
  @property() search = '';
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
  @state() private names: NamesAnswer | null = null;
  @state() private loaded: ReadonlySet<ViewName> = new Set();
  private isAsking = false;

  protected override willUpdate(): void {
    if (this.tools !== null && this.names === null && !this.isAsking) void this.askNames(this.tools);
    const name = this.viewName();
    if (!this.loaded.has(name)) {
      void VIEWS[name].load().then(
        () => (this.loaded = new Set([...this.loaded, name])),
        // The link is gone: whoever goes to another view and back asks again.
        () => undefined,
      );
    }
  }

  protected override render(): TemplateResult {
    const { tools, names } = this;
    const name = this.viewName();
    const query = new URLSearchParams(this.search);
    const { house } = names ?? NO_NAMES;
    return html`<header>
        <h1>${RECORDS.title}${house === '' ? nothing : html`<span>${house}</span>`}</h1>
        <nav aria-label=${RECORDS.views}>
          <ul>
            ${Object.entries(VIEWS).map(([each, view]) =>
              view.isInMenu
                ? html`<li>
                    <a href=${searchOf(each)} aria-current=${each === name ? 'page' : nothing} @click=${following(this.tools)}
                      >${view.title()}</a
                    >
                  </li>`
                : nothing,
            )}
          </ul>
        </nav>
        <page-choices .look=${this.look} .language=${this.language}></page-choices>
      </header>
      <main>
        ${
          tools === null || !this.loaded.has(name)
            ? html`<p role="status">${RECORDS.asking}</p>`
            : VIEWS[name].show({ tools, names: names ?? NO_NAMES, query })
        }
      </main>`;
  }

  private viewName(): ViewName {
    return viewNamed(new URLSearchParams(this.search).get('view'));
  }

  private async askNames(tools: RecordsTools): Promise<void> {
    this.isAsking = true;
    const asked = await tools.ask('names', {}, namesAnswerSchema);
    if (asked.phase === 'here') this.names = asked.answer;
    else setTimeout(() => void this.askNames(tools), NAMES_AGAIN_MS);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'records-page': RecordsPage;
  }
}
