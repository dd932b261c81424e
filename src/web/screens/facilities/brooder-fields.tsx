import {
  ActionIcon,
  Button,
  Fieldset,
  Group,
  SimpleGrid,
  Stack,
  Switch,
  Text,
} from '@mantine/core';
import { IconTrash } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import {
  brooderFields,
  buildUpFields,
  heatSourceFields,
  layerFields,
  type BuildUp,
  type Circuit,
  type HeatSource,
  type HeatSourceKind,
  type Layer,
  type Surroundings,
} from '../../../../shared/farm/facility.js';
import { HEAT_CAUTIONS } from '../../../../shared/farm/heat-caution.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Cautions } from '../../shell/section.js';
import { Select } from '../../fields/select.js';
import { newLayer, type Draft } from './kinds.js';

const BROODER = brooderFields.fields;
const HEAT = heatSourceFields.fields;

const SURROUNDINGS: readonly { id: Surroundings; name: string }[] = [
  { id: 'unheated-building', name: 'In an unheated building' },
  { id: 'outdoors', name: 'Outdoors' },
  { id: 'heated-room', name: 'In a heated room' },
];
const HEATERS: readonly { id: HeatSourceKind; name: string }[] = [
  { id: 'lamp', name: 'Heat lamps' },
  { id: 'plate', name: 'Heated plates' },
  { id: 'gas', name: 'Gas heaters' },
];

const GAS_WARMS: readonly { id: NonNullable<HeatSource['warms']>; name: string }[] = [
  { id: 'spot', name: 'The floor below it (radiant brooder, hover)' },
  { id: 'room', name: 'The air of the room' },
];

interface Props {
  readonly values: Draft;
  readonly errorAt: (field: string) => ReactNode;
  readonly set: (name: string, value: unknown) => void;
  readonly tables: Tables;
  readonly units: UnitSystem;
  readonly circuits: readonly Circuit[];
}

/** Walls, lid, surroundings and heat of a brooder. */
export function BrooderFields({ values, errorAt, set, tables, units, circuits }: Props) {
  const heat = values['heat'] as HeatSource;
  const setHeat = (more: Partial<Record<keyof HeatSource, unknown>>) =>
    set('heat', { ...heat, ...more });
  return (
    <>
      <BuildUpFields
        legend="Walls"
        path="walls"
        errorAt={errorAt}
        value={values['walls'] as BuildUp}
        onChange={(v) => set('walls', v)}
        tables={tables}
        units={units}
      />
      <BuildUpFields
        legend="Lid"
        path="roof"
        errorAt={errorAt}
        value={values['roof'] as BuildUp | undefined}
        onChange={(v) => set('roof', v)}
        tables={tables}
        units={units}
        canBeMissing
      />
      <Switch
        size="md"
        label={BROODER.closesOff.label}
        description="A board across it while the chicks are small"
        checked={values['closesOff'] === true}
        onChange={(e) => set('closesOff', e.currentTarget.checked)}
      />
      <Fieldset legend="Where it stands">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <Select
            label={BROODER.standsIn.label}
            value={values['standsIn'] as Surroundings}
            error={errorAt('standsIn')}
            onChange={(v) => set('standsIn', v)}
            options={SURROUNDINGS}
          />
          {values['standsIn'] === 'heated-room' && (
            <QuantityInput
              field={BROODER.roomC}
              units={units}
              value={values['roomC'] as number | undefined}
              error={errorAt('roomC')}
              onChange={(v) => set('roomC', v)}
            />
          )}
        </SimpleGrid>
      </Fieldset>
      <Fieldset legend="Heat">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <Select
            label={HEAT.kind.label}
            value={heat.kind}
            error={errorAt('heat.kind')}
            onChange={(v) => setHeat({ kind: v })}
            options={HEATERS}
          />
          {heat.kind === 'gas' ? (
            <Select
              label={HEAT.warms.label}
              value={heat.warms ?? 'spot'}
              error={errorAt('heat.warms')}
              onChange={(v) => setHeat({ warms: v })}
              options={GAS_WARMS}
            />
          ) : (
            <Select
              label={BROODER.circuitId.label}
              value={values['circuitId'] as string | undefined}
              error={errorAt('circuitId')}
              onChange={(v) => set('circuitId', v)}
              options={circuits}
              none="Not known"
            />
          )}
          <QuantityInput
            field={HEAT.wattsEach}
            units={units}
            value={heat.wattsEach}
            error={errorAt('heat.wattsEach')}
            onChange={(v) => setHeat({ wattsEach: v })}
          />
          <QuantityInput
            field={HEAT.count}
            units={units}
            value={heat.count}
            error={errorAt('heat.count')}
            onChange={(v) => setHeat({ count: v })}
          />
        </SimpleGrid>
        {heat.kind === 'lamp' && (
          <QuantityInput
            mt="md"
            field={BROODER.lampClearanceCm}
            units={units}
            value={values['lampClearanceCm'] as number | undefined}
            error={errorAt('lampClearanceCm')}
            onChange={(v) => set('lampClearanceCm', v)}
          />
        )}
        <Switch
          mt="md"
          size="md"
          label={HEAT.thermostat.label}
          checked={heat.thermostat}
          onChange={(e) => setHeat({ thermostat: e.currentTarget.checked })}
        />
        <Cautions
          keys={[HEAT_CAUTIONS[heat.kind]]}
          of={Object.values(HEAT_CAUTIONS)}
          tables={tables}
        />
      </Fieldset>
    </>
  );
}

interface BuildUpProps {
  readonly legend: string;
  readonly path: 'walls' | 'roof';
  readonly errorAt: (field: string) => ReactNode;
  readonly value: BuildUp | undefined;
  readonly onChange: (value: BuildUp | undefined) => void;
  readonly tables: Tables;
  readonly units: UnitSystem;
  readonly canBeMissing?: boolean;
}

function BuildUpFields({
  legend,
  path,
  errorAt,
  value,
  onChange,
  tables,
  units,
  canBeMissing,
}: BuildUpProps) {
  const layers = value?.layers ?? [];
  // Emptied for the moment, the R-value is still what the household gives.
  const byR = value !== undefined && 'rM2KPerW' in value;
  // A number that was emptied stays missing until it is given again; saving asks for it.
  const setLayer = (k: number, more: Partial<Record<keyof Layer, unknown>>) =>
    onChange({
      layers: layers.map((layer, i) => (i === k ? ({ ...layer, ...more } as Layer) : layer)),
    });
  const start = { layers: [newLayer('plywood', units)] };
  if (canBeMissing && value === undefined) {
    return (
      <Fieldset legend={legend}>
        <Text size="sm">No lid: the top is an opening, through which most of the heat goes.</Text>
        <Button variant="light" mt="xs" onClick={() => onChange(start)}>
          It has a lid
        </Button>
      </Fieldset>
    );
  }
  return (
    <Fieldset legend={legend}>
      <Stack gap="xs">
        <Switch
          size="md"
          label="I know the R-value"
          checked={byR}
          onChange={(e) => onChange(e.currentTarget.checked ? { rM2KPerW: 0.5 } : start)}
        />
        {byR ? (
          <QuantityInput
            label={`R-value of the ${legend.toLowerCase()}, films not counted`}
            field={buildUpFields.fields.rM2KPerW}
            units={units}
            value={value?.rM2KPerW}
            error={errorAt(`${path}.rM2KPerW`)}
            onChange={(v) => onChange({ rM2KPerW: v } as BuildUp)}
          />
        ) : (
          layers.map((layer, k) => (
            <Group key={k} align="start" gap="xs" wrap="nowrap">
              <Select
                label="Layer"
                value={layer.materialId}
                error={errorAt(`${path}.layers.${k}.materialId`)}
                onChange={(v) => setLayer(k, { materialId: v ?? 'plywood' })}
                options={tables.materials}
                style={{ flex: 3 }}
              />
              <QuantityInput
                field={layerFields.fields.thicknessMm}
                units={units}
                value={layer.thicknessMm}
                error={errorAt(`${path}.layers.${k}.thicknessMm`)}
                onChange={(v) => setLayer(k, { thicknessMm: v })}
                style={{ flex: 2 }}
              />
              <ActionIcon
                mt={28}
                color="stop"
                aria-label={`Remove layer ${k + 1} of the ${legend.toLowerCase()}`}
                onClick={() => onChange({ layers: layers.filter((_, i) => i !== k) })}
              >
                <IconTrash aria-hidden />
              </ActionIcon>
            </Group>
          ))
        )}
        <Group>
          {!byR && (
            <Button
              variant="default"
              onClick={() => onChange({ layers: [...layers, newLayer('xps', units)] })}
            >
              Add a layer
            </Button>
          )}
          {canBeMissing && (
            <Button variant="subtle" onClick={() => onChange(undefined)}>
              It has no lid
            </Button>
          )}
        </Group>
      </Stack>
    </Fieldset>
  );
}
