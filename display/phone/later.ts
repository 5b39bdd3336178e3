/**
 * Loads what a page does not need to show the floor, once it shows it: panels, pictures, what is said of places. Not only when it is wanted:
 * a phone that has lost its link by then opens every card all the same.
 */
export class Later {
  private isAsked = false;

  /** Asks for it, once; again where the link was gone. Until it is there its elements show nothing. */
  load(): void {
    if (this.isAsked) return;
    this.isAsked = true;
    import('./later-parts.ts').catch(() => (this.isAsked = false));
  }
}
