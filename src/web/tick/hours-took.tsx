import { useState } from 'react';
import { problemsOfNumber } from '../../../shared/farm/bounds.js';
import { progressFields } from '../../../shared/farm/job.js';
import type { UnitSystem } from '../../../shared/units/unit.js';
import { QuantityInput } from '../fields/quantity-input.js';

const HOURS = progressFields.fields.hours;

interface Props {
  name: string;
  /** As told, else as planned. */
  hours: number;
  units: UnitSystem;
  className?: string;
  onHours: (hours: number) => void;
}

/**
 * Hours that work took are asked after it is done, and kept when the box is left. What nobody typed
 * follows the plan, which may come from this phone first and from the service after that.
 */
export function HoursTook({ name, hours, units, className, onHours }: Props) {
  const [typed, setTyped] = useState<{ readonly hours: number | undefined }>();
  const took = typed ? typed.hours : hours;
  return (
    <QuantityInput
      {...(className === undefined ? { w: 130 } : { className })}
      label="Hours it took"
      aria-label={`Hours it took: ${name}`}
      field={HOURS}
      units={units}
      value={took}
      onChange={(now) => setTyped({ hours: now })}
      onBlur={() => {
        if (took === undefined || took === hours) return;
        if (problemsOfNumber('hours', took, HOURS.bounds).length === 0) onHours(took);
      }}
    />
  );
}
