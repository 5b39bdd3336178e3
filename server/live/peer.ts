/** The other end of one websocket, as far as a session needs it. */
export interface Peer {
  send(text: string): void;
  /** Bytes that wait unsent. */
  readonly backlogBytes: number;
  close(code: number, reason: string): void;
}
