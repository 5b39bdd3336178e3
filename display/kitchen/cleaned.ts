import type { Cleaning, Kitchen } from '../../shared/documents/kitchen.ts';

type Cleaned = Cleaning['resource'];

/** What a cleaning is of, as the value of a choice: `mixer:spiral`. */
export function cleanedKey({ kind, id }: Cleaned): string {
  return `${kind}:${id}`;
}

/** What the value of a choice says is cleaned. */
export function cleanedOf(key: string): Cleaned {
  const at = key.indexOf(':');
  return { kind: key.slice(0, at) as Cleaned['kind'], id: key.slice(at + 1) };
}

/** Everything that a cleaning can be of, by its key, as one finds it in the kitchen: decks with their oven. */
export function cleanedNames({ mixers, restPlaces, ovens }: Kitchen): Readonly<Record<string, string>> {
  const benches = restPlaces.filter((place) => place.kind === 'bench');
  return Object.fromEntries([
    ...mixers.map(({ id, name }) => [cleanedKey({ kind: 'mixer', id }), name] as const),
    ...benches.map(({ id, name }) => [cleanedKey({ kind: 'bench', id }), name] as const),
    ...ovens.flatMap((oven) => oven.decks.map(({ id, name }) => [cleanedKey({ kind: 'deck', id }), `${oven.name}, ${name}`] as const)),
  ]);
}
