/** The zone that the browser is in (IANA name): what stands in for the house's until the house has said its own. */
export function browserZone(): string {
  return new Intl.DateTimeFormat().resolvedOptions().timeZone;
}
