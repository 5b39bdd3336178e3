/** How rests follow the warmth of their dough, on its card and where it stands. */
export const WARMTH = {
  title: 'Ripeness',
  read: (reading: string, clock: string): string => `${reading} read ${clock}`,
  /** Reckoned from what was read. */
  nowAbout: (temperature: string): string => `now about ${temperature}`,
  about: (temperature: string): string => `About ${temperature}, not read`,
  ripe: (clock: string): string => `ripe at ${clock}`,
  between: (from: string, to: string): string => `it may be ${from} to ${to}`,
  farOff: 'not ripe within a day, as warm as it is',
  later: (moved: string): string => `${moved} later, as warm as it is`,
  earlier: (moved: string): string => `${moved} earlier, as warm as it is`,
  planned: (clock: string): string => `goes on at ${clock}, as planned`,
  taught: (factor: string, count: number): string => `This formula’s rests: ${factor}, by ${count === 1 ? '1 rest' : `${count} rests`}`,
  spread: (least: string, most: string): string => `half of them between ${least} and ${most}`,
  factor: (value: number): string => `×${value.toFixed(2)}`,
  now: 'now',
  dough: 'dough',
  ripeness: 'ripeness',
  // Where it stands.
  set: 'as the kitchen says',
  phase: (nth: number, of: number, until: string | null): string =>
    `programme ${nth} of ${of}${until === null ? ', stays' : ` till ${until}`}`,
  openTill: (clock: string): string => `open till ${clock}`,
  temperature: 'Temperature…',
  temperatureTitle: (place: string): string => `${place}: how warm is it?`,
  door: 'Door open…',
  doorTitle: (place: string): string => `${place} open, from now on: minutes`,
  programme: 'Programme…',
  programmeTitle: (place: string): string => `${place}: the programme`,
  programmePhase: (minutes: string, temperature: string): string => `${minutes} at ${temperature}`,
  programmeLast: (temperature: string): string => `then ${temperature}`,
  begin: 'Begin it now',
  beginMore: 'It cannot be taken back. No machine is started by this.',
} as const;

/** How a core goes toward its target, on its card. */
export const BAKE_CORE = {
  title: 'Core',
  unreachable: (target: string, plateau: string): string => `core ${target} cannot be reached here: water boils at ${plateau}`,
  range: (from: string, to: string | null): string => (to === null ? `not before ${from}; it may never` : `it may be ${from} to ${to}`),
  lag: 'The core is still flat: no estimate yet.',
  another: 'One more reading tells when.',
  noRise: 'The readings do not rise: no estimate.',
  notEnough: 'Core temperature is needed, not enough: crust and crumb say the rest.',
} as const;

/** A phase of a bake: until when, and what the oven is to do. */
export const BAKE_PHASE = (clock: string, what: string): string => `till ${clock}: ${what}`;
