import type { IncomingMessage, ServerResponse } from 'node:http';
import { FieldError } from '../../shared/problems/field-problem.js';
import { LARGE, LIGHT } from './body-weight.js';

const [QUOTE, BACKSLASH, COLON, OPEN, CLOSE] = [0x22, 0x5c, 0x3a, 0x7b, 0x7d];

/** How many fields the text of a JSON body names in all, and the object with the most of them. */
export interface FieldsInText {
  readonly all: number;
  readonly inOneObject: number;
}

/** Counts the fields that a JSON body names, without reading what it says. */
export function fieldsInText(text: Uint8Array): FieldsInText {
  let [all, inOneObject, here, isInside] = [0, 0, 0, false];
  const around: number[] = [];
  for (let at = 0; at < text.length; at++) {
    const byte = text[at];
    if (byte === QUOTE) isInside = !isInside;
    else if (byte === BACKSLASH) at++;
    else if (isInside) continue;
    else if (byte === OPEN) {
      around.push(here);
      here = 0;
    } else if (byte === CLOSE) here = around.pop() ?? 0;
    else if (byte === COLON) {
      all++;
      inOneObject = Math.max(inOneObject, ++here);
    }
  }
  return { all, inOneObject };
}

/**
 * The option of the body parser by which it looks at a text before it reads it. A body of more
 * fields than anything here may have is refused then: reading a hundred thousand names takes so
 * long that others would have to wait.
 */
export const beforeReading = {
  verify: (_request: IncomingMessage, _response: ServerResponse, text: Buffer): void =>
    refuseTooManyFields(text),
};

/** @throws FieldError that says how many fields there are */
function refuseTooManyFields(text: Uint8Array): void {
  const { all, inOneObject } = fieldsInText(text);
  if (LARGE.fields < all) throw tooMany('a body', all, LARGE.fields, 'in the whole body');
  if (LIGHT.fields < inOneObject)
    throw tooMany('an object', inOneObject, LIGHT.fields, 'in one object');
}

const tooMany = (what: string, fields: number, max: number, where: string): FieldError =>
  new FieldError([
    {
      field: 'body',
      code: 'out-of-bounds',
      given: `${what} with ${fields} fields`,
      max,
      unit: `fields ${where}`,
      fix: 'Send less at once, and only fields that the API document names.',
    },
  ]);
