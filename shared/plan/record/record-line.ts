import type { Unit } from '../../units/unit.js';

/** One thing that was planned, beside what came of it. */
export interface RecordLine {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit;
  readonly planned?: number;
  readonly actual?: number;
  /** What would have to be told to know it, or what the number rests on. */
  readonly note?: string;
  /** Days that were counted, where it is of some days only. */
  readonly days?: number;
}

/** A line: what is missing is said only where the number is. */
export function line(
  id: string,
  label: string,
  unit: Unit,
  {
    planned,
    actual,
    missing,
    note,
  }: {
    readonly planned?: number | undefined;
    readonly actual?: number | undefined;
    readonly missing?: string | undefined;
    readonly note?: string | undefined;
  },
): RecordLine {
  const said = actual === undefined ? missing : note;
  return {
    id,
    label,
    unit,
    ...(planned === undefined ? {} : { planned }),
    ...(actual === undefined ? {} : { actual }),
    ...(said === undefined ? {} : { note: said }),
  };
}
