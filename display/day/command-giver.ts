import type { ClientCommand } from '../../shared/floor/commands.ts';
import type { Id } from '../../shared/ids.ts';
import type { BookStore, Given } from '../formulas/book-store.ts';

/** Says things to the house. The same thing said again after no answer has the same id, so that it is done once. */
export class CommandGiver {
  readonly #store: Pick<BookStore, 'give'>;
  readonly #freshId: () => Id;
  readonly #unanswered = new Map<string, Id>();

  constructor(store: Pick<BookStore, 'give'>, freshId: () => Id) {
    this.#store = store;
    this.#freshId = freshId;
  }

  async give(command: ClientCommand): Promise<Given> {
    const key = JSON.stringify(command);
    const id = this.#unanswered.get(key) ?? this.#freshId();
    this.#unanswered.set(key, id);
    const given = await this.#store.give(id, command);
    if (given.phase !== 'unsent') this.#unanswered.delete(key);
    return given;
  }
}
