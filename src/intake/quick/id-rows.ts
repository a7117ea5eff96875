const ROWS_FIRST = 256;

/** Numbers of a row: the place of a record, and the id that it names. */
export const ROW = 5;

/**
 * Which records name another one by its id: rows of whole numbers, each the place of the record and
 * the four numbers of the id, so that they can go from one thread to another as they are.
 */
export class IdRows {
  #rows = new Int32Array(ROWS_FIRST * ROW);
  #length = 0;

  get rows(): Int32Array<ArrayBuffer> {
    return this.#rows.subarray(0, this.#length);
  }

  add(place: number, id: Int32Array): void {
    if (this.#length === this.#rows.length) {
      const more = new Int32Array(this.#length * 2);
      more.set(this.#rows);
      this.#rows = more;
    }
    this.#rows[this.#length] = place;
    this.#rows.set(id, this.#length + 1);
    this.#length += ROW;
  }
}
