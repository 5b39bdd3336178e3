import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AT_ONCE_MIN, criticalChain, type ChainStep } from '../../shared/records/critical-chain.ts';

const MINUTE_MS = 60_000;

/** A step in minutes: from, to, planned from, planned to, after which, holding what. */
function step(
  id: string,
  [from, to]: readonly [number, number],
  [plannedFrom, plannedTo]: readonly [number, number],
  afterIds: readonly string[] = [],
  resources: readonly string[] = [],
): ChainStep {
  return {
    id,
    pieceId: id.split(' ')[0] ?? '',
    startMs: from * MINUTE_MS,
    endMs: to * MINUTE_MS,
    plannedStartMs: plannedFrom * MINUTE_MS,
    plannedEndMs: plannedTo * MINUTE_MS,
    afterIds,
    resources,
  };
}

describe('DY1 the chain through a day goes back to what kept each step from beginning earlier', () => {
  it('a mixer that another dough held, a rest that took longer, hands that did not come', () => {
    const steps = [
      step('A mix', [0, 20], [0, 12], [], ['mixer']),
      step('B weigh', [5, 10], [5, 10]),
      step('B mix', [21, 33], [12, 24], ['B weigh'], ['mixer']),
      step('B rest', [33, 103], [24, 84], ['B mix']),
      step('B fold', [115, 118], [84, 87], ['B rest']),
    ];
    const chain = criticalChain(steps, 'B fold');
    expect(chain.map(({ stepId, link }) => [stepId, link.kind])).toEqual([
      ['A mix', 'begin'],
      ['B mix', 'resource'],
      ['B rest', 'dough'],
      ['B fold', 'hands'],
    ]);
    expect(chain.map(({ waitedMin, overMin }) => [waitedMin, overMin])).toEqual([
      [0, 8],
      [1, 0],
      [0, 10],
      [12, 0],
    ]);
  });

  it('what was planned to wait did not wait', () => {
    const steps = [step('A shape', [0, 10], [0, 10]), step('A load', [40, 42], [40, 42], ['A shape'])];
    expect(criticalChain(steps, 'A load').map(({ waitedMin }) => waitedMin)).toEqual([0, 0]);
  });

  it('its minutes add up to how late the last step ended, and it goes from no step to a later one', () => {
    const days = fc.array(
      fc.record({
        piece: fc.nat(3),
        lasts: fc.integer({ min: 1, max: 60 }),
        waits: fc.nat(30),
        over: fc.integer({ min: -10, max: 20 }),
        mixer: fc.boolean(),
      }),
      { minLength: 1, maxLength: 30 },
    );
    fc.assert(
      fc.property(days, (made) => {
        const ends = new Map<number, { id: string; to: number; plannedTo: number }>();
        const steps = made.map(({ piece, lasts, waits, over, mixer }, index): ChainStep => {
          const before = ends.get(piece);
          const [from, plannedFrom] = [(before?.to ?? 0) + waits, before?.plannedTo ?? 0];
          const [to, plannedTo] = [from + Math.max(1, lasts + over), plannedFrom + lasts];
          const id = `${piece} ${index}`;
          ends.set(piece, { id, to, plannedTo });
          return step(id, [from, to], [plannedFrom, plannedTo], before === undefined ? [] : [before.id], mixer ? ['mixer'] : []);
        });
        const last = steps.reduce((latest, other) => (other.endMs > latest.endMs ? other : latest));
        const chain = criticalChain(steps, last.id);
        const byId = new Map(steps.map((each) => [each.id, each]));
        chain.forEach(({ stepId, link }, index) => {
          const from = link.kind === 'begin' ? null : link.fromId;
          if (from === null) return;
          expect(from).toBe(chain[index - 1]?.stepId);
          expect(byId.get(from)?.endMs).toBeLessThanOrEqual(byId.get(stepId)?.startMs ?? 0);
          const gapMin = ((byId.get(stepId)?.startMs ?? 0) - (byId.get(from)?.endMs ?? 0)) / MINUTE_MS;
          if (link.kind !== 'hands') expect(gapMin).toBeLessThanOrEqual(AT_ONCE_MIN);
        });
        // Where each link is one of the plan's own, all minutes of the lateness are told.
        if (chain.every(({ link }) => link.kind !== 'resource')) {
          const told = chain.reduce((sum, { waitedMin, overMin }) => sum + waitedMin + overMin, 0);
          expect(told).toBeCloseTo((last.endMs - (last.plannedEndMs ?? 0)) / MINUTE_MS, 6);
        }
      }),
      { numRuns: 300 },
    );
  });
});
