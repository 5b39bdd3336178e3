/** Two versions of the open formula are to be shown beside one another. */
export class VersionsWantedEvent extends Event {
  static readonly type = 'versions-wanted';
  readonly leftVersion: number;
  readonly rightVersion: number;

  constructor(leftVersion: number, rightVersion: number) {
    super(VersionsWantedEvent.type, { bubbles: true, composed: true });
    this.leftVersion = leftVersion;
    this.rightVersion = rightVersion;
  }
}

declare global {
  interface HTMLElementEventMap {
    'versions-wanted': VersionsWantedEvent;
  }
}
