import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import type { House } from '../../shared/documents/house.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { FloorState, Versioned } from '../../shared/floor/state.ts';
import type { FloorView } from '../link/floor-link.ts';
import { stillOf } from '../parts/still-of.ts';
import { nextTextChangeMs } from '../parts/clock-text.ts';
import type { FieldChangedEvent } from '../desk/field-changed.ts';
import type { LookChoice } from '../parts/look.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { KITCHEN } from '../words/kitchen.ts';
import type { Language } from '../words/page-language.ts';
import type { BackupsShown } from './backup-store.ts';
import { isThing, placeOf, type Chosen } from './chosen.ts';
import { edited, isOvertaken, onNewer, settled, type Draft } from './draft.ts';
import './draft-bar.ts';
import type { DraftBar, DraftStanding } from './draft-bar.ts';
import { faultsOfHouse, faultsOfKitchen, namedFault, type DraftFaults } from './draft-faults.ts';
import { inwardsOf, withValueAt } from '../desk/inwards.ts';
import { withAdded, withField, withMoved, withRemoved } from './kitchen-edits.ts';
import {
  KitchenCommandEvent,
  type DraftEvent,
  type KitchenChangedEvent,
  type ThingAddedEvent,
  type ThingChosenEvent,
  type ThingMovedEvent,
} from './kitchen-events.ts';
import './kitchen-header.ts';
import { kitchenNow, nextChangeOfKitchenMs, type KitchenNow } from './kitchen-now.ts';
import type { KitchenPlan } from './kitchen-plan.ts';
import './kitchen-plan.ts';
import { pageStyles } from './page-styles.ts';
import { deskStyles } from '../desk/desk-styles.ts';
import type { ThingPanel } from './thing-panel.ts';
import './thing-panel.ts';

const SOUND: DraftFaults = { isSendable: true, faults: [] };

/** The documents in force that the page edits. */
interface InForce {
  readonly kitchen: Versioned<Kitchen>;
  readonly house: Versioned<House>;
}

/** The whole page: the plan of the house, the panel of what is chosen, and the draft of what was changed. */
@customElement('kitchen-page')
export class KitchenPage extends LitElement {
  static override styles = [deskStyles, pageStyles];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clock: ClockSource | null = null;
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
  @property({ attribute: false }) backups: BackupsShown = { phase: 'asking' };
  @state() private chosen: Chosen | null = null;
  @state() private kitchenDraft: Draft<Kitchen> | null = null;
  @state() private houseDraft: Draft<House> | null = null;
  /** Somebody wanted to keep what cannot be kept: from then on the bar says why. */
  @state() private isTried = false;
  @query('kitchen-plan') private plan!: KitchenPlan | null;
  @query('thing-panel') private panel!: ThingPanel | null;
  @query('draft-bar') private bar!: DraftBar | null;
  @query('main') private main!: HTMLElement | null;

  /** Something was changed here and is in nobody's hands but this page's. */
  get hasDraft(): boolean {
    return [this.kitchenDraft, this.houseDraft].some((draft) => draft !== null && !draft.isSent);
  }

  private readonly ticking = new TickingClock(
    this,
    () => this.clock,
    (nowMs) => {
      const floor = this.view?.state ?? null;
      return Math.min(nextTextChangeMs([], nowMs), floor === null ? Infinity : nextChangeOfKitchenMs(floor, nowMs));
    },
  );
  private isPanelNew = false;
  /** A button of the bar was pressed: it goes away with what it does. */
  private isBarPressed = false;

  constructor() {
    super();
    this.addEventListener('thing-chosen', (event: ThingChosenEvent) => this.choose(event.chosen));
    this.addEventListener('thing-added', (event: ThingAddedEvent) => this.add(event));
    this.addEventListener('thing-moved', (event: ThingMovedEvent) => this.move(event));
    this.addEventListener('field-changed', (event: FieldChangedEvent) => this.changeField(event));
    this.addEventListener('kitchen-changed', ({ path, value }: KitchenChangedEvent) =>
      this.editKitchen((kitchen) => withValueAt(kitchen, path, value)),
    );
    this.addEventListener('draft', (event: DraftEvent) => this.decideDraft(event.what));
    this.addEventListener('keydown', (event) => {
      if (event.key === 'Escape' && this.chosen !== null) this.choose(null);
    });
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const inForce = this.inForce();
    if (!changed.has('view') || this.view === null || inForce === null) return;
    this.kitchenDraft = settled(this.kitchenDraft, this.view, 'adoptKitchen', inForce.kitchen);
    this.houseDraft = settled(this.houseDraft, this.view, 'adoptHouse', inForce.house);
    if ((this.kitchenDraft?.told.length ?? 0) + (this.houseDraft?.told.length ?? 0) > 0) this.isTried = true;
    if (this.kitchenDraft === null && this.houseDraft === null) this.isTried = false;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const { nowMs } = this.ticking;
    const header = html`<header>
      <kitchen-header .view=${view} .nowMs=${nowMs} .language=${this.language} .look=${this.look}></kitchen-header>
    </header>`;
    const still = stillOf(view);
    const inForce = this.inForce();
    if (still !== null || view.state === null || inForce === null) {
      const [title, more] = still ?? (view.state === null ? [KITCHEN.loading, ''] : [KITCHEN.emptyTitle, KITCHEN.emptyMore]);
      return html`${header}
        <main>
          <div class="still">
            <h2>${title}</h2>
            <p>${more}</p>
          </div>
        </main>`;
    }
    return html`${header}${this.floorPlan(view.state, inForce, nowMs)}`;
  }

  private floorPlan(floor: FloorState, inForce: InForce, nowMs: number): TemplateResult {
    const kitchen = this.kitchenDraft?.mine ?? inForce.kitchen.document;
    const house = this.houseDraft?.mine ?? inForce.house.document;
    const faults = this.faults(floor);
    const now = kitchenNow(floor, nowMs);
    const common = { kitchen, inForce: inForce.kitchen.document, now, faults: faults.faults };
    const houseInForce = inForce.house.document;
    return html`<main tabindex="-1">
        <p class="note">${KITCHEN.note}</p>
        <div class="desk">
          <kitchen-plan .context=${{ ...common, house: houseInForce, chosen: this.chosen }}></kitchen-plan>
          <aside aria-label=${KITCHEN.panel}>${this.side(common, house, houseInForce)}</aside>
        </div>
      </main>
      <footer>
        <draft-bar
          .standing=${this.standing(inForce)}
          .faults=${this.isTried ? faults.faults.map((fault) => namedFault(fault, { kitchen, house })) : []}
        ></draft-bar>
      </footer>`;
  }

  private side(
    common: { readonly kitchen: Kitchen; readonly inForce: Kitchen; readonly now: KitchenNow; readonly faults: readonly FileFault[] },
    house: House,
    houseInForce: House,
  ): TemplateResult {
    const { chosen } = this;
    if (chosen === null || (isThing(chosen) && placeOf(common.kitchen, chosen) === null))
      return html`<p class="hint">${KITCHEN.panelHint}</p>`;
    return html`<thing-panel .context=${{ ...common, house, houseInForce, chosen, backups: this.backups }}></thing-panel>`;
  }

  protected override updated(): void {
    if (this.isBarPressed) void this.updateComplete.then(() => this.keepKeyboard());
    this.isBarPressed = false;
    if (!this.isPanelNew) return;
    this.isPanelNew = false;
    const { panel } = this;
    void panel?.updateComplete.then(() => panel.focusHeading());
  }

  /** Where the pressed button has gone, the keyboard goes on in the panel, or where the page's own things begin. */
  private async keepKeyboard(): Promise<void> {
    await this.bar?.updateComplete;
    if (this.bar?.hasFocusInside === true || this.shadowRoot?.activeElement === this.panel) return;
    if (this.panel === null) this.main?.focus({ preventScroll: true });
    else this.panel.focusHeading();
  }

  private inForce(): InForce | null {
    const kitchen = this.view?.state?.kitchen ?? null;
    const house = this.view?.state?.house ?? null;
    return kitchen === null || house === null ? null : { kitchen, house };
  }

  /** What is wrong with the drafts as they are, and what the house has said of them. */
  private faults(floor: FloorState): DraftFaults {
    const { kitchenDraft, houseDraft } = this;
    const kitchen = kitchenDraft === null || kitchenDraft.isSent ? SOUND : faultsOfKitchen(kitchenDraft.mine, floor);
    const house = houseDraft === null || houseDraft.isSent ? SOUND : faultsOfHouse(houseDraft.mine);
    const own = [...kitchen.faults, ...house.faults];
    const told = [...(kitchenDraft?.told ?? []), ...(houseDraft?.told ?? [])];
    const others = told.filter((fault) => !own.some((known) => known.path === fault.path && known.message === fault.message));
    return { isSendable: kitchen.isSendable && house.isSendable, faults: [...own, ...others] };
  }

  private standing(inForce: InForce): DraftStanding | null {
    const { kitchenDraft, houseDraft, view } = this;
    if (kitchenDraft === null && houseDraft === null) return null;
    if (kitchenDraft?.isSent === true || houseDraft?.isSent === true) return view?.connection.phase === 'live' ? 'sent' : 'kept';
    const isLate =
      (kitchenDraft !== null && isOvertaken(kitchenDraft, inForce.kitchen)) ||
      (houseDraft !== null && isOvertaken(houseDraft, inForce.house));
    return isLate ? 'overtaken' : 'changed';
  }

  private choose(chosen: Chosen | null): void {
    const before = this.chosen;
    this.chosen = chosen;
    this.isPanelNew = chosen !== null;
    if (chosen === null && before !== null) this.plan?.focusThing(before);
  }

  private editKitchen(change: (kitchen: Kitchen) => Kitchen): void {
    const inForce = this.inForce();
    // What was sent is not changed under the answer.
    if (inForce === null || this.kitchenDraft?.isSent === true) return;
    this.kitchenDraft = edited(this.kitchenDraft, inForce.kitchen, change);
  }

  private add({ kind, withinId }: ThingAddedEvent): void {
    const inForce = this.inForce();
    if (inForce === null || this.kitchenDraft?.isSent === true) return;
    const added = withAdded(this.kitchenDraft?.mine ?? inForce.kitchen.document, kind, withinId);
    if (added === null) return;
    this.editKitchen(() => added.kitchen);
    this.choose({ kind, id: added.id });
  }

  private move({ by }: ThingMovedEvent): void {
    const { chosen } = this;
    if (chosen === null || !isThing(chosen)) return;
    this.editKitchen((kitchen) => {
      const place = placeOf(kitchen, chosen);
      if (place === null) return kitchen;
      return by === 'out' ? withRemoved(kitchen, place) : withMoved(kitchen, place, by);
    });
    if (by === 'out') this.choose(null);
  }

  private changeField({ key, value }: FieldChangedEvent): void {
    const { chosen } = this;
    const inForce = this.inForce();
    if (chosen === null || inForce === null) return;
    if (chosen.kind === 'house') {
      if (this.houseDraft?.isSent === true) return;
      this.houseDraft = edited(this.houseDraft, inForce.house, (house) => withValueAt(house, inwardsOf(key), value));
      return;
    }
    this.editKitchen((kitchen) => withField(kitchen, chosen, key, value));
    // A new thing is known by its key: the panel stays with it.
    if (key === 'id' && isThing(chosen)) this.chosen = { kind: chosen.kind, id: String(value) };
  }

  private decideDraft(what: DraftEvent['what']): void {
    const inForce = this.inForce();
    const floor = this.view?.state ?? null;
    if (inForce === null || floor === null) return;
    this.isBarPressed = true;
    switch (what) {
      case 'keep':
        this.keep(floor);
        return;
      case 'putBack':
        this.kitchenDraft = null;
        this.houseDraft = null;
        this.isTried = false;
        return;
      case 'takeNewer':
        if (this.kitchenDraft !== null) this.kitchenDraft = onNewer(this.kitchenDraft, inForce.kitchen);
        if (this.houseDraft !== null) this.houseDraft = onNewer(this.houseDraft, inForce.house);
        return;
    }
  }

  private keep(floor: FloorState): void {
    const { kitchenDraft, houseDraft } = this;
    this.isTried = true;
    // What has no shape is no message; everything else the house judges itself, and says at which field.
    if (!this.faults(floor).isSendable) return;
    if (kitchenDraft !== null) {
      this.kitchenDraft = { ...kitchenDraft, isSent: true, told: [] };
      this.dispatchEvent(new KitchenCommandEvent({ type: 'adoptKitchen', fromVersion: kitchenDraft.version, kitchen: kitchenDraft.mine }));
    }
    if (houseDraft !== null) {
      this.houseDraft = { ...houseDraft, isSent: true, told: [] };
      this.dispatchEvent(new KitchenCommandEvent({ type: 'adoptHouse', fromVersion: houseDraft.version, house: houseDraft.mine }));
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'kitchen-page': KitchenPage;
  }
}
