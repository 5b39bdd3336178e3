/** Version of the websocket's messages. A test holds the hash of the schemas against it. */
export const PROTOCOL_VERSION = 1;

/** Close codes of `/live` (RFC 6455 leaves 4000–4999 to applications). */
export const CLOSE = {
  /** The message was not one that this protocol knows. */
  badMessage: 4400,
  /** The device may not be here. */
  forbidden: 4403,
  /** Nothing was heard of the client for too long. */
  silent: 4406,
  /** The client fell too far behind; connect again and start from a snapshot. */
  tooSlow: 4408,
  /** What the device may do was changed: connect again. */
  accessChanged: 4409,
  /** The server is going down in good order. */
  goingDown: 4410,
  /** The page speaks another version of the protocol: load it again. */
  otherVersion: 4426,
  /** More messages than anybody taps; connect again after a while. */
  tooMany: 4427,
  /** More clients than the server takes. */
  full: 4429,
} as const;

/** Largest message that the server takes from a client, in bytes: the kitchen of a plant with twenty ovens is one. */
export const MAX_UP_BYTES = 64 * 1024;
/** Clients that one server takes at once. */
export const MAX_CLIENTS = 400;
/** What may wait unsent for one client before it is dropped to a fresh snapshot, in bytes. */
export const MAX_BACKLOG_BYTES = 1024 * 1024;
/** More events than this missing, and the client gets a snapshot instead. */
export const MAX_CATCH_UP_EVENTS = 500;
/** A client that has said nothing for so long is taken for gone, and the other way round. Real time. */
export const SILENCE_MS = 15_000;
/** Pings on connecting, and how often again. Real time. */
export const PING_BURST = 8;
export const PING_EVERY_MS = 60_000;
/** The t1 of a pong that answers no ping: the server's clock was set, and whoever goes by it has to ask anew. */
export const UNASKED_T1 = 0;
/** How often a client says that it is still there. Real time. */
export const HEARTBEAT_MS = 5_000;
