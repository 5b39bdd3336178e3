import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { FloorState } from '../../shared/floor/state.ts';
import type { Id } from '../../shared/ids.ts';
import { unreachable } from '../../shared/result.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import type { BookStore, Given } from '../formulas/book-store.ts';
import type { FloorView } from '../link/floor-link.ts';
import { nextTextChangeMs } from '../parts/clock-text.ts';
import type { LookChoice } from '../parts/look.ts';
import { stillOf } from '../parts/still-of.ts';
import { TickingClock, type ClockSource } from '../parts/ticking-clock.ts';
import { zonedDate } from '../parts/zoned-instant.ts';
import { factsOf, unitsOf, zoneOf } from '../phone/floor-facts.ts';
import { DAY, DAY_SECTIONS, ORDERS, PLANNING, STANDING } from '../words/day.ts';
import type { Language } from '../words/page-language.ts';
import type { RefusalFacts } from '../words/refusals.ts';
import { givenText, notDoneText } from './answer-words.ts';
import { CommandGiver } from './command-giver.ts';
import { addressOf, SECTIONS, searchOf, type DayAddress } from './day-address.ts';
import { DayBook } from './day-book.ts';
import './day-header.ts';
import { dayPageStyles } from './day-page-styles.ts';
import './day-sheet.ts';
import { placeAgain, placeRead, placeTyped, placeWanted } from './order-commands.ts';
import './order-list.ts';
import type { OrderDoing } from './order-list.ts';
import './order-paste.ts';
import { ordersOf } from './order-rows.ts';
import { planFaultText, type BookNames } from './plan-fault-words.ts';
import { PlanDesk, type PlanTools } from './plan-desk.ts';
import './plan-panel.ts';
import type { PlanStore } from './plan-store.ts';
import type { PinLiftedEvent, PinWantedEvent } from './sheet-events.ts';
import './standing-orders.ts';
import type { StandingDoing } from './standing-orders.ts';
import { Later } from '../parts/later.ts';
import { TryDesk } from './try-desk.ts';
import type { TriedChange } from './tried-change.ts';

/** What the page works with: book and planner over HTTP, fresh ids, somebody who waits, the browser's address. */
export interface DayTools {
  readonly book: BookStore;
  readonly plan: PlanStore;
  readonly freshId: () => Id;
  readonly wait: (ms: number) => Promise<void>;
  readonly goTo: (search: string, how: 'push' | 'replace') => void;
}

/** One production day: its orders, its plan, the day sheet, what each station does, and how the day may go. */
@customElement('day-page')
export class DayPage extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, dayPageStyles];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clock: ClockSource | null = null;
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
  @property({ attribute: false }) tools!: DayTools;
  /** The part of the address behind the question mark, as the browser has it. */
  @property({ attribute: false }) search = '';
  @state() private said = '';
  private readonly book = new DayBook(this, () => this.tools.book);
  private readonly desk = new PlanDesk(this, () => this.planTools);
  private readonly tries = new TryDesk(this, () => this.planTools);
  private readonly ticking = new TickingClock(
    this,
    () => this.clock,
    (nowMs) => nextTextChangeMs([], nowMs),
  );
  private giver: CommandGiver | null = null;
  private address: DayAddress = addressOf('');
  private planFor: readonly unknown[] = [];
  private planNews = -1;
  private bookFor = '';
  private readonly later = new Later(() => import('./later-parts.ts'));

  constructor() {
    super();
    this.addEventListener('date-wanted', ({ date }) => this.go({ date }));
    this.addEventListener('day-plan-wanted', ({ change }) => void this.plan(change));
    this.addEventListener('tried-change', ({ change, isTakenBack }) => (isTakenBack ? this.desk.takeBack(change) : this.desk.try(change)));
    this.addEventListener('proposal-decided', ({ what, id }) => void this.decide(what, id));
    this.addEventListener('pin-wanted', (event) => void this.pin(event));
    this.addEventListener('pin-lifted', (event) => void this.lift(event));
    this.addEventListener('first-wanted', ({ orderId }) => void this.putFirst(orderId));
    this.addEventListener('try-wanted', () => void this.tries.start(this.desk.shown?.id ?? null));
  }

  /** Something was typed or pasted here that nobody has taken. */
  get hasDraft(): boolean {
    const typing = this.renderRoot.querySelectorAll<HTMLElement & { readonly hasDraft: boolean }>(
      'order-list, order-paste, standing-orders',
    );
    return [...typing].some(({ hasDraft }) => hasDraft);
  }

  private get planTools(): PlanTools {
    return { store: this.tools.plan, wait: this.tools.wait };
  }

  private get zone(): string {
    return zoneOf(this.view?.state ?? null);
  }

  /** The date that is looked at: as the address says, else the day that is open, else today. */
  private get serviceDate(): string {
    const floor = this.view?.state ?? null;
    const open = floor?.serviceDate ?? null;
    const isOpen = open !== null && floor?.closedDates.includes(open) !== true;
    return this.address.date ?? (isOpen ? open : zonedDate(this.ticking.nowMs, this.zone));
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('search')) this.address = addressOf(this.search);
    const floor = this.view?.state ?? null;
    if (floor === null || floor.kitchen === null) return;
    this.follow(floor);
  }

  protected override updated(): void {
    if (this.view !== null && this.view.state !== null) this.later.load();
  }

  /** Fetches what the floor's news makes old: the book's list, and what the planner has. */
  private follow(floor: FloorState): void {
    const bookFor = JSON.stringify([floor.formulaVersions, floor.productVersions, floor.archivedFormulas]);
    if (bookFor !== this.bookFor) {
      this.bookFor = bookFor;
      void this.book.fetchIndex();
    }
    const planFor = [floor.plan, floor.orders, floor.pins, floor.kitchen];
    const planNews = this.view?.planNews ?? 0;
    const isNews = planFor.some((each, index) => each !== this.planFor[index]);
    // What is found or offered comes without an event.
    if (isNews || planNews !== this.planNews) void this.desk.fetchStatus(isNews);
    this.planFor = planFor;
    this.planNews = planNews;
    const ordered = ordersOf(floor, this.serviceDate).flatMap(({ productId }) => this.book.formulaOf(productId) ?? []);
    this.book.need([...ordered, ...(this.desk.shown?.batches.map(({ formulaId }) => formulaId) ?? [])]);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const { nowMs } = this.ticking;
    const floor = (view.state?.kitchen ?? null) === null ? null : view.state;
    const header = html`<header>
      <day-header
        .view=${view}
        .nowMs=${nowMs}
        .serviceDate=${floor === null ? '' : this.serviceDate}
        .language=${this.language}
        .look=${this.look}
      ></day-header>
    </header>`;
    const still = stillOf(view);
    if (still !== null || floor === null) {
      const [title, more] = still ?? (view.state === null ? [DAY.loading, ''] : [DAY.emptyTitle, DAY.emptyMore]);
      return html`${header}
        <main>
          <div class="still">
            <h2>${title}</h2>
            <p>${more}</p>
          </div>
        </main>`;
    }
    return html`${header}${this.nav(floor)}
      <main>
        <div role="status">${this.saidNow()}</div>
        ${this.bookStill()}${this.orders(this.book.filled(floor), nowMs)}${this.section(this.book.filled(floor), nowMs)}
      </main>`;
  }

  private nav(floor: FloorState): TemplateResult {
    const orders = ordersOf(floor, this.serviceDate).length;
    return html`<nav aria-label=${DAY.sections}>
      ${SECTIONS.map(
        (section) =>
          html`<button
            type="button"
            aria-current=${section === this.address.section ? 'page' : nothing}
            @click=${() => this.go({ section })}
          >
            ${DAY_SECTIONS[section]}${section === 'orders' && orders > 0 ? ` (${orders})` : ''}
          </button>`,
      )}
    </nav>`;
  }

  private saidNow(): TemplateResult | typeof nothing {
    const said = this.desk.notDone === null ? this.said : notDoneText(this.desk.notDone, this.facts());
    return said === '' ? nothing : html`<p class="said">${said}</p>`;
  }

  private bookStill(): TemplateResult | typeof nothing {
    if (this.book.isFailed)
      return html`<div class="still brief">
        <h2>${DAY.failedTitle}</h2>
        <p>${DAY.failedMore}</p>
        <button type="button" class="plain" @click=${() => void this.book.fetchIndex()}>${DAY.tryAgain}</button>
      </div>`;
    return this.book.index === null ? html`<p role="status">${DAY.loadingBook}</p>` : nothing;
  }

  private section(floor: FloorState, nowMs: number): TemplateResult | typeof nothing {
    switch (this.address.section) {
      case 'orders':
        return nothing;
      case 'plan':
        return this.planAndSheet(floor, nowMs);
      case 'stations':
        return html`<station-list
          .state=${floor}
          .proposal=${this.desk.shown}
          .cleanings=${this.desk.cleanings}
          .nowMs=${nowMs}
          .serviceDate=${this.serviceDate}
        ></station-list>`;
      case 'try':
        return this.tryOut(floor);
      default:
        return unreachable(this.address.section);
    }
  }

  /** Always there, or what is typed and pasted would be gone with a look at the plan. */
  private orders(floor: FloorState, nowMs: number): TemplateResult {
    const { serviceDate, zone } = this;
    const { products } = this.book;
    const isClosed = floor.closedDates.includes(serviceDate);
    return html`<div class="columns" ?hidden=${this.address.section !== 'orders'}>
      ${isClosed ? html`<p class="said">${DAY.closed}</p>` : nothing}
      <order-list
        .floor=${floor}
        .serviceDate=${serviceDate}
        .zone=${zone}
        .products=${products}
        .isClosed=${isClosed}
        .doing=${this.orderDoing}
      ></order-list>
      <div class="aside">
        <order-paste
          ?hidden=${isClosed}
          .floor=${floor}
          .products=${products}
          .serviceDate=${serviceDate}
          .zone=${zone}
          .nowMs=${nowMs}
          .place=${this.placeRead}
        ></order-paste>
        <standing-orders
          .floor=${floor}
          .serviceDate=${serviceDate}
          .zone=${zone}
          .nowMs=${nowMs}
          .products=${products}
          .isClosed=${isClosed}
          .doing=${this.standingDoing}
        ></standing-orders>
      </div>
    </div>`;
  }

  private planAndSheet(floor: FloorState, nowMs: number): TemplateResult {
    const { serviceDate, desk } = this;
    return html`<plan-panel
        .floor=${floor}
        .serviceDate=${serviceDate}
        .zone=${this.zone}
        .nowMs=${nowMs}
        .products=${this.book.products}
        .bookNames=${this.bookNames}
        .status=${desk.status}
        .isFailed=${desk.isFailed}
        .proposals=${desk.named(serviceDate)}
        .shown=${desk.shown}
        .tried=${desk.tried}
      ></plan-panel>
      <day-sheet
        .state=${floor}
        .proposal=${desk.shown}
        .cleanings=${desk.cleanings}
        .nowMs=${nowMs}
        .serviceDate=${serviceDate}
      ></day-sheet>`;
  }

  private tryOut(floor: FloorState): TemplateResult {
    const { last, progress, fault, notDone } = this.tries;
    const told = fault === null ? null : planFaultText(fault, this.bookNames, unitsOf(floor));
    return html`<try-panel
      .state=${floor}
      .result=${last?.status === 'done' ? last.result : null}
      .progress=${progress}
      .fault=${notDone === null ? told : notDoneText(notDone, this.facts())}
      .disabled=${floor.plan === null && this.desk.shown === null}
    ></try-panel>`;
  }

  private readonly orderDoing: OrderDoing = {
    place: (typed, before) =>
      this.give([placeTyped(typed, before, this.serviceDate, this.zone)], before === null ? ORDERS.placed(1) : ORDERS.changed),
    withdraw: ({ id }) => this.give([{ type: 'withdrawOrders', orderIds: [id] }], ''),
    putBack: (order) => this.give([placeAgain(order)], ORDERS.placed(1)),
  };

  private readonly placeRead = (read: Parameters<typeof placeRead>[0]): Promise<boolean> =>
    this.give(placeRead(read), ORDERS.placed(read.length));

  private readonly standingDoing: StandingDoing = {
    adopt: (standing) => {
      const fromVersion = this.view?.state?.standing?.version ?? 0;
      return this.give([{ type: 'adoptStanding', fromVersion, standing: [...standing] }], STANDING.kept);
    },
    takeOver: (orders) => this.give([placeWanted(orders, this.serviceDate)], ORDERS.placed(orders.length)),
  };

  private readonly bookNames: BookNames = {
    formula: (id) => this.book.index?.entries.find((entry) => entry.id === id)?.name ?? id,
    product: (id) => this.book.products.find((product) => product.id === id)?.name ?? id,
  };

  /** Says things to the house, one after the other, and tells what came of it. Whether all of it was done. */
  private async give(commands: readonly ClientCommand[], done: string): Promise<boolean> {
    this.giver ??= new CommandGiver(this.tools.book, this.tools.freshId);
    this.desk.notDone = null;
    for (const command of commands) {
      const given = await this.giver.give(command);
      if (given.phase === 'done' || isAlreadySo(given)) continue;
      this.said = givenText(given, this.facts());
      return false;
    }
    this.said = done;
    return true;
  }

  private facts(): RefusalFacts {
    const { view } = this;
    const facts = factsOf(view?.state ?? null, view?.devices ?? [], view?.device?.id ?? null);
    return { ...facts, product: this.bookNames.product, formula: this.bookNames.formula };
  }

  private go(to: Partial<DayAddress>): void {
    this.said = '';
    if (to.date !== undefined) {
      this.desk.leaveDate();
      this.tries.forget();
    }
    this.address = { ...this.address, ...to };
    this.search = searchOf(this.address);
    this.tools.goTo(this.search, 'push');
  }

  private async plan(change: TriedChange | null): Promise<void> {
    this.said = '';
    if (change !== null) this.desk.try(change);
    await this.desk.propose(this.serviceDate);
  }

  private async decide(what: 'show' | 'keep' | 'drop', id: string | null): Promise<void> {
    this.said = '';
    if (what === 'show') this.desk.show(id);
    else if (id !== null && what === 'drop') await this.desk.drop(id);
    else if (id !== null && (await this.desk.keep(id))) this.said = PLANNING.kept;
  }

  /** On a day that is tried a pin is part of what is tried; otherwise it is the floor's. */
  private async pin({ place, startMs }: PinWantedEvent): Promise<void> {
    if (this.desk.shown !== null || place.workpieceId === null) return this.plan({ kind: 'startsAt', key: place.key, startMs });
    const { workpieceId, cut, load, stepId } = place;
    const within = { ...(cut === null ? {} : { cut }), ...(load === null ? {} : { load }) };
    await this.give([{ type: 'setPin', pin: { kind: 'startsAt', workpieceId, ...within, stepId, startMs } }], '');
  }

  private async lift({ pinId, key, orderId }: PinLiftedEvent): Promise<void> {
    if (pinId !== null) {
      await this.give([{ type: 'liftPin', pinId }], '');
      return;
    }
    const tried = this.desk.tried.find((change) =>
      change.kind === 'startsAt' ? change.key === key : change.kind === 'first' && change.orderId === orderId,
    );
    if (tried !== undefined) this.desk.takeBack(tried);
    await this.plan(null);
  }

  private async putFirst(orderId: string): Promise<void> {
    if (this.desk.shown === null) await this.give([{ type: 'setPin', pin: { kind: 'first', orderId } }], '');
    else await this.plan({ kind: 'first', orderId });
  }
}

/** The house has it so already: a command that came through, and whose answer did not. */
function isAlreadySo(given: Given): boolean {
  return given.phase === 'refused' && given.refusal.code === 'nothingChanges';
}

declare global {
  interface HTMLElementTagNameMap {
    'day-page': DayPage;
  }
}
