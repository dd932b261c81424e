import type { FarmPicture } from '../../farm/picture.js';
import { holding, type FactOf } from '../../farm/told-fact.js';
import { outUntil, sayKept } from '../medicines.js';
import type { Alarm } from './looked-at.js';
import { LABEL } from './medicine-alarms.js';

type EggsGone = FactOf<'eggs-gone'>;
type Around = Pick<FarmPicture, 'treatments' | 'batches' | 'cows' | 'farm' | 'today'>;

/**
 * Eggs that were told sold or given away while those of their hens were kept out. Some may have been
 * laid before the first dose, which only the household knows: it is asked, once for each time.
 */
export const eggsWentTooSoon = (picture: Around, gone: readonly EggsGone[]): Alarm[] =>
  (picture.treatments ?? []).flatMap((treatment) => {
    const until = outUntil(treatment, 'eggs');
    return holding(gone)
      .filter(
        ({ about, on }) =>
          until !== undefined && about === treatment.about && treatment.date <= on && on <= until,
      )
      .map((fact): Alarm => {
        const { how, eggs } = fact.details;
        const of = picture.batches.find(({ id }) => id === fact.about)?.name;
        return {
          key: `alarm/medicine/eggs-went/${treatment.id ?? treatment.date}/${fact.id}`,
          isAlarm: true,
          level: 'stop',
          words: `${eggs} eggs ${how === 'given' ? 'given away' : how} while a medicine ran`,
          text: `${sayKept(picture, treatment, ['eggs'])}. Were any of them laid since? Then tell ${
            how === 'sold' ? 'the buyer' : 'who has them'
          } today that they are not to be eaten, and take them back. If all were laid before it, there is nothing to do. ${LABEL}`,
          ...(of === undefined ? {} : { of }),
          place: { kind: 'batch', id: fact.about },
        };
      });
  });
