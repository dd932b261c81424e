import { choicesFor, rowById, type Tables } from '../../../../shared/tables/tables.js';
import { usualFeeds } from '../../../../shared/plan/usual-feeds.js';
import type { Strain } from '../../../../shared/tables/bird-tables.js';
import { Select } from '../../fields/select.js';
import { FIELDS, type FormProps } from './form-fields.js';
import type { BatchDraft } from './use-plan.js';

/** The feeds that are usual for what is typed; none while that is not said yet. */
function usualOf(draft: BatchDraft, tables: Tables): string | undefined {
  const { purpose, strainId, wantedBirds, origin } = draft;
  if (purpose === undefined || strainId === undefined || wantedBirds === undefined)
    return undefined;
  return usualFeeds({ purpose, strainId, wantedBirds, ...(origin && { origin }) }, tables).id;
}

const ownOf = ({ purpose, strainId }: BatchDraft, { strains }: Tables): string | undefined =>
  purpose && strainId ? rowById(strains, strainId).feedProgram[purpose] : undefined;

/**
 * The feeds after a change of the order: while they are the usual ones, they stay the usual ones for
 * what it is now; what the household chose otherwise stays.
 */
export function feedsAfter(draft: BatchDraft, more: BatchDraft, tables: Tables): BatchDraft {
  if (more.feedProgramId !== undefined) return {};
  const isAnotherBird = 'purpose' in more || 'strainId' in more;
  const now = draft.feedProgramId ?? ownOf(draft, tables);
  if (!isAnotherBird && now !== usualOf(draft, tables)) return {};
  const next = { ...draft, ...more };
  const usual = usualOf(next, tables);
  if (usual === undefined) return {};
  return { feedProgramId: usual === ownOf(next, tables) ? undefined : usual };
}

/** Which feeds are bought, and why those; nothing where there is no choice. */
export function FeedChoice({
  form: { setting, draft, errors, onChange },
  strain,
}: {
  readonly form: FormProps;
  readonly strain: Strain;
}) {
  const { tables } = setting;
  const own = strain.feedProgram[draft.purpose ?? 'meat']!;
  const options = choicesFor(tables.feedPrograms, own);
  if (options.length < 2) return null;
  const chosen = draft.feedProgramId ?? own;
  return (
    <Select
      label={FIELDS.feedProgramId.label}
      description={whyThese(rowById(options, chosen), rowById(options, own))}
      value={chosen}
      error={errors['feedProgramId']}
      onChange={(id) => onChange({ feedProgramId: id === null ? undefined : id })}
      options={options}
    />
  );
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

type Feeds = Tables['feedPrograms'][number];

function whyThese(chosen: Feeds, own: Feeds): string | undefined {
  const all = NUMBERS[own.phases.length]!;
  if (chosen.id === own.id) return `The whole list: ${all} feeds, each bought by the bag`;
  return chosen.fewBirds === undefined
    ? undefined
    : `Usual for up to ${chosen.fewBirds} birds: with ${all} feeds a bag of each would stay open`;
}
