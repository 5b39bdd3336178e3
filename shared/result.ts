/** The outcome of something that may be refused for a reason the user can act on. Bugs throw instead. */
export type Result<Value, Fault> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly fault: Fault };

/** Wraps a value that was accepted. */
export function accepted<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

/** Wraps the reason for which something was refused. */
export function refused<Fault>(fault: Fault): { readonly ok: false; readonly fault: Fault } {
  return { ok: false, fault };
}

/** Throws on a state that only a bug can produce; left on in production. */
export function assert(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`assertion failed: ${message}`);
}

/** Marks the branch that the types say cannot be reached. */
export function unreachable(value: never): never {
  throw new Error(`unreachable: ${JSON.stringify(value)}`);
}
