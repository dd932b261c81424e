import type { UnitSystem } from './unit.js';

const METRIC = '°C|cm|mm|m²|m|kg|g|ha|km|L';
const CUSTOMARY = '°F|in|ft²|ft|lb|oz|acres?|miles?|gal';
const RANGE = String.raw`[−-]?\d[\d.,]*(?:(?: to |–)[−-]?\d[\d.,]*)?`;
/** "29 °C (85 °F)", "37.2 to 37.8 °C (99 to 100 °F)", "74 °C (165 °F; from memory)". */
const BOTH = new RegExp(
  String.raw`(${RANGE} (?:${METRIC})) \((${RANGE} (?:${CUSTOMARY}))(?:; ([^()]*))?\)`,
  'g',
);

/** A text that gives figures in both systems of units, with those of the farm alone. */
export const inOwnUnits = (text: string, units: UnitSystem): string =>
  text.replace(
    BOTH,
    (_all, metric: string, customary: string, more: string | undefined) =>
      `${units === 'us' ? customary : metric}${more === undefined ? '' : ` (${more})`}`,
  );
