import type { FarmPicture } from '../../farm/picture.js';
import { withNamedCows } from '../../pasture/named-cows.js';
import type { Tables } from '../../tables/tables.js';
import type { Attention } from './looked-at.js';

/** Cows of which no date of calving is told: nothing of it is planned. */
export const calvingDue = (
  { herds, cows }: Pick<FarmPicture, 'herds' | 'cows'>,
  { cattle }: Pick<Tables, 'cattle'>,
): Attention[] =>
  herds.flatMap((herd) => {
    const asked = withNamedCows(herd, cows).groups.filter((group) => {
      const kind = cattle.classes.find(({ id }) => id === group.classId);
      return (
        kind?.asksWhenDue === true && group.bredOn === undefined && group.calvesOn === undefined
      );
    });
    const head = asked.reduce((sum, each) => sum + each.head, 0);
    if (head === 0) return [];
    return [
      {
        key: `calving/${herd.id}`,
        level: 'act' as const,
        words: head === 1 ? 'when does the cow calve?' : `when do ${head} cows calve?`,
        text: 'No date is told, so nothing of it is planned: not the place, the kit, the watching, nor who is there. Give “Calving due, if known” or “Bred on” at the herd, for all of them or cow by cow.',
        of: herd.name,
        place: { kind: 'pasture' as const },
      },
    ];
  });
