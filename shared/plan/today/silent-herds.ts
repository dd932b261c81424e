import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { Alarm } from './looked-at.js';

/**
 * Herds of which nothing was told for so long that the plan takes them to have moved as planned: whether
 * they did is asked, with all of these moves, so that one touch tells them.
 */
export const silentHerds = (
  picture: FarmPicture,
  tables: Tables,
  pasture: PasturePlan | undefined,
): Alarm[] =>
  picture.herds.flatMap(({ id, name, inPaddockId, inSince }) => {
    const moves = (pasture?.assumedMoves ?? []).filter(({ herdId }) => herdId === id);
    if (moves.length === 0 || inPaddockId === undefined) return [];
    const since = moves[0]!.knownUntil;
    const { askedAgainDays } = tables.judgements.alarms;
    const times = Math.floor(daysBetween(since, picture.today) / askedAgainDays.value);
    const nameOf = (paddockId: string | undefined): string =>
      picture.paddocks.find((paddock) => paddock.id === paddockId)?.name ?? 'off grass';
    const say = (on: PlainDate): string =>
      formatDate(on, { ...picture.farm, today: picture.today });
    const stands = nameOf(inPaddockId);
    const list = moves.map(({ paddockId, on }) => `${say(on)} ${nameOf(paddockId)}`);
    const known = since === inSince ? `they went into ${stands} on` : `they were in ${stands} on`;
    return [
      {
        key: `alarm/silent/${id}/${since}/${times}`,
        isAlarm: true,
        level: 'act',
        words: 'did they move as planned?',
        text: `Nothing was told since ${known} ${say(since)}. Until you say otherwise the plan goes on as if they had moved as planned that day: ${list.join(', ')}. If they went otherwise, tell the moves by themselves, each with its day.`,
        of: name,
        place: { kind: 'pasture' },
        moves: moves.map(({ knownUntil: _knownUntil, ...move }) => move),
        stillIn: { herdId: id, paddockId: inPaddockId, paddock: stands },
      },
    ];
  });
