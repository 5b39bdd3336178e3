import { decksOf } from '../../shared/floor/slots.ts';
import { dailyTestMs } from '../../shared/floor/sound-test.ts';
import { houseHours } from '../floor/house-hours.ts';
import { instantOf } from '../main/planned-starts.ts';
import { daysOn } from './calendar.ts';
import type { DayMind } from './day-mind.ts';
import { bakeShare } from './house-truth.ts';
import { THE_HOUSE } from './invented-floor.ts';
import { toTenth } from './weather.ts';

const MINUTE_MS = 60_000;
const SECOND_MS = 1000;
/** A piece of dough is baked on the floor of the oven to see how hot it is there, once in so many days. */
const TEST_PIECE_EVERY = 5;
const TEST_PIECE_MIN = 8;
/** Something does not work for a while on so many days. */
const OUT_OF_ORDER_SHARE = 0.03;
const DELIVERY_SHARE = 0.35;
const CHILL_SHARE = 0.1;

/** What is done about the house in the night and the day for a date, beside the doughs. */
export function dayDeeds(mind: DayMind, zone: string): void {
  const { floor, hands, agenda, chance, weather, date } = mind;
  const eve = daysOn(date, -1);
  const at = (day: string, time: string): number => Math.max(floor.nowMs, instantOf(zone, day, time) + chance.between(-12, 12) * MINUTE_MS);
  const air = (placeId: string, celsius: number): void => {
    floor.give({ type: 'readPlace', placeId, celsius: toTenth(celsius) }, hands.at('mixer'));
  };
  for (const [day, time] of [
    [eve, '22:20'],
    [date, '03:30'],
    [date, '12:10'],
  ] as const)
    agenda.note(at(day, time), () => {
      if (chance.is(0.9)) air('warm-shelf', chance.near(weather.shelfC, 0.3));
      if (chance.is(0.6)) air('bench', chance.near(weather.roomC, 0.4));
      if (chance.is(0.8)) air('cold-room', chance.near(weather.coldC, 0.3));
    });
  if (chance.is(DELIVERY_SHARE))
    agenda.note(at(date, '06:20'), () => {
      floor.give({ type: 'openPlace', placeId: 'cold-room', minutes: chance.whole(5, 18) }, hands.at('fillings'));
    });
  if (chance.is(CHILL_SHARE))
    agenda.note(at(eve, '20:30'), () => {
      floor.give({ type: 'beginProgramme', placeId: 'retarder' }, hands.at('bench'));
    });
  if (mind.day % TEST_PIECE_EVERY === 2) agenda.note(at(eve, '21:30'), () => testPiece(mind));
  if (chance.is(OUT_OF_ORDER_SHARE)) agenda.note(at(date, '11:30'), () => breakDown(mind));
  agenda.note(at(date, '12:40'), () => clearFillings(mind));
  agenda.note(at(date, '16:20'), () => clean(mind));
  agenda.note(at(date, '15:40'), () => testSound(mind));
}

function testPiece({ floor, hands, agenda, chance }: DayMind): void {
  const [first, ...others] = decksOf(floor.state.kitchen?.document ?? { ovens: [] }).flatMap((deck) => deck.slots.map((slot) => slot.id));
  if (first === undefined) return;
  const slotId = chance.pick([first, ...others]);
  const hand = hands.at('oven');
  floor.give({ type: 'startTestPiece', slotId, referenceMin: TEST_PIECE_MIN }, hand);
  const tookMin = TEST_PIECE_MIN * bakeShare([slotId]) * chance.factor(0.02);
  agenda.note(floor.nowMs + tookMin * MINUTE_MS, () => {
    floor.give({ type: 'endTestPiece', slotId, isDone: chance.is(0.88) }, hand);
  });
}

function breakDown({ floor, hands, agenda, chance }: DayMind): void {
  const resource = chance.pick<{ kind: 'mixer' | 'deck' | 'slot'; id: string }>([
    { kind: 'mixer', id: 'planetary' },
    { kind: 'deck', id: 'top' },
    { kind: 'slot', id: 'front' },
  ]);
  const hand = hands.at('oven');
  floor.give({ type: 'blockResource', resource, why: 'outOfOrder' }, hand);
  agenda.note(floor.nowMs + chance.between(25, 150) * MINUTE_MS, () => {
    floor.give({ type: 'freeResource', resource }, hand);
  });
}

/** What is left of the day's fillings goes before its time is over; what nothing was topped with goes too. */
function clearFillings({ floor, hands, date }: DayMind): void {
  for (const { workpiece, phase } of floor.dues)
    if (workpiece.kind === 'prep' && workpiece.serviceDate <= date && phase === 'resting')
      floor.give({ type: 'discardWorkpiece', workpieceId: workpiece.id, reason: 'Rest of the filling' }, hands.at('fillings'));
}

/** The spiral and its bowl are washed; said to be clean before the time is over, or left to run out. */
function clean({ floor, hands, agenda, chance }: DayMind): void {
  const resource = { kind: 'mixer', id: 'spiral' } as const;
  const hand = hands.at('mixer');
  if (chance.is(0.06)) return;
  floor.give({ type: 'blockResource', resource, why: 'cleaning', minutes: 15 }, hand);
  if (!chance.is(0.6)) return;
  agenda.note(floor.nowMs + chance.between(8, 14) * MINUTE_MS, () => {
    floor.give({ type: 'freeResource', resource }, hand);
  });
}

/** The day's test of the loudspeakers: the wall plays it, and mostly somebody says that they heard it. */
function testSound({ floor, hands, agenda, chance }: DayMind): void {
  const dueMs = dailyTestMs(floor.state, houseHours(floor.state.house?.document ?? null), floor.nowMs);
  if (dueMs === null || dueMs > floor.nowMs) return;
  floor.give({ type: 'askDailySoundTest' }, THE_HOUSE);
  agenda.note(floor.nowMs + SECOND_MS, () => {
    floor.give({ type: 'noteSoundTestSounded' }, hands.wall);
  });
  if (chance.is(0.9))
    agenda.note(floor.nowMs + chance.between(4, 90) * SECOND_MS, () => {
      floor.give({ type: 'answerSoundTest', heard: chance.is(0.97) }, hands.at('bench'));
    });
}
