import type { Deck } from '../../documents/kitchen.ts';
import type { Step } from '../../documents/method.ts';

interface BakeState {
  readonly firstC: number;
  readonly lastC: number;
}

/**
 * What a deck can be: baking by a programme (its temperatures and its steam, one after another; how long each lasts is the
 * load's own), or standing at a temperature with nothing in it. Loads share it while their programmes are the same.
 */
export class BakeStates {
  private readonly byName = new Map<string, number>();
  private readonly states: BakeState[] = [];

  private readonly setC: number;

  /** `setC`: what the deck is set to, for phases that name no temperature. */
  constructor(setC: number) {
    this.setC = setC;
  }

  programme(bake: Step): number {
    const phases = (bake.bake ?? []).map(({ temperatureC, steam }) => ({ celsius: temperatureC ?? this.setC, steam: steam ?? '' }));
    const name = phases.map(({ celsius, steam }) => `${celsius}${steam}`).join('>');
    return this.named(name, { firstC: phases[0]?.celsius ?? this.setC, lastC: phases.at(-1)?.celsius ?? this.setC });
  }

  standing(): number {
    return this.named('', { firstC: this.setC, lastC: this.setC });
  }

  private named(name: string, state: BakeState): number {
    const known = this.byName.get(name);
    if (known !== undefined) return known;
    this.byName.set(name, this.states.length);
    return this.states.push(state) - 1;
  }

  /**
   * Seconds from where one programme ends to where the next begins, the same again too: one that falls has to be heated up
   * to. Null where the deck is as hot as it is wanted at once.
   */
  setupS({ heatKPerMin, coolKPerMin }: Deck): readonly (readonly number[])[] | null {
    const rates = { up: heatKPerMin, down: coolKPerMin };
    const matrix = this.states.map((before) =>
      this.states.map((after) => {
        const byK = after.firstC - before.lastC;
        const rate = byK > 0 ? rates.up : rates.down;
        return rate === undefined ? 0 : Math.ceil((Math.abs(byK) / rate) * 60);
      }),
    );
    return matrix.some((row) => row.some((seconds) => seconds > 0)) ? matrix : null;
  }
}
