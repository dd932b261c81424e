import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { ClosedFor, Paddock } from '../../farm/paddock.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Judgements } from '../../tables/judgements.js';
import { formatDate } from '../../units/dates.js';
import { formatValue } from '../../units/format.js';
import { moved, movesMeant, placeNow, type AssumedMove } from '../pasture/moves-assumed.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { toldWithBefore } from '../pasture/move-told.js';

/** Ground that nobody can graze: under water, or with its fence down. */
export interface PaddockLost {
  readonly paddockId: string;
  /** Last day on which it is lost; left out where it is for good. */
  readonly until?: PlainDate;
  readonly why: Extract<ClosedFor, 'wet' | 'other'>;
}

/** So far ahead nobody plans grass: what is lost for good is closed until then. */
const FOR_GOOD_DAYS = 5 * 366;

/** The paddock with the days on which it is lost, as it is saved. */
export function closedBy(lost: PaddockLost, paddock: Paddock, today: PlainDate): Paddock {
  const to = lost.until ?? addDays(today, FOR_GOOD_DAYS);
  return {
    ...paddock,
    // What was closed for a while before lies within it now.
    closedDays: [
      ...paddock.closedDays.filter((each) => each.from < today || to < each.to),
      { from: today, to, why: lost.why },
    ],
  };
}

/**
 * The same farm with the paddock closed from today on, and the herds off it that stand there.
 *
 * @param assumedMoves of the plan with the paddock: where a herd is taken to stand by now is not where it
 * was told to be
 */
export function withPaddockLost(
  picture: FarmPicture,
  lost: PaddockLost,
  assumedMoves: readonly AssumedMove[] = [],
): FarmPicture {
  const leaving = herdsIn(picture, lost, assumedMoves);
  const since = leaving.reduce((now, herd) => {
    const own = movesMeant(assumedMoves, herd.id);
    return own.length === 0 ? now : moved(now, herd, own);
  }, picture);
  return {
    ...since,
    paddocks: since.paddocks.map((paddock) =>
      paddock.id === lost.paddockId ? closedBy(lost, paddock, picture.today) : paddock,
    ),
    // They have to be led off before anything is planned.
    herds: since.herds.map((herd) => {
      if (leaving.every(({ id }) => id !== herd.id)) return herd;
      const { inPaddockId: _in, inSince: _since, ...off } = herd;
      return off;
    }),
  };
}

/** Herds that stand in the lost paddock, as told or as they are assumed to have moved. */
const herdsIn = (
  { herds }: FarmPicture,
  { paddockId }: PaddockLost,
  assumedMoves: readonly AssumedMove[] | undefined,
): Herd[] => herds.filter((herd) => placeNow(herd, assumedMoves).inPaddockId === paddockId);

/** The farm with its grass gone back to sooner, as a way to do with less ground. */
export const withShorterRest = (
  picture: FarmPicture,
  { shorterRestShare }: Judgements['alarms'],
): FarmPicture => ({
  ...picture,
  pastureChoices: {
    ...picture.pastureChoices,
    restFactor: shorterRestShare.value * (picture.pastureChoices.restFactor ?? 1),
  },
});

/** A herd that must be led off today, and where to. */
export interface LedOff {
  readonly herdId: string;
  readonly herd: string;
  /** Left out where no paddock is fit: then it is hay in a lot or lane. */
  readonly to?: { readonly id: string; readonly name: string };
}

/** Herds that stand in the lost paddock today, by the plan with it, and where the one without it has them. */
export function ledOff(
  picture: FarmPicture,
  lost: PaddockLost,
  before: Pick<PasturePlan, 'assumedMoves'>,
  after: PasturePlan,
): LedOff[] {
  return herdsIn(picture, lost, before.assumedMoves).map(({ id, name }) => {
    const move = after.moves.find(
      ({ herdId, from, to }) => herdId === id && from <= after.today && after.today <= to,
    );
    const to = after.paddocks.find((paddock) => paddock.id === move?.paddockId);
    return { herdId: id, herd: name, ...(to ? { to: { id: to.id, name: to.name } } : {}) };
  });
}

/** What is told of a herd that is led off, with the moves before it that nobody told. */
export const toldOfLedOff = (
  { herdId, to }: LedOff,
  { today, assumedMoves }: Pick<PasturePlan, 'today' | 'assumedMoves'>,
) =>
  toldWithBefore(
    {
      herdId,
      ...(to ? { paddockId: to.id } : {}),
      assumed: movesMeant(assumedMoves, herdId),
    },
    today,
  );

/** What the loss changes in the plan of the grass, a sentence each. */
export function sayPaddockLost(
  picture: FarmPicture,
  lost: PaddockLost,
  before: PasturePlan,
  after: PasturePlan,
): string[] {
  const reader = { ...picture.farm, today: picture.today };
  const name = nameOf(after, lost.paddockId);
  return [
    ...ledOff(picture, lost, before, after).map(({ herd, to }) =>
      to
        ? `${herd}: move them to ${to.name} today.`
        : `${herd}: no other paddock is ready today. Feed hay in a dry lot or lane until one is.`,
    ),
    ...nextOf(picture, before, after),
    ...sayFeed(before, after, picture),
    ...(lost.until === undefined
      ? [`${name} is out of the round.`]
      : [`${name} is in the round again after ${formatDate(lost.until, reader)}.`]),
  ];
}

/** Where the herds go next, where that is another paddock or another day than before. */
export function nextOf(
  { farm, today }: FarmPicture,
  before: PasturePlan,
  after: PasturePlan,
): string[] {
  const reader = { ...farm, today };
  return after.herds.flatMap(({ id, name }) => {
    const [was, is] = [before, after].map((plan) =>
      plan.moves.find(({ herdId, from }) => herdId === id && plan.today < from),
    );
    if (!is) return [];
    if (was?.paddockId === is.paddockId && was.from === is.from) return [];
    const instead =
      was === undefined
        ? ''
        : was.paddockId === is.paddockId
          ? ` instead of ${formatDate(was.from, reader)}`
          : ` instead of ${nameOf(before, was.paddockId)} on ${formatDate(was.from, reader)}`;
    return [
      `${name}: next to ${nameOf(after, is.paddockId)} on ${formatDate(is.from, reader)}${instead}.`,
    ];
  });
}

const nameOf = ({ paddocks }: PasturePlan, id: string): string =>
  paddocks.find((paddock) => paddock.id === id)?.name ?? id;

/** Less than this is said as no difference, kg of dry matter. */
const NO_DIFFERENCE_KG = 5;

/** Feed by hand in the rest of the season that a plan takes beyond another, dry matter, kg. */
const moreFeedKg = (before: PasturePlan, after: PasturePlan): number =>
  after.hay.all.value - before.hay.all.value;

/** What the loss takes of hay. A greedy order can come out a little better with less: that says nothing. */
function sayFeed(before: PasturePlan, after: PasturePlan, picture: FarmPicture): string[] {
  const more = moreFeedSaid(before, after, picture);
  return more.length === 0 ? ['The other paddocks carry them: no more hay.'] : more;
}

/** Feed by hand that a plan takes beyond another, in bales too; nothing where they come to the same. */
export function moreFeedSaid(
  before: PasturePlan,
  after: PasturePlan,
  { farm, today }: FarmPicture,
): string[] {
  const kg = moreFeedKg(before, after);
  if (kg < NO_DIFFERENCE_KG) return [];
  const from = after.hay.firstShort;
  const bales = Math.ceil(after.hay.bales.value) - Math.ceil(before.hay.bales.value);
  const inBales = bales <= 0 ? '' : `, about ${bales} ${bales === 1 ? 'bale' : 'bales'}`;
  const since =
    from === undefined ? '' : `; grass is short from ${formatDate(from, { ...farm, today })} on`;
  return [
    `${formatValue(kg, 'kg', farm)} of dry matter more to feed by hand this season${inBales}${since}.`,
  ];
}

/** What shorter rests save of what the loss takes, in words; undefined where either is nothing. */
export function sayShorterRest(
  { farm }: FarmPicture,
  { before, after, shorter }: Readonly<Record<'before' | 'after' | 'shorter', PasturePlan>>,
): string | undefined {
  const kg = moreFeedKg(shorter, after);
  return kg < NO_DIFFERENCE_KG || moreFeedKg(before, after) < NO_DIFFERENCE_KG
    ? undefined
    : `It saves ${formatValue(kg, 'kg', farm)} of that feed this season. Grass that is grazed before it has come back grows less later: not for a second season.`;
}
