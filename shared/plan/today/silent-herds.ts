import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import { isLongSilent, movesMeant } from '../pasture/moves-assumed.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { Alarm } from './looked-at.js';

/**
 * Herds of which nothing was told for so long that the plan takes them to have moved as planned: whether
 * they did is asked, with all of these moves, so that one touch tells them. Where another herd is by now
 * where they would be, nothing can be told with one touch but that they are still there.
 */
export const silentHerds = (
  picture: FarmPicture,
  tables: Tables,
  pasture: PasturePlan | undefined,
): Alarm[] =>
  picture.herds.flatMap((herd) => {
    const { id, name, inPaddockId, inSince } = herd;
    const moves = (pasture?.assumedMoves ?? []).filter(({ herdId }) => herdId === id);
    const unplaced = pasture?.unplaced?.find(({ herdId }) => herdId === id);
    const since = (moves[0] ?? unplaced)?.knownUntil;
    if (since === undefined || inPaddockId === undefined) return [];
    if (!isLongSilent(picture, tables, herd, since)) return [];
    const { askedAgainDays } = tables.judgements.alarms;
    const times = Math.floor(daysBetween(since, picture.today) / askedAgainDays.value);
    const nameOf = (paddockId: string | undefined): string =>
      picture.paddocks.find((paddock) => paddock.id === paddockId)?.name ?? 'off grass';
    const say = (on: PlainDate): string =>
      formatDate(on, { ...picture.farm, today: picture.today });
    const stands = nameOf(inPaddockId);
    const list = moves.map(({ paddockId, on }) => `${say(on)} ${nameOf(paddockId)}`);
    const known = since === inSince ? `they went into ${stands} on` : `they were in ${stands} on`;
    const asked = {
      key: `alarm/silent/${id}/${since}/${times}`,
      ...({ isAlarm: true, level: 'act', place: { kind: 'pasture' } } as const),
      of: name,
      stillIn: { herdId: id, paddockId: inPaddockId, paddock: stands },
    };
    const nothing = `Nothing was told since ${known} ${say(since)}.`;
    if (unplaced)
      return [
        {
          ...asked,
          words: 'where are they?',
          text: `${nothing} As planned that day they would be in ${nameOf(unplaced.paddockId)} by now, but ${unplaced.heldBy} is there. Until you tell where they are the plan goes on as if they were still in ${stands}.`,
        },
      ];
    return [
      {
        ...asked,
        words: 'did they move as planned?',
        text: `${nothing} Until you say otherwise the plan goes on as if they had moved as planned that day: ${list.join(', ')}. If they went otherwise, tell the moves by themselves, each with its day.`,
        moves: movesMeant(moves, id),
      },
    ];
  });
