/** How rests follow the warmth of their dough, on its card and where it stands. */
export const WARMTH = {
  title: 'Reife',
  read: (reading: string, clock: string): string => `${reading} gemessen ${clock}`,
  /** Reckoned from what was read. */
  nowAbout: (temperature: string): string => `jetzt etwa ${temperature}`,
  about: (temperature: string): string => `Etwa ${temperature}, nicht gemessen`,
  ripe: (clock: string): string => `reif um ${clock}`,
  between: (from: string, to: string): string => `vielleicht ${from} bis ${to}`,
  farOff: 'nicht reif binnen eines Tages, so warm wie er ist',
  later: (moved: string): string => `${moved} später, so warm wie er ist`,
  earlier: (moved: string): string => `${moved} früher, so warm wie er ist`,
  planned: (clock: string): string => `weiter um ${clock}, wie geplant`,
  taught: (factor: string, count: number): string => `Ruhen dieses Rezepts: ${factor}, aus ${count}`,
  spread: (least: string, most: string): string => `die Hälfte zwischen ${least} und ${most}`,
  factor: (value: number): string => `×${value.toFixed(2).replace('.', ',')}`,
  now: 'jetzt',
  dough: 'Teig',
  ripeness: 'Reife',
  // Where it stands.
  set: 'wie in der Backstube festgelegt',
  phase: (nth: number, of: number, until: string | null): string =>
    `Programm ${nth} von ${of}${until === null ? ', bleibt' : ` bis ${until}`}`,
  openTill: (clock: string): string => `offen bis ${clock}`,
  temperature: 'Temperatur…',
  temperatureTitle: (place: string): string => `${place}: wie warm?`,
  door: 'Tür offen…',
  doorTitle: (place: string): string => `${place} offen, von jetzt an: Minuten`,
  programme: 'Programm…',
  programmeTitle: (place: string): string => `${place}: das Programm`,
  programmePhase: (minutes: string, temperature: string): string => `${minutes} bei ${temperature}`,
  programmeLast: (temperature: string): string => `dann ${temperature}`,
  begin: 'Jetzt beginnen',
  beginMore: 'Das lässt sich nicht zurücknehmen. Keine Maschine startet dadurch.',
} as const;

/** How a core goes toward its target, on its card. */
export const BAKE_CORE = {
  title: 'Kern',
  unreachable: (target: string, plateau: string): string => `Kern ${target} ist hier nicht zu erreichen: Wasser siedet bei ${plateau}`,
  range: (from: string, to: string | null): string => (to === null ? `nicht vor ${from}; vielleicht nie` : `vielleicht ${from} bis ${to}`),
  lag: 'Der Kern steigt noch nicht: noch keine Schätzung.',
  another: 'Eine Messung mehr sagt, wann.',
  noRise: 'Die Messungen steigen nicht: keine Schätzung.',
  notEnough: 'Die Kerntemperatur ist nötig, aber nicht genug: Kruste und Krume sagen den Rest.',
} as const;

/** A phase of a bake: until when, and what the oven is to do. */
export const BAKE_PHASE = (clock: string, what: string): string => `bis ${clock}: ${what}`;
