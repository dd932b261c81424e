import {
  type Paddock,
  PRODUCTIVITIES,
  STANDS,
  type Productivity,
  type Stand,
} from '../../shared/farm/paddock.js';
import type { Tables } from '../../shared/tables/tables.js';

/** What a paddock is like, as far as no outline shows it. */
export type Ground = Pick<
  Paddock,
  'forageId' | 'stand' | 'productivity' | 'soilId' | 'hasWater' | 'hasShade'
>;

/** The ground of an import that says nothing else. */
export const USUAL_GROUND: Ground = {
  forageId: 'mixed',
  stand: 'good',
  productivity: 'medium',
  soilId: 'loam',
  hasWater: true,
  hasShade: false,
};

/** Names that a property may go by in a file, and what its value may be. */
interface Reading<K extends keyof Ground> {
  readonly names: readonly string[];
  readonly read: (value: string, tables: Tables) => Ground[K] | undefined;
}

const READINGS: { readonly [K in keyof Ground]: Reading<K> } = {
  forageId: {
    names: ['forage', 'forageid'],
    read: (value, { forages }) => named(value, forages),
  },
  stand: { names: ['stand'], read: (value) => STANDS.find((each: Stand) => each === value) },
  productivity: {
    names: ['productivity', 'growth'],
    read: (value) => PRODUCTIVITIES.find((each: Productivity) => each === value),
  },
  soilId: { names: ['soil', 'soilid'], read: (value, { soils }) => named(value, soils) },
  hasWater: { names: ['water', 'haswater'], read: yesNo },
  hasShade: { names: ['shade', 'hasshade'], read: yesNo },
};

export interface OwnGround {
  readonly own: Partial<Ground>;
  /** Properties that are meant for this but hold nothing it may be, as written in the file. */
  readonly notUsed: readonly string[];
}

/** What a feature of a file says of its own ground. */
export function groundIn(properties: unknown, tables: Tables): OwnGround {
  const own: Record<string, unknown> = {};
  const notUsed: string[] = [];
  const given = typeof properties === 'object' && properties !== null ? properties : {};
  for (const [name, value] of Object.entries(given)) {
    const field = fieldNamed(name);
    if (!field || value === null || value === '') continue;
    const text = ['string', 'number', 'boolean'].includes(typeof value)
      ? String(value).trim().toLowerCase()
      : undefined;
    const read = text === undefined ? undefined : READINGS[field].read(text, tables);
    if (read !== undefined) own[field] = read;
    else notUsed.push(`${name}: ${(JSON.stringify(value) ?? '').slice(0, 60)}`);
  }
  return { own, notUsed };
}

const fieldNamed = (name: string): keyof Ground | undefined =>
  (Object.keys(READINGS) as (keyof Ground)[]).find((field) =>
    READINGS[field].names.includes(name.toLowerCase()),
  );

const named = (
  value: string,
  rows: readonly { readonly id: string; readonly name: string }[],
): string | undefined => rows.find((r) => r.id === value || r.name.toLowerCase() === value)?.id;

function yesNo(value: string): boolean | undefined {
  if (['true', 'yes', '1'].includes(value)) return true;
  if (['false', 'no', '0'].includes(value)) return false;
  return undefined;
}
