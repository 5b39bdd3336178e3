import { describe, expect, it } from 'vitest';
import type { Plant } from './support/plant.ts';
import * as plants from './support/plants.ts';
import { runSeed } from './support/sim-seeds.ts';
import type { Rule } from './support/violation.ts';

/** Seeds that a planted fault may hide in. */
const SEEDS = 150;

/** The rule that the first seed to notice says is broken, or null where none noticed. */
async function noticed(plant: () => Plant): Promise<Rule | null> {
  for (let seed = 1; seed <= SEEDS; seed += 1) {
    const { violation } = await runSeed(seed, plant());
    if (violation !== null) return violation.rule;
  }
  return null;
}

describe('the invariants notice a fault that is put in on purpose', () => {
  const faults: readonly (readonly [what: string, plant: () => Plant, rules: readonly Rule[]])[] = [
    ['acknowledging and publishing before the disk has it', plants.hasty, ['S2']],
    ['acknowledging refusals that are not kept', plants.dropsRefusals, ['S2']],
    ['acknowledging taps whose events are not kept', plants.dropsEvents, ['S2']],
    ['counting a doubled command twice', plants.countsTwice, ['S2', 'S3']],
    ['answering a repeat otherwise', plants.answersAnew, ['S3']],
    ['starting from less than the journal has', plants.startsShort, ['S1']],
    ['losing kept taps at a reload', plants.keepsNoTaps, ['S4']],
    ['telling pages other things than the journal has', plants.tellsOtherMinutes, ['S4']],
    ['deciding by a clock that is fast', plants.runsFast, ['S5', 'S8']],
    ['not noticing that the clock was set or the machine slept', plants.ignoresClock, ['S5']],
    ['raising no calls', plants.raisesNothing, ['S5']],
    ['raising calls twice', plants.raisesTwice, ['S5']],
    ['moving the floor by less than the clock was set', plants.jumpsShort, ['S5', 'S8']],
    ['asking two devices for one burst', plants.soundsTwice, ['S6']],
    ['sounding nothing', plants.soundsNothing, ['S6']],
    ['giving an order while another is out', plants.ordersTwice, ['S16', 'S6']],
    ['asking for tests all day', plants.testsOften, ['S14']],
    ['noting a burst that nobody was asked for', plants.notesSilence, ['S6']],
    ['letting both of two thumbs on a step count', plants.bothCount, ['S7', 'S5']],
    ['telling the wrong time of who was first', plants.tellsWrongFirst, ['S7']],
    ['taking taps for earlier than they were', plants.tapsEarly, ['S8']],
    ['taking taps for later than they were', plants.tapsLate, ['S8']],
    ['leaving events out', plants.skipsEvents, ['S9']],
    ['telling events twice', plants.tellsTwice, ['S9']],
    ['telling pages the wrong time', plants.tellsWrongTime, ['S10']],
  ];

  it.each(faults)('%s', async (_what, plant, rules) => {
    expect(rules).toContain(await noticed(plant));
  });
});
