import { assert } from '../../base/assert.ts';
import { readUuidText } from '../../base/uuid-bytes.ts';
import { UuidTable } from '../../base/uuid-table.ts';
import {
  type BookRecord,
  type Claimant,
  claimedBy,
  isMovementKind,
  type Kind,
} from '../../records/record.ts';
import type { RecordLook } from './record-look.ts';

const RECORDS_FIRST = 4096;

interface Told {
  readonly kind: Kind;
  readonly place: number;
  readonly said: string | BookRecord;
}

/**
 * The records of a book that was read quickly, by their places in the file. Most stand on a tape
 * and are filled into one object of their kind when asked for; few are kept whole.
 */
export class QuickRecords {
  /** What replaces or voids another record: no more of it than that. */
  readonly claims: Claimant[] = [];
  /** Set-up and removals, as their lines say them. */
  readonly #told: Told[] = [];
  readonly #look: RecordLook;
  readonly #ids: UuidTable;
  readonly #id = new Int32Array(4);
  readonly #wholes: BookRecord[] = [];
  /** By place: a place of the tape, or -1 less the place in `#wholes`. */
  #keptAt: Int32Array<ArrayBuffer>;

  /** @param expected how many records there may be, so that little is made anew as they come */
  constructor(look: RecordLook, expected: number) {
    this.#look = look;
    this.#ids = new UuidTable(expected);
    this.#keptAt = new Int32Array(Math.max(expected, RECORDS_FIRST));
  }

  get size(): number {
    return this.#ids.size;
  }

  /** The record at a place: to be used and not kept, for the next may be the same object. */
  at(place: number): BookRecord {
    const keptAt = this.#keptAt[place] ?? 0;
    const record = keptAt < 0 ? this.#wholes[-1 - keptAt] : this.#look.recordAt(keptAt);
    assert(record !== undefined, 'a record that was added');
    return record;
  }

  /** Undefined for a place that is none, like that of an unknown id. */
  kindAt(place: number): Kind | undefined {
    if (place < 0) return undefined;
    const keptAt = this.#keptAt[place] ?? 0;
    return keptAt < 0 ? this.#wholes[-1 - keptAt]?.kind : this.#look.formAt(keptAt)?.kind;
  }

  /** The place of an id; -1 where it is not there. */
  placeOf(id: string): number {
    const isPlain = readUuidText(id, this.#id);
    const id4 = this.#id;
    return isPlain ? this.#ids.placeOf(id4[0] ?? 0, id4[1] ?? 0, id4[2] ?? 0, id4[3] ?? 0) : -1;
  }

  /** The places of set-up and removals. */
  setUpPlaces(): number[] {
    return this.#told.map(({ place }) => place);
  }

  /** Set-up or removals of these kinds, whole. */
  told(kinds: ReadonlySet<Kind>): BookRecord[] {
    const told = this.#told.filter(({ kind }) => kinds.has(kind));
    return told.map(({ said }) => (typeof said === 'string' ? JSON.parse(said) : said));
  }

  /** Adds the record that the look let pass; false where its id is there already. */
  addPassed(kind: Kind, tapePlace: number): boolean {
    const { marks } = this.#look;
    if (!this.#addId(marks.id)) return false;
    this.#keep(tapePlace);
    if (marks.claims) this.claims.push(marks.claimant(kind));
    return true;
  }

  /** Keeps what the line of the record that was added last says, for set-up and removals. */
  tell(kind: Kind, said: string | BookRecord): void {
    this.#told.push({ kind, place: this.size - 1, said });
  }

  /** Adds a record that was read the slow way; false where its id is there, or in upper case. */
  addWhole(record: BookRecord): boolean {
    if (!readUuidText(record.id, this.#id)) return false;
    if (!this.#addId(this.#id)) return false;
    this.#wholes.push(record);
    this.#keep(-this.#wholes.length);
    if (claimedBy(record) !== undefined) this.claims.push(record);
    if (!isMovementKind(record.kind)) this.tell(record.kind, record);
    return true;
  }

  #addId(id: Int32Array): boolean {
    return this.#ids.add(id[0] ?? 0, id[1] ?? 0, id[2] ?? 0, id[3] ?? 0);
  }

  #keep(keptAt: number): void {
    const place = this.#ids.size - 1;
    if (place === this.#keptAt.length) {
      const more = new Int32Array(place * 2);
      more.set(this.#keptAt);
      this.#keptAt = more;
    }
    this.#keptAt[place] = keptAt;
  }
}
