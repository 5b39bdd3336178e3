import type { Formula } from '../../shared/documents/formula.ts';
import { newestFormula } from '../../shared/floor/contents.ts';
import { versionKey } from '../../shared/floor/state.ts';
import type { DayMind } from './day-mind.ts';

/** How far into the history, as a share of its days, a document becomes its next version. Shorter histories have fewer of them. */
const LEAST_DAYS = 10;
const WETTER_AT = 0.3;
const STANDING_AT = 0.45;
const LABEL_AT = 0.55;
const KITCHEN_AT = 0.5;
const SALTIER_AT = 0.65;
const LONGER_AT = 0.8;

/** What is changed in the book on a day: the country dough takes more water, the rye less salt, a bake is a minute longer. */
export function changeBook(mind: DayMind, days: number): void {
  const { floor, hands, day } = mind;
  const desk = hands.at('bench');
  const isThe = (share: number): boolean => days >= LEAST_DAYS && day === Math.floor(share * days);
  if (isThe(WETTER_AT)) changeLine(mind, 'country', 'water', 45);
  if (isThe(SALTIER_AT)) changeLine(mind, 'rye', 'salt', -6);
  if (isThe(STANDING_AT)) {
    const { version = 0, document = [] } = floor.state.standing ?? {};
    const standing = document.map((order) => (order.id === 'shop-buns' ? { ...order, pieces: order.pieces + 6 } : order));
    if (version > 0) floor.give({ type: 'adoptStanding', fromVersion: version, standing: [...standing] }, desk);
  }
  if (isThe(KITCHEN_AT) && floor.state.kitchen !== null) {
    const { version, document } = floor.state.kitchen;
    const vessels = document.vessels.map((vessel) => (vessel.id === 'banneton' ? { ...vessel, count: vessel.count + 4 } : vessel));
    floor.give({ type: 'adoptKitchen', fromVersion: version, kitchen: { ...document, vessels } }, desk);
  }
  if (isThe(LABEL_AT)) {
    const seeds = floor.state.ingredients?.document.find((ingredient) => ingredient.id === 'sunflower-seeds');
    if (seeds !== undefined) floor.give({ type: 'adoptIngredient', ingredient: { ...seeds, name: 'Sunflower seeds, hulled' } }, desk);
  }
  if (isThe(LONGER_AT)) {
    const version = floor.state.productVersions['milk-bun'] ?? 0;
    const product = floor.state.products[versionKey('milk-bun', version)];
    const way = product?.way.map((step) => (step.id === 'cool' ? { ...step, minutes: { ...step.minutes, target: 35 } } : step));
    if (product !== undefined && way !== undefined)
      floor.give({ type: 'adoptProduct', fromVersion: version, product: { ...product, way } }, desk);
  }
}

/** One ingredient of a formula's last part is so many grams more. */
function changeLine({ floor, hands }: DayMind, formulaId: string, ingredientId: string, byG: number): void {
  const before = newestFormula(floor.state)(formulaId);
  if (before === null) return;
  const last = before.parts.length - 1;
  const parts: Formula['parts'] = before.parts.map((part, index) =>
    index === last
      ? {
          ...part,
          items: part.items.map((line) => ('item' in line && line.item === ingredientId ? { ...line, g: line.g + byG } : line)),
        }
      : part,
  );
  const fromVersion = floor.state.formulaVersions[formulaId] ?? 0;
  floor.give({ type: 'adoptFormula', fromVersion, formula: { ...before, parts } }, hands.at('bench'));
}
