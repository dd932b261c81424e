import type { IncomingMessage } from 'node:http';
import { isWholeJpeg, LARGEST_PHOTO_BYTES } from '../../shared/farm/photo.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { bodyUpTo } from '../common/body-up-to.js';

/**
 * Reads a photo out of a request, never more of it than a photo may have.
 *
 * @throws FieldError when it is too large, cut off, or no JPEG
 */
export async function receivePhoto(body: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of bodyUpTo(body, LARGEST_PHOTO_BYTES, tooLarge)) chunks.push(chunk);
  const photo = Buffer.concat(chunks);
  if (!isWholeJpeg(photo)) throw new FieldError([noPhoto(photo.length)]);
  return photo;
}

const tooLarge = (bytes: number): FieldError =>
  new FieldError([
    {
      field: 'photo',
      code: 'out-of-bounds',
      given: Math.ceil(bytes / 1e5) / 10,
      max: LARGEST_PHOTO_BYTES / 1e6,
      unit: 'MB',
      fix: 'Make the picture smaller before it is sent; the page of this program does that by itself.',
    },
  ]);

const noPhoto = (bytes: number): FieldProblem =>
  bytes === 0
    ? {
        field: 'photo',
        code: 'missing',
        given: undefined,
        fix: 'Send the picture as the body, with the content type image/jpeg.',
      }
    : {
        field: 'photo',
        code: 'unreadable',
        given: `${bytes} bytes that are no whole JPEG`,
        fix: 'Send a photo as a JPEG, all of it.',
      };
