import { ApiProperty } from '@nestjs/swagger';

import {
  FACILITY_KINDS,
  type Facility,
  type FacilityKind,
  type HeatSourceKind,
  type Surroundings,
} from '../../shared/farm/facility.js';
import { problemsOfFreezer } from '../../shared/plan/check-facilities.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { findingsOf } from '../common/check-dto.js';
import {
  IdText,
  Nested,
  NestedList,
  OneOf,
  Optional,
  ShortText,
  Within,
  YesNo,
} from '../common/field-rules.js';
import { problemsOf } from '../common/problem.js';

export class LayerDto {
  @ApiProperty() @IdText() materialId!: string;
  @Within('thicknessMm') thicknessMm!: number;
}

export class BuildUpDto {
  @Optional()
  @NestedList(() => LayerDto, 12)
  layers?: LayerDto[];
  @Optional() @Within('rM2KPerW') rM2KPerW?: number;
}

export class HeatSourceDto {
  @OneOf(['lamp', 'plate', 'gas']) kind!: HeatSourceKind;
  @Within('wattsEach') wattsEach!: number;
  @Within('heaterCount') count!: number;
  @ApiProperty() @YesNo() thermostat!: boolean;
}

class FacilityBase {
  @Optional() @IdText() id?: string;
  @Optional() @Within('version') version?: number;
  @ShortText() name!: string;
}

export class BrooderDto extends FacilityBase {
  @OneOf(['brooder']) kind!: 'brooder';
  @Within('lengthM') lengthM!: number;
  @Within('lengthM') widthM!: number;
  @Within('heightM') heightM!: number;
  @Nested(() => BuildUpDto) walls!: BuildUpDto;
  @Optional() @Nested(() => BuildUpDto) roof?: BuildUpDto;
  @OneOf(['outdoors', 'unheated-building', 'heated-room']) standsIn!: Surroundings;
  @Optional() @Within('roomC') roomC?: number;
  @Nested(() => HeatSourceDto) heat!: HeatSourceDto;
  @Optional() @IdText() circuitId?: string;
  @Optional() @Within('edgeCm') feederCm?: number;
  @Optional() @Within('edgeCm') drinkerCm?: number;
}

export class CoopDto extends FacilityBase {
  @OneOf(['coop']) kind!: 'coop';
  @Within('floorM2') floorM2!: number;
  @Within('roostM') roostM!: number;
  @Within('nestBoxes') nestBoxes!: number;
  @Within('runM2') runM2!: number;
}

export class FieldPenDto extends FacilityBase {
  @OneOf(['field-pen']) kind!: 'field-pen';
  @Within('floorM2') floorM2!: number;
  @Within('penCount') count!: number;
}

export class FreezerDto extends FacilityBase {
  @OneOf(['freezer']) kind!: 'freezer';
  @Within('litres') litres!: number;
  @Within('usedL') usedL!: number;
}

export class FeedStoreDto extends FacilityBase {
  @OneOf(['feed-store']) kind!: 'feed-store';
  @Within('capacityKg') capacityKg!: number;
}

export class CircuitDto extends FacilityBase {
  @OneOf(['circuit']) kind!: 'circuit';
  @Within('volts') volts!: number;
  @Within('amps') amps!: number;
  @Within('otherLoadW') otherLoadW!: number;
}

const DTO_OF_KIND: Record<FacilityKind, new () => object> = {
  brooder: BrooderDto,
  coop: CoopDto,
  'field-pen': FieldPenDto,
  freezer: FreezerDto,
  'feed-store': FeedStoreDto,
  circuit: CircuitDto,
};

/** Every facility class, for the OpenAPI document. */
export const FACILITY_DTOS = Object.values(DTO_OF_KIND);

/** A facility without its id, checked by the class of its kind. */
export function checkFacility(
  plain: unknown,
  path = '',
): Omit<Facility, 'id'> & { id?: string; version?: number } {
  const kind = (plain as { kind?: unknown } | null)?.kind;
  const dto =
    typeof kind === 'string' && Object.hasOwn(DTO_OF_KIND, kind)
      ? DTO_OF_KIND[kind as FacilityKind]
      : undefined;
  const field = path === '' ? 'kind' : `${path}.kind`;
  if (!dto) {
    throw new FieldError([
      {
        field,
        code: 'not-allowed',
        given: kind,
        allowed: FACILITY_KINDS,
        fix: 'Choose one of these kinds.',
      },
    ]);
  }
  const { instance, errors } = findingsOf(dto, plain as object, path);
  const problems = [
    ...problemsOf(errors, path),
    ...buildUpProblems(instance, path),
    ...(errors.length === 0 ? contradictions(instance as unknown as Facility, path) : []),
  ];
  if (0 < problems.length) throw new FieldError(problems);
  return instance as unknown as Facility;
}

/** What is wrong between two fields that are each in order. */
const contradictions = (facility: Facility, path: string): FieldProblem[] =>
  facility.kind === 'freezer' ? problemsOfFreezer(facility, path === '' ? '' : `${path}.`) : [];

/** Material ids are checked where the tables are known; here only that a heated room has its air. */
function buildUpProblems(instance: object, path: string) {
  const brooder = instance as Partial<BrooderDto>;
  return brooder.standsIn === 'heated-room' && typeof brooder.roomC !== 'number'
    ? [
        {
          field: path === '' ? 'roomC' : `${path}.roomC`,
          code: 'missing' as const,
          given: undefined,
          fix: 'Give the air temperature of the heated room.',
        },
      ]
    : [];
}
