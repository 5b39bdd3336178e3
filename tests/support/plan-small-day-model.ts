import type { DayProblem, Edge, Hold, PlanResource } from '../../shared/plan/day/problem.ts';

/** All times of the model are whole multiples of so many minutes. */
export const STEP_MIN = 5;

/**
 * A day as a model in MiniZinc, in steps of time and of price, for a general solver that proves what is best. Written from
 * the definition of the problem; it knows no way of making a plan. What it leaves out it refuses: times between steps, idle
 * prices, moved minutes, orders that come first.
 */
export function modelOf(problem: DayProblem, { horizonSteps, mostOverSteps, priceStep }: ModelLimits): string {
  refuse(problem);
  const time: Time = (activity, edge) =>
    `(s[${activity + 1}]${edge === 'end' ? ` + ${stepsOf(problem.activities[activity]?.durationS ?? 0)}` : ''})`;
  const priced = (price: number): number => wholeOf((price * STEP_MIN) / priceStep, `the price ${price}`);
  const lines: string[] = [`array[1..${problem.activities.length}] of var 0..${horizonSteps}: s;`];
  const costs: string[] = [];
  problem.choices.forEach(({ options, fixedOption }, index) => {
    lines.push(`var ${fixedOption ?? 0}..${fixedOption ?? options.length - 1}: c${index};`);
    if (options.some((option) => option.price > 0))
      costs.push(`[${options.map((option) => wholeOf(option.price / priceStep, `the price ${option.price}`)).join(', ')}][c${index} + 1]`);
  });
  problem.activities.forEach(({ releaseS, fixedStartS, pinnedStartS }, index) => {
    lines.push(
      fixedStartS === null
        ? `constraint s[${index + 1}] >= ${stepsOf(releaseS)};`
        : `constraint s[${index + 1}] = ${stepsOf(fixedStartS)};`,
    );
    if (pinnedStartS !== null) costs.push(`${priced(500)} * abs(s[${index + 1}] - ${stepsOf(pinnedStartS)})`);
  });
  problem.lags.forEach((lag, index) => {
    lines.push(
      `var ${stepsOf(lag.minS)}..${2 * horizonSteps}: lag${index} = ${time(lag.to, lag.toEdge)} - ${time(lag.from, lag.fromEdge)};`,
    );
    if (lag.mostS !== null) {
      lines.push(`var 0..${mostOverSteps}: over${index};`, `constraint over${index} >= lag${index} - ${stepsOf(lag.mostS)};`);
      costs.push(`${priced(lag.spoilPrice)} * over${index}`);
    }
    if (lag.targetS !== null) costs.push(`${priced(lag.awayPrice)} * abs(lag${index} - ${stepsOf(lag.targetS)})`);
  });
  for (const goal of problem.goals) {
    const at = time(goal.activity, goal.edge);
    costs.push(
      `${priced(goal.latePrice)} * max(0, ${at} - ${stepsOf(goal.dueS)})`,
      `${priced(goal.earlyPrice)} * max(0, ${stepsOf(goal.dueS)} - ${at})`,
    );
    if (goal.fresh !== null)
      costs.push(
        `${priced(goal.fresh.price)} * max(0, ${stepsOf(goal.dueS)} - ${time(goal.fresh.activity, goal.fresh.edge)} - ${stepsOf(goal.fresh.mostS)})`,
      );
  }
  problem.resources.forEach((resource, index) => lines.push(...resourceLines(problem, resource, index, time, horizonSteps)));
  lines.push(
    `var 0..${MOST_COST}: cost;`,
    `constraint cost = ${costs.join('\n  + ')};`,
    'solve :: int_search(s, smallest, indomain_min, complete) minimize cost;',
  );
  return lines.join('\n');
}

/** In steps of price, far above what any small day costs. */
const MOST_COST = 100_000_000;

/** What the model may be bounded by without losing the best, which is to be checked of what it finds. */
export interface ModelLimits {
  readonly horizonSteps: number;
  /** Most steps past a lag's most. */
  readonly mostOverSteps: number;
  readonly priceStep: number;
}

type Time = (activity: number, edge: Edge) => string;

interface Use {
  readonly hold: Hold;
  /** By which this resource is taken: an option of a choice; null where there is none. */
  readonly when: { readonly choice: number; readonly option: number } | null;
  readonly amount: number;
  readonly state: number | null;
  readonly from: string;
  readonly to: string;
  /** Null: as long as lies between the two. */
  readonly lastsSteps: number | null;
}

function resourceLines(problem: DayProblem, resource: PlanResource, index: number, time: Time, horizonSteps: number): string[] {
  const uses = usesOf(problem, index, time);
  if (uses.length === 0) return [];
  const lines: string[] = [];
  const most = Math.max(resource.capacity, ...(resource.calendar ?? []).map((step) => step.capacity));
  const tasks = uses.map(({ from, to, lastsSteps, amount, when }, at) => {
    const lasts = lastsSteps === null ? `lasts${index}_${at}` : `${lastsSteps}`;
    if (lastsSteps === null) lines.push(`var 0..${horizonSteps}: ${lasts} = ${to} - ${from};`);
    return { from, lasts, amount: when === null ? `${amount}` : `(${amount} * bool2int(c${when.choice} = ${when.option}))` };
  });
  // What a calendar takes away is held by nobody.
  for (const { fromS, toS, capacity } of spansOf(resource))
    if (capacity < most) tasks.push({ from: `${stepsOf(fromS)}`, lasts: `${stepsOf(toS - fromS)}`, amount: `${most - capacity}` });
  lines.push(
    `constraint cumulative([${tasks.map((task) => task.from).join(', ')}], [${tasks.map((task) => task.lasts).join(', ')}], [${tasks.map((task) => task.amount).join(', ')}], ${most});`,
  );
  uses.forEach((a, at) => {
    for (const b of uses.slice(at + 1)) lines.push(...pairLines(resource, a, b));
    const firstSteps =
      resource.stateAtFirst === null || a.state === null ? 0 : stepsOf(resource.setupS?.[resource.stateAtFirst]?.[a.state] ?? 0);
    if (firstSteps > 0) lines.push(`constraint ${given([a])}${a.from} >= ${firstSteps};`);
  });
  return lines;
}

/** Two that cannot be there at once: one after the other, with the set-up between them. */
function pairLines(resource: PlanResource, a: Use, b: Use): string[] {
  if (a.when !== null && b.when !== null && a.when.choice === b.when.choice && a.when.option !== b.when.option) return [];
  const isApart =
    a.amount + b.amount > resource.capacity || (resource.sharesOneState && a.state !== b.state && a.state !== null && b.state !== null);
  const setupSteps = (before: Use, after: Use): number =>
    before.state === null || after.state === null ? 0 : stepsOf(resource.setupS?.[before.state]?.[after.state] ?? 0);
  const isSetUp = setupSteps(a, b) > 0 || setupSteps(b, a) > 0;
  if (!isApart && !isSetUp) return [];
  if (!isApart) throw new Error('a set-up between two that may be there at once is not in the model');
  return [`constraint ${given([a, b])}(${a.to} + ${setupSteps(a, b)} <= ${b.from} \\/ ${b.to} + ${setupSteps(b, a)} <= ${a.from});`];
}

function given(uses: readonly Use[]): string {
  const all = uses.flatMap(({ when }) => (when === null ? [] : [`c${when.choice} = ${when.option}`]));
  return all.length === 0 ? '' : `(${all.join(' /\\ ')}) -> `;
}

function usesOf(problem: DayProblem, resource: number, time: Time): Use[] {
  return problem.holds.flatMap((hold): Use[] => {
    const isOne = hold.from === hold.to && hold.fromEdge === 'start' && hold.toEdge === 'end';
    const lastsSteps = isOne ? stepsOf((problem.activities[hold.from]?.durationS ?? 0) + hold.afterS) : null;
    const ends = {
      hold,
      lastsSteps,
      from: time(hold.from, hold.fromEdge),
      to: `(${time(hold.to, hold.toEdge)} + ${stepsOf(hold.afterS)})`,
    };
    const { on } = hold;
    if (!('choice' in on))
      return on.resource === resource ? [{ ...ends, when: null, amount: on.amount, state: hold.states?.[0] ?? null }] : [];
    const options = problem.choices[on.choice]?.options ?? [];
    return options.flatMap((option, at) =>
      option.resource === resource
        ? [{ ...ends, when: { choice: on.choice, option: at }, amount: on.amounts[at] ?? 0, state: hold.states?.[at] ?? null }]
        : [],
    );
  });
}

function spansOf(resource: PlanResource): { fromS: number; toS: number; capacity: number }[] {
  const steps = [{ fromS: 0, capacity: resource.capacity }, ...(resource.calendar ?? [])];
  return steps
    .map((step, index) => ({ ...step, toS: steps[index + 1]?.fromS ?? step.fromS + 86_400 }))
    .filter((span) => span.toS > span.fromS);
}

function refuse(problem: DayProblem): void {
  if (problem.resources.some((resource) => resource.idlePrice > 0)) throw new Error('idle prices are not in the model');
  if (problem.activities.some((activity) => activity.previousStartS !== null)) throw new Error('moved minutes are not in the model');
  if (problem.goals.some((goal) => goal.isFirst)) throw new Error('what comes first is not in the model');
}

/** Where every time is a whole number of steps, a best plan begins everything at one. */
function stepsOf(seconds: number): number {
  return wholeOf(seconds / (STEP_MIN * 60), `${seconds} s`);
}

function wholeOf(number: number, name: string): number {
  const whole = Math.round(number);
  if (Math.abs(whole - number) > 1e-9) throw new Error(`${name} is no whole number of steps`);
  return whole;
}
