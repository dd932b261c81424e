// Loaded before a program that a test starts: its clock is as far ahead of the real one as the file
// CLOCK_SHIFT_FILE says, in milliseconds. The file is read again and again.
import { readFileSync } from 'node:fs';
import { setInterval } from 'node:timers';

const EVERY_MS = 5;
const file = process.env['CLOCK_SHIFT_FILE'];
const read = () => Number(readFileSync(file, 'utf8'));
const Real = Date;
let shiftMs = read();

globalThis.Date = class extends Real {
  constructor(...given) {
    if (given.length === 0) super(Real.now() + shiftMs);
    else super(...given);
  }

  static now() {
    return Real.now() + shiftMs;
  }
};

setInterval(() => (shiftMs = read()), EVERY_MS).unref();
