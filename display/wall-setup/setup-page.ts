import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { FloorView } from '../link/floor-link.ts';
import { browserZone } from '../parts/browser-zone.ts';
import { nextTextChangeMs } from '../parts/clock-text.ts';
import { glassHere } from '../parts/glass-size.ts';
import '../parts/icon-mark.ts';
import '../parts/phones-panel.ts';
import type { Look } from '../parts/look.ts';
import { LanguageChosenEvent } from '../parts/choice-events.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { ViewportSize } from '../parts/viewport-size.ts';
import { JOIN } from '../words/join.ts';
import { LANGUAGE_NAMES, LANGUAGES, type Language } from '../words/page-language.ts';
import { SETUP } from '../words/wall-setup.ts';
import { announcementOf } from '../wall/announcement.ts';
import { LookNow } from '../wall/look-now.ts';
import { DEFAULT_VIEWING } from '../wall/settings.ts';
import type { Screen } from '../wall/type-sizes.ts';
import { DEFAULT_WALL_LOOK, wallLookAt } from '../wall/wall-look.ts';
import { queryOf, type WallSettings } from '../wall/wall-settings.ts';
import { LeftAlone } from './left-alone.ts';
import { ringDiameterPx, type Gap } from './ring-geometry.ts';
import './ring-line.ts';
import { sectionStyles } from './section-styles.ts';
import { SettingsChangedEvent, type ViewingChangedEvent, type WallLookChangedEvent } from './setup-events.ts';
import './setup-look.ts';
import { setupPageStyles } from './setup-page-styles.ts';
import './setup-reading.ts';
import './setup-screen.ts';
import { setupStyles } from './setup-styles.ts';

/**
 * Where a wall is set up. Says `settings-changed` at every change, `language-chosen`, `look-now` where the page is to turn
 * light or dark, `rings-again`, and `left-alone` when a wall had better be here again.
 */
@customElement('setup-page')
export class SetupPage extends LitElement {
  static override styles = [setupStyles, sectionStyles, setupPageStyles];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clockSource: ClockSource | null = null;
  @property({ attribute: false }) settings: WallSettings = { viewing: DEFAULT_VIEWING, look: DEFAULT_WALL_LOOK, stationId: null };
  @property({ attribute: false }) gaps: readonly Gap[] = [];
  @property() language: Language = 'en';
  /** What the browser asks for. */
  @property({ attribute: false }) browserLook: Look = 'day';
  /** The address of a wall, without the settings. */
  @property() wallUrl = '/wall';
  /** The wall's settings stand in its address instead of being kept. */
  @property({ type: Boolean }) isAddressed = false;

  private readonly viewport = new ViewportSize(this);
  private readonly clock = new TickingClock(
    this,
    () => this.clockSource,
    (nowMs) => nextTextChangeMs([], nowMs),
  );

  constructor() {
    super();
    this.addController(new LookNow(this, () => wallLookAt(this.settings.look, this.clock.nowMs, this.zone, this.browserLook)));
    this.addController(new LeftAlone(this, () => this.clockSource));
  }

  protected override render(): TemplateResult {
    const { viewing, look } = this.settings;
    const screen = this.screenNow();
    return html`<header>
        <div>
          <h1>${SETUP.title}</h1>
          <p class="soft">${SETUP.lead}</p>
        </div>
        <a class="back" href=${this.backUrl}><icon-mark name="back"></icon-mark>${SETUP.toWall}</a>
        <div class="alert" role="alert">${this.pressing()}</div>
      </header>
      <main>
        <setup-screen
          class="wide"
          .viewing=${viewing}
          .screen=${screen}
          .pixelRatio=${devicePixelRatio}
          .language=${this.language}
          @viewing-changed=${this.viewingChanged}
        ></setup-screen>
        <setup-reading
          class="wide"
          .viewing=${viewing}
          .screen=${screen}
          .language=${this.language}
          @viewing-changed=${this.viewingChanged}
        ></setup-reading>
        <section class="wide" aria-labelledby="rings">
          <h2 id="rings">${SETUP.rings}</h2>
          <p>${SETUP.ringsLead} <span class="soft">${SETUP.ringsHow}</span></p>
          <ring-line .gaps=${this.gaps} .diameterPx=${ringDiameterPx(screen, screen.arcmin)}></ring-line>
        </section>
        <setup-look .look=${look} @wall-look-changed=${(event: WallLookChangedEvent) => this.change({ look: event.look })}></setup-look>
        ${this.whatIsShown()}
        <section aria-labelledby="phones">
          <h2 id="phones">${JOIN.title}</h2>
          <phones-panel untitled .addresses=${this.view?.addresses ?? []}></phones-panel>
        </section>
        <section aria-labelledby="second">
          <h2 id="second">${SETUP.second}</h2>
          <p>${SETUP.secondMore}</p>
          <a class="address" href=${this.addressedUrl}>${this.addressedUrl}</a>
        </section>
      </main>`;
  }

  private whatIsShown(): TemplateResult {
    const stations = this.view?.state?.kitchen?.document.stations ?? [];
    const { stationId } = this.settings;
    // A station that the kitchen no longer has stays in sight, or nobody would see what is wrong.
    const isUnknown = stationId !== null && !stations.some((station) => station.id === stationId);
    const options = [...stations, ...(isUnknown ? [{ id: stationId, name: stationId }] : [])];
    return html`<section aria-labelledby="shown">
      <h2 id="shown">${SETUP.whatIsShown}</h2>
      <div class="field">
        <label for="station">${SETUP.station}</label>
        <select id="station" aria-describedby="station-more" @change=${this.stationChosen}>
          <option value="" .selected=${stationId === null}>${SETUP.allStations}</option>
          ${options.map(({ id, name }) => html`<option value=${id} .selected=${id === stationId}>${name}</option>`)}
        </select>
        <p id="station-more" class="soft">${SETUP.stationMore}</p>
      </div>
      <div class="field">
        <label for="language">${SETUP.language}</label>
        <select id="language" @change=${this.languageChosen}>
          ${LANGUAGES.map((known) => html`<option value=${known} lang=${known} .selected=${known === this.language}>${LANGUAGE_NAMES[known]}</option>`)}
        </select>
      </div>
    </section>`;
  }

  /** What calls while this screen is no wall. */
  private pressing(): TemplateResult | typeof nothing {
    const state = this.view?.state ?? null;
    const calls = state === null ? '' : announcementOf(state, this.clock.nowMs, null);
    return calls === '' ? nothing : html`<p class="pressing">${SETUP.pressing} ${calls}</p>`;
  }

  private screenNow(): Screen {
    const { inch, metres, arcmin } = this.settings.viewing;
    const { widthPx, heightPx } = this.viewport;
    return { diagonalInch: inch, distanceM: metres, arcmin, widthPx, heightPx, glass: glassHere() };
  }

  private get zone(): string {
    return this.view?.state?.house?.document.zone ?? browserZone();
  }

  private get addressedUrl(): string {
    return `${this.wallUrl}?${queryOf(this.settings)}`;
  }

  /** The wall that this page was opened from. */
  get backUrl(): string {
    return this.isAddressed ? this.addressedUrl : this.wallUrl;
  }

  private change(some: Partial<WallSettings>): void {
    this.dispatchEvent(new SettingsChangedEvent({ ...this.settings, ...some }));
  }

  private viewingChanged(event: ViewingChangedEvent): void {
    this.change({ viewing: event.viewing });
  }

  private stationChosen(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    this.change({ stationId: value === '' ? null : value });
  }

  private languageChosen(event: Event): void {
    const { value } = event.target as HTMLSelectElement;
    const language = LANGUAGES.find((known) => known === value);
    if (language !== undefined) this.dispatchEvent(new LanguageChosenEvent(language));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-page': SetupPage;
  }
}
