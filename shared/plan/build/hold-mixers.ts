import type { Kitchen, Mixer } from '../../documents/kitchen.ts';
import type { Step } from '../../documents/method.ts';
import { EMPTY_G } from '../../floor/decide/sources.ts';
import type { DayDraft } from './day-draft.ts';
import { choiceOf, holdBetween, takenByChoice, type Option } from './options.ts';
import type { Chain, StepNodes, Thread } from './thread.ts';

/** Steps one after another that hold a mixer: while the bowl stands elsewhere it is free. */
interface Run {
  readonly nodes: readonly StepNodes[];
  readonly isStand: boolean;
}

/** The mixer of a dough: one for all of its mixing, held from the first step that wants it to the last, and its bowl. */
export function holdMixers(day: DayDraft, chain: Chain): void {
  const { thread } = chain;
  const isMixing = (step: Step): boolean => step.claims.some((claim) => claim.kind === 'mixer');
  const held = [...chain.nodes.values()].filter((nodes) => isMixing(nodes.step) && isHeldStill(day, thread, nodes));
  const [first] = held;
  if (first === undefined) return;
  const mixers = mixersOf(day, thread, held);
  if (mixers.length === 0) return;
  const planned = held.map(({ step }) => day.plan.step(thread, step.id)).find((step) => step !== null) ?? null;
  const priced = mixers.map((mixer, place): Option & { readonly mixer: Mixer } => ({
    resource: day.table.mixer(mixer),
    amount: 1,
    price: place * 0.25,
    state: stateIn(day, thread, mixer),
    mixer,
  }));
  const choice = priced.length > 1 ? choiceOf(day, priced, planned) : null;
  const isFreed = (nodes: StepNodes): boolean =>
    nodes.step.verb === 'stand' && mixers.some((mixer) => isFreedMeanwhile(day, thread, mixer, nodes));
  for (const { nodes, isStand } of runsOf(chain, held, isFreed)) {
    const options = priced.map((option) => ({
      ...option,
      amount: isStand && nodes.some((stand) => isFreedMeanwhile(day, thread, option.mixer, stand)) ? 0 : 1,
    }));
    const [only] = options;
    const taken =
      choice !== null
        ? takenByChoice(choice, options)
        : {
            on: { resource: only?.resource ?? 0, amount: only?.amount ?? 0 },
            states: only === undefined || only.state === null ? null : [only.state],
          };
    holdBetween(day, nodes[0]?.start ?? null, nodes.at(-1)?.end ?? null, taken, nodes);
  }
  holdBowl(day, chain, mixers, first);
}

/** What is behind counts only where the dough is still in the mixer, waiting for what comes next. */
function isHeldStill(day: DayDraft, thread: Thread, { start, rest }: StepNodes): boolean {
  if (rest !== null) return true;
  return day.steps[start.activity]?.status !== 'over' || (thread.workpiece?.mixerId ?? null) !== null;
}

/**
 * The mixers that will do, best first: that all its steps may have, that take so much and so little, and have the speeds. The
 * one that it is on, once it is on one. Of a dough on the floor that none will do for, any that its steps name.
 */
function mixersOf(day: DayDraft, thread: Thread, held: readonly StepNodes[]): readonly Mixer[] {
  const { kitchen } = day.context;
  const on = kitchen.mixers.filter((mixer) => mixer.id === thread.workpiece?.mixerId);
  if (on.length > 0) return on;
  const named = namedByAll(kitchen, held);
  const fastest = held.some(({ step }) => step.verb === 'secondSpeed') ? 2 : 1;
  const able = named.filter(
    ({ leastG, mostG, speeds }) => thread.grams >= leastG - EMPTY_G && thread.grams <= mostG + EMPTY_G && (speeds ?? fastest) >= fastest,
  );
  if (able.length > 0 || thread.place.workpieceId !== null) return able.length > 0 ? able : named;
  const { place, formula, product, grams } = thread;
  if (held.length > 0 && kitchen.mixers.length > 0)
    day.context.faults.push({
      batchKey: place.batchKey,
      formulaId: formula.id,
      productId: product?.id ?? null,
      code: 'noMixer',
      stepId: held[0]?.step.id ?? '',
      grams,
      mixerIds: named.map(({ id }) => id),
    });
  return named;
}

/** Those that every step names, in the order of the first; where no mixer is named by all, those of the first. */
function namedByAll({ mixers }: Kitchen, held: readonly StepNodes[]): readonly Mixer[] {
  const lists = held.map(({ step }) => step.claims.find((claim) => claim.kind === 'mixer')?.ids ?? []).filter((ids) => ids.length > 0);
  const [first] = lists;
  if (first === undefined) return mixers;
  const named = first.flatMap((id) => mixers.find((mixer) => mixer.id === id) ?? []);
  const byAll = named.filter(({ id }) => lists.every((ids) => ids.includes(id)));
  return byAll.length > 0 ? byAll : named;
}

/** What is held in one, and the stands apart in which a mixer may be free. */
function runsOf({ thread }: Chain, held: readonly StepNodes[], isFreed: (nodes: StepNodes) => boolean): readonly Run[] {
  const runs: { nodes: StepNodes[]; isStand: boolean }[] = [];
  let before: { readonly index: number; readonly run: { nodes: StepNodes[]; isStand: boolean } } | null = null;
  for (const nodes of held) {
    const index = thread.steps.indexOf(nodes.step);
    const isStand = isFreed(nodes);
    const goesOn = before !== null && before.index === index - 1 && !isStand && !before.run.isStand;
    const run: { nodes: StepNodes[]; isStand: boolean } = goesOn && before !== null ? before.run : { nodes: [], isStand };
    if (!goesOn) runs.push(run);
    run.nodes.push(nodes);
    before = { index, run };
  }
  return runs;
}

/** As the floor does it: the bowl comes off and stands beside while the dough stands; once it has, the dough is on no mixer. */
function isFreedMeanwhile(day: DayDraft, { lives, workpiece }: Thread, mixer: Mixer, { step }: StepNodes): boolean {
  if (lives[step.id]?.status === 'started') return (workpiece?.mixerId ?? null) === null;
  return mixer.bowlComesOff && day.context.kitchen.bowls.some((bowl) => bowl.fits.includes(mixer.id));
}

/** What the next dough meets in it. In a mixer that is in use, all that has been in it since it was cleaned. */
function stateIn(day: DayDraft, thread: Thread, mixer: Mixer): number {
  const residue = thread.workpiece?.mixerId === mixer.id ? (day.context.state.residues[mixer.id]?.allergens ?? []) : [];
  return day.table.allergens.of([...new Set([...thread.allergens, ...residue])]);
}

/** Bowls are counted where they come off: there may be more doughs in bowls than mixers, and fewer bowls than doughs. */
function holdBowl(day: DayDraft, { thread, nodes }: Chain, mixers: readonly Mixer[], first: StepNodes): void {
  const fitting = mixers.map((mixer) => day.context.kitchen.bowls.filter((bowl) => bowl.fits.includes(mixer.id)).map((bowl) => bowl.id));
  const [ids] = fitting;
  // Where mixers have bowls of their own, which bowls are taken hangs on the mixer, and a bowl is as free as its mixer.
  if (ids === undefined || ids.length === 0 || fitting.some((other) => other.join(' ') !== ids.join(' '))) return;
  const isBeside =
    mixers.some((mixer) => mixer.bowlComesOff) || thread.steps.some((step) => step.claims.some((claim) => claim.kind === 'bowl'));
  if (!isBeside) return;
  const inBowl = [...nodes.values()].filter(({ step }) => step.claims.some((claim) => claim.kind === 'mixer' || claim.kind === 'bowl'));
  const last = inBowl.at(-1);
  if (last === undefined) return;
  const during = [...nodes.values()].filter(({ step }) => between(thread, first.step, step, last.step));
  holdBetween(day, first.start, last.end, { on: { resource: day.table.bowls(ids), amount: 1 }, states: null }, during);
}

function between({ steps }: Thread, first: Step, step: Step, last: Step): boolean {
  const index = steps.indexOf(step);
  return index >= steps.indexOf(first) && index <= steps.indexOf(last);
}
