import { folded } from '../../book/folded.ts';

/** What a row of orders may say, in the order in which columns without a heading stand. */
export const ORDER_FIELDS = ['product', 'pieces', 'readyAt', 'form', 'freshMin', 'loadingMin', 'label', 'weight', 'date'] as const;
export type OrderField = (typeof ORDER_FIELDS)[number];

/** Without these a row is no order. */
export const NEEDED_FIELDS: readonly OrderField[] = ['product', 'pieces', 'readyAt'];

/** Headings that are understood, in English, German and French. */
const HEADINGS: Readonly<Record<OrderField, readonly string[]>> = {
  product: ['product', 'item', 'produkt', 'artikel', 'produit', 'article'],
  pieces: ['pieces', 'pcs', 'quantity', 'qty', 'stück', 'stk', 'stückzahl', 'anzahl', 'menge', 'pièces', 'quantité', 'qté', 'nombre'],
  readyAt: [
    'ready by',
    'ready at',
    'ready',
    'time',
    'fertig bis',
    'fertig um',
    'fertig',
    'uhrzeit',
    'zeit',
    'prêt pour',
    'prêt à',
    'prêt',
    'heure',
  ],
  form: ['cooled or hot', 'form', 'kalt oder heiß', 'abgekühlt oder heiß', 'froid ou chaud', 'forme'],
  freshMin: [
    'fresh',
    'fresh min',
    'out of the oven at most',
    'frisch',
    'frische',
    'höchstens aus dem ofen',
    'frais',
    'fraîcheur',
    'sorti du four au plus',
  ],
  loadingMin: ['loading', 'loading min', 'verladen', 'laden', 'chargement'],
  label: ['for whom', 'for', 'label', 'customer', 'für wen', 'für', 'kunde', 'pour qui', 'pour', 'client'],
  weight: ['importance', 'priority', 'weight', 'wichtigkeit', 'gewichtung', 'priorität', 'priorité', 'poids'],
  date: ['date', 'day', 'datum', 'tag', 'jour'],
};

const FIELD_OF = new Map(ORDER_FIELDS.flatMap((field) => HEADINGS[field].map((heading) => [folded(heading), field] as const)));

/** Which field a heading is of; null where it is none that is understood. What stands in brackets (a unit) is nothing to it. */
export function fieldOfHeading(heading: string): OrderField | null {
  return FIELD_OF.get(folded(heading.replace(/[([].*?[)\]]/g, ''))) ?? null;
}

/** Headings that tell a row of headings from a row of an order. */
const LEAST_HEADINGS = 2;

/** The columns that a row heads, null for those that are not understood; null where it is no row of headings. */
export function headingsIn(cells: readonly string[]): readonly (OrderField | null)[] | null {
  const fields = cells.map(fieldOfHeading);
  return new Set(fields.filter((field) => field !== null)).size < LEAST_HEADINGS ? null : fields;
}
