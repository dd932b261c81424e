import { useOpener } from './explain-panel.js';

/** Writes a date for who reads this page: in the farm's order, with the year when it is not this one. */
export type SayDate = (date: string) => string;

export const useSayDate = (): SayDate => useOpener().sayDate;
