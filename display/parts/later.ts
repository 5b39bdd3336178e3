/**
 * Loads what a page does not need to show the floor, once it shows it: panels, pictures, what is said of places. Not only when it is wanted:
 * a phone that has lost its link by then opens every card all the same.
 */
export class Later {
  private isAsked = false;
  private readonly parts: () => Promise<unknown>;

  /** `parts` imports them. */
  constructor(parts: () => Promise<unknown>) {
    this.parts = parts;
  }

  /** Asks for it, once; again where the link was gone. Until it is there its elements show nothing. */
  load(): void {
    if (this.isAsked) return;
    this.isAsked = true;
    this.parts().catch(() => (this.isAsked = false));
  }
}
