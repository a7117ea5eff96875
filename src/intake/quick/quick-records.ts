import { assert } from '../../base/assert.ts';
import { instantNumber } from '../../base/instant-number.ts';
import { readUuidText } from '../../base/uuid-bytes.ts';
import { UuidTable } from '../../base/uuid-table.ts';
import { allKinds, type BookRecord, claimedBy, isSetupKind } from '../../records/record.ts';
import { IdRows } from './id-rows.ts';
import type { KindForm } from './kind-forms.ts';
import type { PartFacts } from './part-facts.ts';
import { decidesPrices, PriceRows } from './price-rows.ts';
import type { RecordLook } from './record-look.ts';
import { SetUpLines } from './set-up-lines.ts';

const encoder = new TextEncoder();
const RECORDS_FIRST = 4096;
/** Bytes of lines of set-up for each record of the book: about an eighth of all bytes. */
const SET_UP_BYTES = 30;

/**
 * The records of a book, or of a part of one, that was read quickly, by their places in the file.
 * Most stand on a tape and are filled into one object of their kind when asked for; few are kept
 * whole.
 */
export class QuickRecords {
  /** The ids by place. */
  readonly #ids: UuidTable;
  readonly #look: RecordLook;
  readonly #claims = new IdRows();
  readonly #claimsWritten: number[] = [];
  readonly #pointers = new IdRows();
  readonly #prices = new PriceRows();
  /** Set-up, as its lines say it; undefined where nobody asks for its names. */
  readonly #setUp: SetUpLines | undefined;
  readonly #id = new Int32Array(4);
  readonly #wholes: BookRecord[] = [];
  #size = 0;
  /** By place: a place of the tape, or -1 less the place in `#wholes`. */
  #keptAt: Int32Array<ArrayBuffer>;
  /** By place: the number of the kind. */
  #kinds: Uint8Array<ArrayBuffer>;

  /**
   * @param keepsSetUp true where the lines of set-up are asked for later
   * @param expected how many records there may be, so that little is made anew as they come
   */
  constructor(look: RecordLook, keepsSetUp: boolean, expected: number) {
    const room = Math.max(expected, RECORDS_FIRST);
    this.#look = look;
    this.#ids = new UuidTable(expected);
    if (keepsSetUp) this.#setUp = new SetUpLines(room * SET_UP_BYTES);
    this.#keptAt = new Int32Array(room);
    this.#kinds = new Uint8Array(room);
  }

  get size(): number {
    return this.#size;
  }

  /** The record at a place: to be used and not kept, for the next may be the same object. */
  at(place: number): BookRecord {
    const keptAt = this.#keptAt[place] ?? 0;
    const record = keptAt < 0 ? this.#wholes[-1 - keptAt] : this.#look.recordAt(keptAt);
    assert(record !== undefined, 'a record that was added');
    return record;
  }

  /** What the other parts of the book have to know; the arrays are this part's own. */
  facts(): PartFacts {
    return {
      size: this.#size,
      ids: this.#ids.data,
      kinds: this.#kinds.subarray(0, this.#size),
      claims: this.#claims.rows,
      claimsWritten: Float64Array.from(this.#claimsWritten),
      pointers: this.#pointers.rows,
      prices: this.#prices.facts(),
      setUp: this.#setUp?.kept(),
    };
  }

  /** Adds the record that the look let pass; false where its id is there already. */
  addPassed(form: KindForm, tapePlace: number): boolean {
    const { marks } = this.#look;
    if (!this.#add(marks.id, form.number, tapePlace)) return false;
    const place = this.#size - 1;
    if (marks.claims) this.#addClaim(place, marks.claimed, marks.written());
    if (marks.points) this.#pointers.add(place, marks.pointedAt);
    if (form.decidesPrices) this.#prices.add(place, this.at(place), marks.written());
    return true;
  }

  /** Adds a record that was read the slow way; false where an id is there, or in upper case. */
  addWhole(record: BookRecord): boolean {
    if (!readUuidText(record.id, this.#id)) return false;
    this.#wholes.push(record);
    if (!this.#add(this.#id, allKinds.indexOf(record.kind), -this.#wholes.length)) return false;
    const place = this.#size - 1;
    const written = instantNumber(encoder.encode(record.at), 0);
    if (decidesPrices(record.kind)) this.#prices.add(place, record, written);
    const claimed = claimedBy(record);
    if (claimed !== undefined) {
      if (!readUuidText(claimed, this.#id)) return false;
      this.#addClaim(place, this.#id, written);
    }
    const pointedAt = pointedAtBy(record);
    if (pointedAt === undefined) return true;
    if (!readUuidText(pointedAt, this.#id)) return false;
    this.#pointers.add(place, this.#id);
    return true;
  }

  /** Keeps the line of the record that was added last, if it is set-up and asked for. */
  tell(bytes: Uint8Array, start: number, end: number): void {
    if (this.#setUp === undefined) return;
    const place = this.#size - 1;
    const kind = allKinds[this.#kinds[place] ?? 0];
    if (kind !== undefined && isSetupKind(kind)) this.#setUp.add(place, bytes, start, end);
  }

  #add(id: Int32Array, kind: number, keptAt: number): boolean {
    if (!this.#ids.add(id[0] ?? 0, id[1] ?? 0, id[2] ?? 0, id[3] ?? 0)) return false;
    if (this.#size === this.#keptAt.length) this.#grow();
    this.#keptAt[this.#size] = keptAt;
    this.#kinds[this.#size] = kind;
    this.#size += 1;
    return true;
  }

  #addClaim(place: number, claimed: Int32Array, written: number): void {
    this.#claims.add(place, claimed);
    this.#claimsWritten.push(written);
  }

  #grow(): void {
    const keptAt = new Int32Array(this.#size * 2);
    keptAt.set(this.#keptAt);
    this.#keptAt = keptAt;
    const kinds = new Uint8Array(this.#size * 2);
    kinds.set(this.#kinds);
    this.#kinds = kinds;
  }
}

/** The payment that bounced, the debit that was sent back. */
function pointedAtBy(record: BookRecord): string | undefined {
  if (record.kind === 'bounced') return record.payment;
  return record.kind === 'debit-returned' ? record.debit : undefined;
}
