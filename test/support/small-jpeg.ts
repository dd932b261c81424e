/** Bytes that begin and end as a JPEG does, with so many between. */
export const smallJpeg = (bytes: number, fill = 7): Buffer =>
  Buffer.concat([
    Buffer.from([0xff, 0xd8, 0xff, 0xe0]),
    Buffer.alloc(bytes, fill),
    Buffer.from([0xff, 0xd9]),
  ]);
