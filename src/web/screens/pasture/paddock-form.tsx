import {
  Button,
  Fieldset,
  Group,
  SimpleGrid,
  Switch,
  Text,
  Textarea,
  TextInput,
} from '@mantine/core';
import { useState } from 'react';
import {
  closedDaysFields,
  paddockFields,
  PRODUCTIVITIES,
  STANDS,
  type ClosedDays,
  type ClosedFor,
  type Outline,
  type Paddock,
  type Productivity,
  type Stand,
} from '../../../../shared/farm/paddock.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useSave, type SavedFarm } from '../../api/queries.js';
import { noPosition } from '../../fields/no-position.js';
import { DateField } from '../../fields/date-input.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { QuantityInput, typedText } from '../../fields/quantity-input.js';
import { draftKey } from '../../fields/kept-draft.js';
import { RowForm, useRowForm } from '../../fields/row-form.js';
import { Select } from '../../fields/select.js';

type Draft = { -readonly [K in keyof Paddock]?: Paddock[K] | undefined };

const FIELDS = paddockFields.fields;
const CLOSED = closedDaysFields.fields;
const WHY: readonly { id: ClosedFor; name: string }[] = [
  { id: 'hay', name: 'hay' },
  { id: 'wet', name: 'wet ground' },
  { id: 'reseeding', name: 'reseeding' },
  { id: 'garden', name: 'a garden' },
  { id: 'stockpile', name: 'kept for fall' },
  { id: 'other', name: 'something else' },
];
const named = <T extends string>(ids: readonly T[]) => ids.map((id) => ({ id, name: id }));

/** One paddock: what grows there, when it is shut, where it lies. */
export function PaddockForm({
  farm,
  tables,
  start,
  onDone,
}: {
  farm: SavedFarm;
  tables: Tables;
  start: Paddock | undefined;
  onDone: () => void;
}) {
  const [corners, setCorners] = useState(cornersText(start?.outline));
  const words = wordsOfRow(paddockFields, farm);
  const save = useSave<Draft>(farm.id, 'paddocks', words);
  const form = useRowForm<Draft>({
    keptAs: draftKey(farm.id, 'paddock', start?.id ?? 'new'),
    start: start ?? {
      name: '',
      forageId: 'mixed',
      stand: 'good',
      productivity: 'medium',
      soilId: 'loam',
      hasWater: true,
      hasShade: false,
      closedDays: [],
    },
    words,
    check: (): Record<string, string> => {
      const outline = readCorners(corners);
      return typeof outline === 'string' ? { outline } : {};
    },
    save: ({ outline: before, ...rest }) => {
      const outline = readCorners(corners) as Outline | undefined;
      const isMoved = JSON.stringify(outline) !== JSON.stringify(before);
      return save.mutateAsync({
        ...rest,
        // With new corners the area is worked out again.
        ...(outline && isMoved ? { areaM2: undefined } : {}),
        ...(outline ? { outline } : {}),
      });
    },
    onDone,
  });
  const { draft, set, setError, errorAt } = form;
  const forage = tables.forages.find((f) => f.id === draft.forageId);
  const { rawManure } = tables.pasture;
  const closed = draft.closedDays ?? [];
  const setClosed = (k: number, part: Partial<ClosedDays>) =>
    set({ closedDays: closed.map((each, i) => (i === k ? { ...each, ...part } : each)) });
  return (
    <RowForm form={form} onDone={onDone}>
      <TextInput
        label={FIELDS.name.label}
        value={draft.name ?? ''}
        error={errorAt('name')}
        data-autofocus
        onChange={(e) => set({ name: e.currentTarget.value })}
      />
      <SimpleGrid cols={{ base: 1, xs: 2 }}>
        <QuantityInput
          field={FIELDS.areaM2}
          units={farm.units}
          value={draft.areaM2}
          error={errorAt('areaM2')}
          onChange={(areaM2) => set({ areaM2 })}
        />
        <Select
          label={FIELDS.forageId.label}
          value={draft.forageId}
          error={errorAt('forageId')}
          options={tables.forages}
          onChange={(forageId) => set({ forageId })}
        />
        <Select<Stand>
          label={FIELDS.stand.label}
          value={draft.stand}
          error={errorAt('stand')}
          options={named(STANDS)}
          onChange={(stand) => set({ stand })}
        />
        <Select<Productivity>
          label={FIELDS.productivity.label}
          value={draft.productivity}
          error={errorAt('productivity')}
          options={named(PRODUCTIVITIES)}
          onChange={(productivity) => set({ productivity })}
        />
        <Select
          label={FIELDS.soilId.label}
          value={draft.soilId}
          error={errorAt('soilId')}
          options={tables.soils}
          onChange={(soilId) => set({ soilId })}
        />
        <DateField
          label={FIELDS.lastGrazedOn.label}
          value={draft.lastGrazedOn}
          error={errorAt('lastGrazedOn')}
          onChange={(lastGrazedOn) => set({ lastGrazedOn })}
        />
      </SimpleGrid>
      <Group>
        <Switch
          label={FIELDS.hasWater.label}
          checked={draft.hasWater ?? false}
          onChange={(e) => set({ hasWater: e.currentTarget.checked })}
        />
        <Switch
          label={FIELDS.hasShade.label}
          checked={draft.hasShade ?? false}
          onChange={(e) => set({ hasShade: e.currentTarget.checked })}
        />
      </Group>
      <Fieldset legend="Heights, where yours differ">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          {(['readyHeightCm', 'residualHeightCm'] as const).map((field) => (
            <QuantityInput
              key={field}
              field={FIELDS[field]}
              units={farm.units}
              value={draft[field]}
              error={errorAt(field)}
              placeholder={typedText(forage?.heights[field], FIELDS[field], farm.units)}
              onChange={(value) => set({ [field]: value })}
            />
          ))}
          <QuantityInput
            field={FIELDS.massKgPerHaCm}
            units={farm.units}
            value={draft.massKgPerHaCm}
            error={errorAt('massKgPerHaCm')}
            placeholder={typedText(
              forage?.massKgPerHaCm[draft.stand ?? 'good'].value,
              FIELDS.massKgPerHaCm,
              farm.units,
            )}
            onChange={(massKgPerHaCm) => set({ massKgPerHaCm })}
          />
        </SimpleGrid>
      </Fieldset>
      <Fieldset legend="Garden in the grass">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          {(['harvestOn', 'lastHarvestOn'] as const).map((field) => (
            <DateField
              key={field}
              label={FIELDS[field].label}
              value={draft[field]}
              error={errorAt(field)}
              onChange={(value) => set({ [field]: value })}
            />
          ))}
          <Switch
            label={FIELDS.cropOffSoil.label}
            description={`Cattle, birds and raw manure keep off ${rawManure.offSoilDays} days before the harvest instead of ${rawManure.touchingSoilDays}.`}
            checked={draft.cropOffSoil ?? false}
            onChange={(e) => set({ cropOffSoil: e.currentTarget.checked })}
          />
        </SimpleGrid>
      </Fieldset>
      <Fieldset legend={FIELDS.closedDays.label}>
        {closed.map((days, k) => (
          <SimpleGrid key={k} cols={{ base: 2, xs: 4 }} mb="sm">
            <DateField
              label={CLOSED.from.label}
              value={days.from}
              error={errorAt(`closedDays.${k}.from`)}
              onChange={(from) => setClosed(k, { from: from ?? '' })}
            />
            <DateField
              label={CLOSED.to.label}
              value={days.to}
              error={errorAt(`closedDays.${k}.to`)}
              onChange={(to) => setClosed(k, { to: to ?? '' })}
            />
            <Select<ClosedFor>
              label={CLOSED.why.label}
              value={days.why}
              error={errorAt(`closedDays.${k}.why`)}
              options={WHY}
              onChange={(why) => setClosed(k, { why: why ?? 'other' })}
            />
            <Button
              variant="subtle"
              mt="auto"
              onClick={() => set({ closedDays: closed.filter((_, i) => i !== k) })}
            >
              Remove
            </Button>
          </SimpleGrid>
        ))}
        <Button
          variant="default"
          onClick={() => set({ closedDays: [...closed, { from: '', to: '', why: 'hay' }] })}
        >
          Add days
        </Button>
      </Fieldset>
      <Fieldset legend="Outline, for the map">
        <Textarea
          label={FIELDS.outline.label}
          description="One corner a line: latitude, longitude. The area is worked out from them."
          autosize
          minRows={2}
          maxRows={8}
          value={corners}
          error={errorAt('outline')}
          onChange={(e) => {
            setCorners(e.currentTarget.value);
            setError('outline', undefined);
          }}
        />
        <Button
          variant="default"
          mt="sm"
          onClick={() => addHere(setCorners, (text) => setError('outline', text))}
        >
          Mark this corner
        </Button>
        <Text size="sm">Walk the fence and press this at every corner.</Text>
      </Fieldset>
    </RowForm>
  );
}

const cornersText = (outline: Outline | undefined): string =>
  (outline ?? []).map(([longitude, latitude]) => `${latitude}, ${longitude}`).join('\n');

/** Corners as typed, or what is wrong with them; undefined when there are none. */
function readCorners(text: string): Outline | string | undefined {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  if (lines.length === 0) return undefined;
  const corners: [number, number][] = [];
  for (const [i, line] of lines.entries()) {
    const [latitude, longitude, more] = line
      .split(/[,;\s]+/)
      .filter(Boolean)
      .map(Number);
    if (
      more !== undefined ||
      !Number.isFinite(latitude) ||
      !Number.isFinite(longitude) ||
      90 < Math.abs(latitude!) ||
      180 < Math.abs(longitude!)
    )
      return `Line ${i + 1} is not a latitude and a longitude, such as 42.9001, -75.3002.`;
    corners.push([longitude!, latitude!]);
  }
  return corners;
}

function addHere(
  setCorners: (change: (before: string) => string) => void,
  setWrong: (text: string | undefined) => void,
): void {
  if (!('geolocation' in navigator)) {
    setWrong('This device does not tell where it is.');
    return;
  }
  navigator.geolocation.getCurrentPosition(
    ({ coords }) => {
      setWrong(undefined);
      const corner = `${coords.latitude.toFixed(6)}, ${coords.longitude.toFixed(6)}`;
      setCorners((before) => (before.trim() === '' ? corner : `${before.trimEnd()}\n${corner}`));
    },
    ({ code }) => setWrong(noPosition(code)),
    { enableHighAccuracy: true, timeout: 15_000 },
  );
}
