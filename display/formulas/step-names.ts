import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { Claim, Step } from '../../shared/documents/method.ts';
import { unreachable } from '../../shared/result.ts';
import { METHOD } from '../words/method.ts';
import { VERBS } from '../words/verbs.ts';
import type { EditorContext } from './editor-context.ts';

type Options = Readonly<Record<string, string>>;

/** Names by ids, of things that have both. */
export function namesOf(things: readonly { readonly id: string; readonly name: string }[]): Options {
  return Object.fromEntries(things.map(({ id, name }) => [id, name]));
}

/** Steps by their keys, as one finds them in the list: number and verb. */
export function stepNames(steps: readonly Step[], first = 1): Options {
  return Object.fromEntries(steps.map((step, index) => [step.id, `${index + first} ${VERBS[step.verb].running}`]));
}

/** What claims of a kind may name. */
export function claimNames(kind: Claim['kind'], kitchen: Kitchen): Options {
  switch (kind) {
    case 'mixer':
      return namesOf(kitchen.mixers);
    case 'bowl':
      return namesOf(kitchen.bowls);
    case 'restPlace':
    case 'bench':
      return namesOf(kitchen.restPlaces);
    case 'vessel':
      return namesOf(kitchen.vessels);
    case 'deck':
      return Object.fromEntries(kitchen.ovens.flatMap((oven) => oven.decks.map((deck) => [deck.id, `${oven.name}, ${deck.name}`])));
    case 'hands':
      return namesOf(kitchen.stations);
    default:
      return unreachable(kind);
  }
}

/** Slots by their ids, as one finds them: oven, deck, slot. */
export function slotNames({ ovens }: Kitchen): Options {
  return Object.fromEntries(
    ovens.flatMap((oven) => oven.decks.flatMap((deck) => deck.slots.map(({ id, name }) => [id, `${oven.name}, ${deck.name}, ${name}`]))),
  );
}

/** What can go in: ingredients, and what other formulas make, each under its heading. Keys say which of the two: `item:salt`. */
export function additionChoices({ ingredients, entries }: EditorContext): Readonly<Record<string, Options>> {
  const taken = entries.filter(({ kind }) => kind !== 'dough');
  return {
    ...(taken.length === 0 ? {} : { [METHOD.formulas]: prefixed('formula', taken) }),
    [METHOD.ingredients]: prefixed('item', ingredients),
  };
}

/** The name of what goes in. */
export function additionName(
  { item, formula }: { readonly item?: string | undefined; readonly formula?: string | undefined },
  context: EditorContext,
): string {
  if (item !== undefined) return context.ingredients.find(({ id }) => id === item)?.name ?? item;
  return context.entries.find(({ id }) => id === formula)?.name ?? formula ?? '';
}

function prefixed(prefix: 'item' | 'formula', things: readonly { readonly id: string; readonly name: string }[]): Options {
  const byName = things.toSorted((a, b) => a.name.localeCompare(b.name));
  return Object.fromEntries(byName.map(({ id, name }) => [`${prefix}:${id}`, name]));
}
