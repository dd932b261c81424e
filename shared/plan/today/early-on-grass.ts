import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Alarm, Looked } from './looked-at.js';

/** Cattle that went in earlier than this before turn-out stand there for the winter. Judgement, no source. */
const BEFORE_TURN_OUT_DAYS = 45;

/** A herd that was told into grass before its turn-out, which is not tall enough yet: once for each. */
export const earlyOnGrass = ({
  picture: { grazings = [], herds, today },
  pasture,
}: Looked): Alarm[] =>
  herds.flatMap(({ id, name }): Alarm[] => {
    const dates = pasture?.keyDates.herds.find(({ herdId }) => herdId === id);
    const stay = grazings.findLast(({ herdId, to }) => herdId === id && to === undefined);
    const paddock = pasture?.paddocks.find((each) => each.id === stay?.paddockId);
    const turnOut = dates?.turnOut && String(dates.turnOut.value);
    if (!stay || !paddock || turnOut === undefined || turnOut <= today) return [];
    if (stay.from < addDays(turnOut, -BEFORE_TURN_OUT_DAYS)) return [];
    if (paddock.readyFromCm <= paddock.height.value) return [];
    const days = daysBetween(today, turnOut);
    const magnesium = dates?.magnesiumFrom
      ? ' Cows in milk that eat fast spring grass can die of too little magnesium within hours: put out a high-magnesium mineral now, and call your veterinarian at once for staggering or twitching.'
      : '';
    return [
      {
        key: `alarm/early/${id}/${stay.paddockId}/${stay.from}`,
        isAlarm: true,
        level: 'act',
        words: `in ${paddock.name} before its grass is ready, ${days === 1 ? 'a day' : `${days} days`} before turn-out`,
        text: `Grass that is bitten before it has come back grows less all season. Take them off it again, or keep them on hay in one part of it.${magnesium}`,
        of: name,
        place: { kind: 'pasture' },
      },
    ];
  });
