import { Table, Text } from '@mantine/core';
import type { SquareCheck } from '../../../../shared/ration/square-check.js';
import { formatValue } from '../../../../shared/units/format.js';
import { listed } from '../../../../shared/units/listed.js';
import type { SavedFarm } from '../../api/queries.js';
import { Folded } from '../../shell/folded.js';

/** Grain against meal by the square, for whoever wants to check the mix with a pencil. */
export function MixSquare({ farm, square }: { farm: SavedFarm; square: SquareCheck }) {
  const { grain, meal, grainParts, mealParts, wantedPercent, setKg, grainKg, mixGrainKg } = square;
  const percent = (value: number): string => formatValue(value, 'percent', farm);
  const parts = (value: number): string => value.toFixed(1);
  const kg = (value: number): string => formatValue(value, 'kg', farm);
  return (
    <Folded id="square" title="Check it by hand" isForScreen>
      <Text mb="xs">
        Set aside minerals and premix: {kg(setKg)}. The rest must hold {percent(wantedPercent)} of
        protein. Take each from that, crosswise:
      </Text>
      <Table>
        <Table.Tbody>
          <Table.Tr>
            <Table.Td>{listed(grain.names)}</Table.Td>
            <Table.Td>{percent(grain.proteinPercent)}</Table.Td>
            <Table.Td>
              {percent(meal.proteinPercent)} − {percent(wantedPercent)} = {parts(grainParts)} parts
            </Table.Td>
          </Table.Tr>
          <Table.Tr>
            <Table.Td>{listed(meal.names)}</Table.Td>
            <Table.Td>{percent(meal.proteinPercent)}</Table.Td>
            <Table.Td>
              {percent(wantedPercent)} − {percent(grain.proteinPercent)} = {parts(mealParts)} parts
            </Table.Td>
          </Table.Tr>
        </Table.Tbody>
      </Table>
      <Text mt="xs">
        By the square {kg(grainKg)} of grain; the sheet says {kg(mixGrainKg)}.
      </Text>
    </Folded>
  );
}
