/** What the start page says. */
export const START = {
  lead: 'Every dough in the house, on one wall and on every phone.',
  pages: 'Pages',
  address: 'This kitchen’s address:',
} as const;

/** The pages by their addresses, in the order in which they are offered: name and whom it is for. */
export function startLinks(): readonly { readonly href: string; readonly name: string; readonly more: string }[] {
  return [
    { href: '/wall', name: 'Wall', more: 'for the screen that everybody sees' },
    { href: '/wall/setup', name: 'Setting up the wall', more: 'size, distance, language and look of that screen' },
    { href: '/phone', name: 'Phone', more: 'for the hand, wherever it is' },
    { href: '/station', name: 'Station', more: 'for a screen fixed beside mixer, bench or oven' },
    { href: '/day', name: 'The day', more: 'orders, the plan that fits them, the day sheet' },
    { href: '/weigh', name: 'Weigh out', more: 'what goes into the bowl, line by line, and the water' },
    { href: '/formulas', name: 'Formula book', more: 'formulas, methods, products and batch sizes' },
    { href: '/kitchen', name: 'Kitchen', more: 'mixers, places, vessels and ovens, and the house’s settings' },
    { href: '/records', name: 'Records', more: 'what happened, batch by batch: search, trace, print' },
    { href: '/devices', name: 'Devices', more: 'who was let in, and letting in more' },
  ];
}
