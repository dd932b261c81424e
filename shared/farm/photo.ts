/** Longer edge that a phone makes a photo of before it is kept and sent, pixels. */
export const PHOTO_EDGE_PX = 1600;
/** A photo as it is sent is no larger, bytes. A phone's comes to a third of it at that edge. */
export const LARGEST_PHOTO_BYTES = 2_000_000;
/** Photos of one note. */
export const MOST_PHOTOS = 6;

/** The bytes that every JPEG begins with and ends with. */
const [STARTS, ENDS] = [
  [0xff, 0xd8, 0xff],
  [0xff, 0xd9],
] as const;

/** Whether these are the bytes of a whole JPEG: one that was cut off has lost its end. */
export function isWholeJpeg(bytes: Uint8Array): boolean {
  const end = bytes.subarray(-ENDS.length);
  return STARTS.every((byte, k) => bytes[k] === byte) && ENDS.every((byte, k) => end[k] === byte);
}
