/** Whole numbers of 32 bits, all 0, in memory that threads can share without a copy. */
export function sharedNumbers(count: number): Int32Array<SharedArrayBuffer> {
  return new Int32Array(new SharedArrayBuffer(count * Int32Array.BYTES_PER_ELEMENT));
}

/** Numbers of 8 bits, all 0, in memory that threads can share without a copy. */
export function sharedMarks(count: number): Uint8Array<SharedArrayBuffer> {
  return new Uint8Array(new SharedArrayBuffer(count));
}
