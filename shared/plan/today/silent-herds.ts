import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import type { FarmPicture } from '../../farm/picture.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import { planPasture } from '../pasture/pasture-plan.js';
import type { Alarm, MoveMeant } from './looked-at.js';

/** After so many days more of silence it is asked again. */
const ASKED_AGAIN_DAYS = 14;

/**
 * Herds that the plan would have moved since the last move that was told: whether they did is asked, with
 * the moves as they were planned on the day of that one, so that one touch tells them all. Until somebody
 * says so they are taken to stand where they were told to be: a plan must not rest on moves that nobody
 * saw, and grass that is believed to stand can starve a herd.
 */
export const silentHerds = (picture: FarmPicture, tables: Tables): Alarm[] =>
  picture.herds.flatMap((herd) => {
    const { inPaddockId, inSince } = herd;
    if (inPaddockId === undefined || inSince === undefined) return [];
    const { recentDays } = tables.judgements.alarms;
    const quiet = daysBetween(inSince, picture.today);
    const longest = herd.longestStayDays ?? tables.pasture.longestStayDays.value;
    if (quiet <= longest + recentDays.value) return [];
    const moves = plannedSince(picture, tables, { herd, since: inSince });
    if (moves.length === 0) return [];
    const reader = { ...picture.farm, today: picture.today };
    const nameOf = (id: string | undefined): string =>
      picture.paddocks.find((paddock) => paddock.id === id)?.name ?? 'off grass';
    const where = nameOf(inPaddockId);
    const list = moves.map(({ paddockId, on }) => `${formatDate(on, reader)} ${nameOf(paddockId)}`);
    return [
      {
        key: `alarm/silent/${herd.id!}/${inSince}/${Math.floor(quiet / ASKED_AGAIN_DAYS)}`,
        isAlarm: true,
        level: 'act',
        words: 'did they move as planned?',
        text: `Nothing was told since they went into ${where} on ${formatDate(inSince, reader)}. By the plan of that day they moved since: ${list.join(', ')}. Until you say, they are taken to stand in ${where}, and the other paddocks to rest. If they went otherwise, tell the moves by themselves, each with its day.`,
        of: herd.name,
        place: { kind: 'pasture' },
        moves,
      },
    ];
  });

/** Moves of a herd from a day to this one, as they were planned on that day. */
function plannedSince(
  picture: FarmPicture,
  tables: Tables,
  { herd, since }: { readonly herd: Herd; readonly since: PlainDate },
): MoveMeant[] {
  const plan = pastureThen(asOf(picture, herd, since), tables);
  if (!plan) return [];
  const own = plan.moves.filter(({ herdId }) => herdId === herd.id);
  const went = own.filter(({ from }) => since < from && from <= picture.today);
  const moves = went
    .map(({ paddockId, from: on }) => ({ herdId: herd.id!, paddockId, on }))
    .filter(({ paddockId }, k) => paddockId !== (went[k - 1]?.paddockId ?? herd.inPaddockId));
  // The last day of the last stay may be that of the season: then they came off grass.
  const last = own.findLast(({ from }) => from <= picture.today);
  const isOver = last !== undefined && last === own.at(-1) && last.to < addDays(picture.today, -1);
  return isOver ? [...moves, { herdId: herd.id!, on: addDays(last.to, 1) }] : moves;
}

function pastureThen(picture: FarmPicture, tables: Tables) {
  try {
    return planPasture(picture, tables);
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}

/** A picture as it was on a day, as far as grass goes by it: nothing that was told of later days. */
function asOf(picture: FarmPicture, herd: Herd, today: PlainDate): FarmPicture {
  const { from, to, ...choices } = picture.pastureChoices;
  return {
    ...picture,
    today,
    pastureChoices: {
      ...choices,
      ...(from !== undefined && from <= today ? { from } : {}),
      ...(to !== undefined && today < to ? { to } : {}),
    },
    herds: picture.herds.map((each) => {
      if (each.id === herd.id || each.inSince === undefined || each.inSince <= today) return each;
      const { inPaddockId: _inPaddockId, inSince: _inSince, ...elsewhere } = each;
      return elsewhere;
    }),
    paddocks: picture.paddocks.map((paddock) => {
      const { lastGrazedOn, ...rest } = paddock;
      return lastGrazedOn !== undefined && today < lastGrazedOn ? rest : paddock;
    }),
    readings: picture.readings.filter(({ date }) => date <= today),
    mowings: (picture.mowings ?? []).filter(({ date }) => date <= today),
    grazings: (picture.grazings ?? [])
      .filter((stay) => stay.from <= today)
      .map(({ to: left, ...stay }) =>
        left !== undefined && left < today ? { ...stay, to: left } : stay,
      ),
  };
}
