import {
  ActionIcon,
  Alert,
  Button,
  Fieldset,
  Group,
  SimpleGrid,
  Stack,
  Switch,
  Text,
} from '@mantine/core';
import type { FormErrors } from '@mantine/form';
import { IconTrash } from '@tabler/icons-react';
import type {
  BuildUp,
  Circuit,
  HeatSource,
  HeatSourceKind,
  Layer,
  Surroundings,
} from '../../../../shared/farm/facility.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { Select } from '../../fields/select.js';
import type { Draft } from './kinds.js';

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

interface Props {
  readonly values: Draft;
  readonly errors: FormErrors;
  readonly set: (name: string, value: unknown) => void;
  readonly tables: Tables;
  readonly units: UnitSystem;
  readonly circuits: readonly Circuit[];
}

/** Walls, lid, surroundings and heat of a brooder. */
export function BrooderFields({ values, errors, set, tables, units, circuits }: Props) {
  const heat = values['heat'] as HeatSource;
  const setHeat = (more: Partial<Record<keyof HeatSource, unknown>>) =>
    set('heat', { ...heat, ...more });
  return (
    <>
      <BuildUpFields
        legend="Walls"
        value={values['walls'] as BuildUp}
        onChange={(v) => set('walls', v)}
        tables={tables}
        units={units}
      />
      <BuildUpFields
        legend="Lid"
        value={values['roof'] as BuildUp | undefined}
        onChange={(v) => set('roof', v)}
        tables={tables}
        units={units}
        canBeMissing
      />
      <Fieldset legend="Where it stands">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <Select
            label="Place"
            value={values['standsIn'] as Surroundings}
            onChange={(v) => set('standsIn', v)}
            options={SURROUNDINGS}
          />
          {values['standsIn'] === 'heated-room' && (
            <QuantityInput
              label="Air of the room"
              bound="roomC"
              units={units}
              value={values['roomC'] as number | undefined}
              error={errors['roomC']}
              onChange={(v) => set('roomC', v)}
            />
          )}
        </SimpleGrid>
      </Fieldset>
      <Fieldset legend="Heat">
        <SimpleGrid cols={{ base: 1, xs: 2 }}>
          <Select
            label="Source"
            value={heat.kind}
            onChange={(v) => setHeat({ kind: v })}
            options={HEATERS}
          />
          {heat.kind !== 'gas' && (
            <Select
              label="Circuit"
              value={values['circuitId'] as string | undefined}
              onChange={(v) => set('circuitId', v)}
              options={circuits}
              none="Not known"
            />
          )}
          <QuantityInput
            label="Each"
            bound="wattsEach"
            units={units}
            value={heat.wattsEach}
            error={errors['heat.wattsEach']}
            onChange={(v) => setHeat({ wattsEach: v })}
          />
          <QuantityInput
            label="How many"
            bound="heaterCount"
            units={units}
            value={heat.count}
            error={errors['heat.count']}
            onChange={(v) => setHeat({ count: v })}
          />
        </SimpleGrid>
        <Switch
          mt="md"
          size="md"
          label="A thermostat switches it"
          checked={heat.thermostat}
          onChange={(e) => setHeat({ thermostat: e.currentTarget.checked })}
        />
        <Alert
          mt="md"
          color="orange"
          title={
            heat.kind === 'gas'
              ? tables.cautions['carbon-monoxide']!.title
              : tables.cautions['heat-lamp']!.title
          }
        >
          {heat.kind === 'gas'
            ? tables.cautions['carbon-monoxide']!.text
            : tables.cautions['heat-lamp']!.text}
        </Alert>
      </Fieldset>
    </>
  );
}

interface BuildUpProps {
  readonly legend: string;
  readonly value: BuildUp | undefined;
  readonly onChange: (value: BuildUp | undefined) => void;
  readonly tables: Tables;
  readonly units: UnitSystem;
  readonly canBeMissing?: boolean;
}

function BuildUpFields({ legend, value, onChange, tables, units, canBeMissing }: BuildUpProps) {
  const layers = value?.layers ?? [];
  const byR = value?.rM2KPerW !== undefined;
  const setLayer = (k: number, more: Partial<Layer>) =>
    onChange({ layers: layers.map((layer, i) => (i === k ? { ...layer, ...more } : layer)) });
  const start = { layers: [{ materialId: 'plywood', thicknessMm: 12 }] };
  if (canBeMissing && value === undefined) {
    return (
      <Fieldset legend={legend}>
        <Text size="sm">
          No lid: only still air above the chicks, which loses most of the heat.
        </Text>
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
            bound="rM2KPerW"
            units={units}
            value={value?.rM2KPerW}
            onChange={(v) => onChange({ rM2KPerW: v ?? 0 })}
          />
        ) : (
          layers.map((layer, k) => (
            <Group key={k} align="end" wrap="nowrap" gap="xs">
              <Select
                label="Layer"
                value={layer.materialId}
                onChange={(v) => setLayer(k, { materialId: v ?? 'plywood' })}
                options={tables.materials}
                style={{ flex: 2 }}
              />
              <QuantityInput
                label="Thick"
                bound="thicknessMm"
                units={units}
                value={layer.thicknessMm}
                onChange={(v) => setLayer(k, { thicknessMm: v ?? 0 })}
                style={{ flex: 1 }}
              />
              <ActionIcon
                color="red"
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
              onClick={() =>
                onChange({ layers: [...layers, { materialId: 'xps', thicknessMm: 38 }] })
              }
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
