import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { FloorState } from '../../shared/floor/state.ts';
import type { PlannedCleaning } from '../../shared/plan/planned-cleaning.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { printElements } from '../formulas/print.ts';
import { STATION_LIST } from '../words/day-sheet.ts';
import type { SheetProposal } from './sheet-places.ts';
import { dateOf, stationDays, type StationDay } from './station-model.ts';
import './station-sheet.ts';

const MINUTE_MS = 60_000;

/** What hands have to do, station by station: to be read, printed, or taken into the staff's calendars. */
@customElement('station-list')
export class StationList extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        min-width: 0;
        color: var(--ink);
        font-size: var(--type-text);
      }
      h2 {
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
      }
      fieldset.buttons legend {
        float: left;
        display: flex;
        align-items: center;
        min-height: var(--target-desk);
        padding-inline-end: var(--space-2);
        color: var(--ink-soft);
      }
      .lists {
        display: grid;
        gap: var(--space-6);
      }
      a {
        display: inline-flex;
        align-items: center;
        min-height: var(--target-desk);
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) state: FloorState | null = null;
  /** A day that is only tried, listed in place of the plan in force. */
  @property({ attribute: false }) proposal: SheetProposal | null = null;
  /** Of that day, or of the plan in force. */
  @property({ attribute: false }) cleanings: readonly PlannedCleaning[] = [];
  @property({ type: Number }) nowMs = 0;
  @property({ attribute: false }) serviceDate: string | null = null;
  /** How elements are put on paper. */
  @property({ attribute: false }) print: (elements: readonly HTMLElement[]) => Promise<void> = printElements;
  /** '' for all of them. */
  @state() private chosenId: string | null = null;
  private days: readonly StationDay[] = [];

  protected override willUpdate(changed: PropertyValues): void {
    const { state: floor, proposal, cleanings, nowMs, serviceDate } = this;
    const isNewMinute = Math.floor(Number(changed.get('nowMs') ?? -1) / MINUTE_MS) !== Math.floor(nowMs / MINUTE_MS);
    if (!['state', 'proposal', 'cleanings', 'serviceDate'].some((name) => changed.has(name)) && !(changed.has('nowMs') && isNewMinute))
      return;
    this.days = floor === null ? [] : stationDays({ state: floor, proposal, cleanings, nowMs, serviceDate });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { state: floor, days } = this;
    if (floor === null || days.length === 0) return nothing;
    const chosenId = this.chosenId ?? days[0]?.id ?? '';
    const shown = days.filter(({ id }) => chosenId === '' || id === chosenId);
    return html`<h2>${STATION_LIST.title}</h2>
      <fieldset class="buttons">
        <legend>${STATION_LIST.choose}</legend>
        ${days.map(({ id, name }) => this.choice(id, name, chosenId))} ${this.choice('', STATION_LIST.all, chosenId)}
      </fieldset>
      <div class="buttons">
        <button type="button" class="plain" @click=${() => void this.print(this.sheets(shown))}>
          ${shown.length === 1 ? STATION_LIST.print : STATION_LIST.printAll}
        </button>
        ${this.calendarLink(floor, chosenId)}
      </div>
      <div class="lists">${shown.map((station) => this.sheet(floor, station))}</div>`;
  }

  private choice(id: string, name: string, chosenId: string): TemplateResult {
    return html`<button type="button" class="plain" aria-pressed=${id === chosenId} @click=${() => (this.chosenId = id)}>${name}</button>`;
  }

  /** The house's calendar is of the plan in force: a day that is only tried has none. */
  private calendarLink(floor: FloorState, chosenId: string): TemplateResult | typeof nothing {
    const date = dateOf(floor, this.serviceDate);
    if (chosenId === '' || date === null || this.proposal !== null || floor.plan === null) return nothing;
    const query = new URLSearchParams({ station: chosenId, date });
    return html`<a href="/api/plan/calendar?${query.toString()}">${STATION_LIST.calendar}</a>`;
  }

  private sheet(floor: FloorState, station: StationDay): TemplateResult {
    return html`<station-sheet
      .station=${station}
      .zone=${zoneOf(floor)}
      .nowMs=${this.nowMs}
      .date=${dateOf(floor, this.serviceDate)}
    ></station-sheet>`;
  }

  /** Sheets of their own for the paper: one station a page. */
  private sheets(shown: readonly StationDay[]): readonly HTMLElement[] {
    const { state: floor } = this;
    if (floor === null) return [];
    return shown.map((station) =>
      Object.assign(document.createElement('station-sheet'), {
        station,
        zone: zoneOf(floor),
        nowMs: this.nowMs,
        date: dateOf(floor, this.serviceDate),
      }),
    );
  }
}

function zoneOf(floor: FloorState): string {
  return floor.house?.document.zone ?? 'UTC';
}

declare global {
  interface HTMLElementTagNameMap {
    'station-list': StationList;
  }
}
