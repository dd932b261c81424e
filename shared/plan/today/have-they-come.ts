import { formatDate } from '../../units/dates.js';
import type { Attention, Looked } from './looked-at.js';

/** Birds whose day is past, of which nobody told that they came: all that is said of them goes by it. */
export const haveTheyCome = ({ animals, batches, picture: { farm, today } }: Looked): Attention[] =>
  animals.flatMap((line) => {
    if (line.kind !== 'batch' || line.wasToCome === undefined) return [];
    const { id, name, wasToCome, stage } = line;
    const { birds } = batches.find((batch) => batch.id === id)!.plan;
    const on = formatDate(wasToCome, { units: farm.units, today });
    return [
      {
        key: `came/${id}`,
        level: 'act' as const,
        words: `have they come? They were to on ${on}`,
        text:
          stage === 'coming'
            ? 'Nobody told that they did, nor anything of them since: nothing of them is asked for until you say. Touch “Tell” at them above if they came on another day, or not all of them.'
            : 'Nobody told that they did. Heads, feed, water and work are reckoned as if all of them had come on that day. Touch “Tell” at them above: how many came and on which day, or that they come on another.',
        came: {
          ...{ batchId: id, on: wasToCome, birds: birds.chicksPlaced.value },
          // A box that is a day late is not one that never came.
          ...(stage === 'coming' ? { isLongAgo: true } : {}),
        },
        of: name,
        place: { kind: 'batch' as const, id },
      },
    ];
  });
