import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { CHOICES, LOOK_NAMES } from '../words/choices.ts';
import { LANGUAGE_NAMES, LANGUAGES, type Language } from '../words/page-language.ts';
import { LanguageChosenEvent, LookChosenEvent } from './choice-events.ts';
import { LOOK_CHOICES, type LookChoice } from './look.ts';

/** What a device is set to, the same on every page: its language, and light or dark. */
@customElement('page-choices')
export class PageChoices extends LitElement {
  static override styles = css`
    *,
    *::before,
    *::after {
      box-sizing: border-box;
    }
    :host {
      display: flex;
      flex-wrap: wrap;
      gap: var(--space-2) var(--space-4);
    }
    label {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: var(--space-1) var(--space-2);
      color: var(--ink-soft);
      font-size: var(--type-text);
    }
    select {
      min-height: var(--target-desk);
      max-width: 100%;
      padding: 6px 10px;
      border: var(--hairline) solid var(--ink);
      border-radius: var(--radius);
      background: var(--field);
      color: var(--ink);
      font: inherit;
    }
    :focus-visible {
      outline: var(--focus);
      outline-offset: 2px;
    }
  `;

  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';

  protected override render(): TemplateResult {
    return html`
      <label
        >${CHOICES.language}
        <select name="language" @change=${this.chooseLanguage}>
          ${LANGUAGES.map(
            (language) =>
              html`<option value=${language} lang=${language} .selected=${language === this.language}>${LANGUAGE_NAMES[language]}</option>`,
          )}
        </select></label
      >
      <label
        >${CHOICES.look}
        <select name="look" @change=${this.chooseLook}>
          ${LOOK_CHOICES.map((look) => html`<option value=${look} .selected=${look === this.look}>${LOOK_NAMES[look]}</option>`)}
        </select></label
      >
    `;
  }

  private chooseLanguage(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    const language = LANGUAGES.find((known) => known === value);
    if (language !== undefined) this.dispatchEvent(new LanguageChosenEvent(language));
  }

  private chooseLook(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    const look = LOOK_CHOICES.find((known) => known === value);
    if (look !== undefined) this.dispatchEvent(new LookChosenEvent(look));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'page-choices': PageChoices;
  }
}
