import { Accordion, SegmentedControl, Stack, TextInput } from '@mantine/core';
import type { ReactNode } from 'react';
import { hatchesHere, isStarted } from '../../../../shared/farm/batch-origin.js';
import type { Purpose } from '../../../../shared/farm/batch.js';
import { rowById } from '../../../../shared/tables/tables.js';
import { Select } from '../../fields/select.js';
import { ArrivalFields } from './arrival-fields.js';
import { WANTED } from './batch-labels.js';
import type { BestWeek } from './best-week.js';
import { BatchPrices } from './batch-prices.js';
import { EggFields } from './egg-fields.js';
import { FeedChoice } from './feed-choice.js';
import { FIELDS, OrderNumber, type FormProps } from './form-fields.js';
import { LastDayFields } from './last-day-fields.js';
import { MoreChoices } from './more-choices.js';
import { OwnEggs } from './own-eggs.js';
import { PlaceFields } from './place-fields.js';
import { forPurpose, forStrain, sexesOf } from './purpose.js';
import { otherNames } from './use-plan.js';

interface Props extends FormProps {
  /** Arrival date around which the slider slides. */
  readonly slideFrom: string;
  /** The week that a new batch was first set to. */
  readonly best: BestWeek | undefined;
  /** The household said that they are here. */
  readonly isHere: boolean;
  readonly isNew: boolean;
  readonly onHere: (isHere: boolean) => void;
  /** What of it comes from the farm's own record. */
  readonly own: ReactNode;
}

/** The order: what it is, how many, and when; everything else is behind a touch. */
export function BatchForm({ slideFrom, best, isHere, isNew, onHere, own, ...form }: Props) {
  const { setting, draft, errors, onChange } = form;
  const { tables } = setting;
  const purpose = draft.purpose ?? 'meat';
  const strains = tables.strains.filter((s) => s.purposes.includes(purpose));
  const strain = strains.find((s) => s.id === draft.strainId);
  const species = strain && rowById(tables.hatching.species, strain.species);
  const young = isStarted(draft) ? 'pullets' : (species?.young ?? 'chicks');
  const isOwn = hatchesHere(draft);
  return (
    <Stack gap="sm">
      <SegmentedControl
        aria-label="Purpose"
        fullWidth
        size="md"
        value={purpose}
        onChange={(next) =>
          onChange(
            forPurpose(next as Purpose, tables.strains, {
              name: draft.name,
              arrivalDate: draft.arrivalDate,
              others: otherNames(setting, draft),
            }),
          )
        }
        data={[
          { value: 'meat', label: 'For meat' },
          { value: 'layers', label: 'For eggs' },
        ]}
      />
      <TextInput
        label={FIELDS.name.label}
        value={draft.name ?? ''}
        error={errors['name']}
        onChange={(e) => onChange({ name: e.currentTarget.value })}
      />
      <Select
        label={FIELDS.strainId.label}
        description={strain?.description}
        value={draft.strainId}
        error={errors['strainId']}
        onChange={(id) => onChange(forStrain(id))}
        options={strains}
      />
      <Select
        label={FIELDS.sex.label}
        value={draft.sex}
        error={errors['sex']}
        onChange={(sex) => onChange({ sex: sex ?? 'straight-run' })}
        options={sexesOf(purpose, draft, species)}
      />
      <OwnEggs {...form} />
      <OrderNumber form={form} field="wantedBirds" label={WANTED[purpose]} />
      <ArrivalFields {...{ form, isOwn, young, slideFrom, best, isHere, isNew, onHere }} />
      {strain && <FeedChoice {...{ form, strain }} />}
      {own}
      {strain && (
        <Accordion variant="contained" multiple>
          <Panel title="Housing">
            <PlaceFields {...form} />
          </Panel>
          {purpose === 'meat' && (
            <Panel title="The last day">
              <LastDayFields form={form} strain={strain} />
            </Panel>
          )}
          <Panel title="Prices">
            <BatchPrices setting={setting} draft={draft} strain={strain} onChange={onChange} />
          </Panel>
          {purpose === 'layers' && (
            <Panel title="Eggs">
              <EggFields {...form} strain={strain} />
            </Panel>
          )}
          <Panel title="More choices">
            <MoreChoices form={form} strain={strain} young={young} />
          </Panel>
        </Accordion>
      )}
    </Stack>
  );
}

function Panel({ title, children }: { title: string; children: ReactNode }) {
  return (
    <Accordion.Item value={title}>
      <Accordion.Control>{title}</Accordion.Control>
      <Accordion.Panel>
        <Stack gap="sm">{children}</Stack>
      </Accordion.Panel>
    </Accordion.Item>
  );
}
