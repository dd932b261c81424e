import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { ToldFact } from '../../../../shared/farm/told-fact.js';
import { TOLD_KINDS } from '../../../../shared/farm/told-kinds.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { TellForm } from '../../tell/tell-form.js';
import { treatedFieldsOf } from '../../tell/what-to-tell.js';
import { KIND_WORDS } from './kind-words.js';

interface Props {
  readonly farm: SavedFarm;
  readonly today: PlainDate;
  readonly fact: ToldFact;
  readonly onDone: () => void;
}

/** Changes what was told: what it was before is kept. */
export default function ChangeDialog({ farm, today, fact, onDone }: Props) {
  const { id, kind, about, on, details } = fact;
  const words = KIND_WORDS[kind] ?? 'What was told';
  const isHerd = usePicture(farm.id).data?.herds.some((herd) => herd.id === about);
  const fields =
    kind === 'treated' ? treatedFieldsOf(isHerd ? 'herd' : 'batch') : TOLD_KINDS[kind].details;
  const start = details as Readonly<Record<string, unknown>>;
  return (
    <FormDialog onClose={onDone} title={`Change: ${words.toLowerCase()}`} size="md">
      <TellForm
        farm={farm}
        today={today}
        what={{ kind, about, words, start, fields }}
        changes={{ id, on }}
        onTold={onDone}
        onBack={onDone}
      />
    </FormDialog>
  );
}
