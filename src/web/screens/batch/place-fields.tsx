import { isStarted } from '../../../../shared/farm/batch-origin.js';
import type { FacilityKind } from '../../../../shared/farm/facility.js';
import { Select } from '../../fields/select.js';
import { FIELDS, type FormProps } from './form-fields.js';

type PlaceField = 'brooderId' | 'penId' | 'coopId' | 'freezerId' | 'feedStoreId';

/** Where they live, and where feed and meat are kept. */
export function PlaceFields({ setting, draft, errors, onChange }: FormProps) {
  const isMeat = draft.purpose !== 'layers';
  const { paddocks } = setting.picture;
  const home = isMeat ? (draft.penId ?? draft.coopId) : draft.coopId;
  const isOnGrass = 0 < paddocks.length && (home ?? draft.grassPaddockId) !== undefined;
  const place = (field: PlaceField, kind: FacilityKind) => (
    <Select
      label={FIELDS[field].label}
      value={draft[field]}
      error={errors[field]}
      onChange={(id) => onChange({ [field]: id })}
      options={setting.picture.facilities.filter((f) => f.kind === kind)}
      none="None yet"
    />
  );
  return (
    <>
      {draft.origin !== 'hen' && !isStarted(draft) && place('brooderId', 'brooder')}
      {isMeat && place('penId', 'field-pen')}
      {place('coopId', 'coop')}
      {isOnGrass && (
        <Select
          label={FIELDS.grassPaddockId.label}
          value={draft.grassPaddockId}
          error={errors['grassPaddockId']}
          onChange={(grassPaddockId) => onChange({ grassPaddockId })}
          options={paddocks}
          none="No paddock"
        />
      )}
      {(isMeat || draft.sex === 'straight-run') && place('freezerId', 'freezer')}
      {place('feedStoreId', 'feed-store')}
    </>
  );
}
