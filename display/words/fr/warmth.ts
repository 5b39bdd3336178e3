/** How rests follow the warmth of their dough, on its card and where it stands. */
export const WARMTH = {
  title: 'Maturité',
  read: (reading: string, clock: string): string => `${reading} relevé à ${clock}`,
  /** Reckoned from what was read. */
  nowAbout: (temperature: string): string => `environ ${temperature} maintenant`,
  about: (temperature: string): string => `Environ ${temperature}, non relevé`,
  ripe: (clock: string): string => `mûre à ${clock}`,
  between: (from: string, to: string): string => `peut-être de ${from} à ${to}`,
  farOff: 'pas mûre d’ici un jour, à cette température',
  later: (moved: string): string => `${moved} plus tard, à cette température`,
  earlier: (moved: string): string => `${moved} plus tôt, à cette température`,
  planned: (clock: string): string => `suite à ${clock}, comme prévu`,
  taught: (factor: string, count: number): string => `Repos de cette recette\u00a0: ${factor}, d’après ${count}`,
  spread: (least: string, most: string): string => `la moitié entre ${least} et ${most}`,
  factor: (value: number): string => `×${value.toFixed(2).replace('.', ',')}`,
  now: 'maintenant',
  dough: 'pâte',
  ripeness: 'maturité',
  // Where it stands.
  set: 'selon le fournil',
  phase: (nth: number, of: number, until: string | null): string =>
    `programme ${nth} sur ${of}${until === null ? ', reste' : ` jusqu’à ${until}`}`,
  openTill: (clock: string): string => `ouvert jusqu’à ${clock}`,
  temperature: 'Température…',
  temperatureTitle: (place: string): string => `${place}\u00a0: combien de degrés\u202f?`,
  door: 'Porte ouverte…',
  doorTitle: (place: string): string => `${place} ouvert dès maintenant\u00a0: minutes`,
  programme: 'Programme…',
  programmeTitle: (place: string): string => `${place}\u00a0: le programme`,
  programmePhase: (minutes: string, temperature: string): string => `${minutes} à ${temperature}`,
  programmeLast: (temperature: string): string => `puis ${temperature}`,
  begin: 'Le lancer maintenant',
  beginMore: 'Cela ne se reprend pas. Aucune machine n’est mise en marche.',
} as const;

/** How a core goes toward its target, on its card. */
export const BAKE_CORE = {
  title: 'Cœur',
  unreachable: (target: string, plateau: string): string => `cœur à ${target} impossible ici\u00a0: l’eau bout à ${plateau}`,
  range: (from: string, to: string | null): string =>
    to === null ? `pas avant ${from}\u202f; peut-être jamais` : `peut-être de ${from} à ${to}`,
  lag: 'Le cœur ne monte pas encore\u00a0: pas d’estimation.',
  another: 'Une mesure de plus dira quand.',
  noRise: 'Les mesures ne montent pas\u00a0: pas d’estimation.',
  notEnough: 'La température à cœur est nécessaire, pas suffisante\u00a0: croûte et mie disent le reste.',
} as const;

/** A phase of a bake: until when, and what the oven is to do. */
export const BAKE_PHASE = (clock: string, what: string): string => `jusqu’à ${clock}\u00a0: ${what}`;
