import { assert } from '../base/assert.ts';
import type { UuidData } from '../base/uuid-table.ts';
import type { QuickRecords } from '../intake/quick/quick-records.ts';
import { type TapeData, TapeRecords } from '../intake/quick/tape-records.ts';
import { mayLackSense, senseFindings } from '../intake/sense.ts';
import { AccountSums } from '../ledger/account-sums.ts';
import { Fold } from '../ledger/fold.ts';
import type { PriceSteps } from '../ledger/prices.ts';
import { type BookRecord, isMovement, type RecordOf } from '../records/record.ts';
import { eachNamed, type OnNamed } from './references.ts';
import { addSetUp, noThingNames, type ThingNames } from './set-up-by.ts';

/** Records that are added up in one go: few, so that threads that help each other end together. */
const BLOCK = 2048;

/** One part of a book, as every thread knows it that may help to add it up; plain data. */
export interface PartWork {
  readonly ids: UuidData;
  readonly onTape: TapeData;
  /** By place: 1 where the record does not count. */
  readonly overruled: Uint8Array;
  /** How many blocks of its records are taken, whichever thread took them. */
  readonly blocksTaken: Int32Array<SharedArrayBuffer>;
}

/** What a part has to know of the whole book before it can be added up; plain data. */
export interface PartPlan {
  readonly prices: PriceSteps;
  /** All parts of the book, in order. */
  readonly works: readonly PartWork[];
  /** Which of them is this one. */
  readonly own: number;
  /** Places in this part of the payments and debits that others point at. */
  readonly pointedAt: Int32Array;
  /** The balance day, where balances as of a day are asked for. */
  readonly day: string | undefined;
}

/** A record whose postings hang on another record, which may be in another part. */
export type Pointing = RecordOf<'bounced'> | RecordOf<'debit-returned'>;
/** As much as these postings ask of the record that is pointed at. */
export type PointedAt =
  | Pick<RecordOf<'payment'>, 'kind' | 'seller' | 'cents'>
  | Pick<RecordOf<'debit'>, 'kind' | 'cents'>;

/** What the records come to that one thread added up, but for those that point at others. */
export interface PartSums<Sums = AccountSums> {
  readonly all: Sums;
  /** At the end of the plan's day. */
  readonly onDay: Sums | undefined;
  /** Everything that a record that counts names, and everything that any record ever set up. */
  readonly named: ThingNames;
  readonly setUp: ThingNames;
  /** Those that count. */
  readonly pointing: readonly Pointing[];
  /** In step with the plan's places; undefined where another kind stands there. */
  readonly pointedAt: readonly (PointedAt | undefined)[];
}

/**
 * Adds up the records of one part of a book, by the ledger's own rules, and then helps with those
 * of other parts that nobody has taken yet: all threads end at about the same time.
 *
 * @returns undefined where a record is not surely one that nothing refuses
 */
export function sumPart(records: QuickRecords, plan: PartPlan): PartSums | undefined {
  const { own, works } = plan;
  const work = works[own];
  assert(work !== undefined, 'a plan for this part');
  if (!works.slice(0, own).every(({ ids }) => records.hasNoneOf(ids))) return undefined;
  const walk = new PartWalk(plan);
  const isFine =
    walk.takeBlocks(records, work) &&
    records.wholePlaces.every((place) => walk.takeAt(place, records.at(place), work)) &&
    works.every(
      (other) =>
        other === work || !isLeft(other) || walk.takeBlocks(new TapeRecords(other.onTape), other),
    );
  if (!isFine) return undefined;
  const pointedAt = Array.from(plan.pointedAt, (place) => pointedAtOf(records.at(place)));
  return { ...walk.sums(), pointedAt };
}

function isLeft({ onTape, blocksTaken }: PartWork): boolean {
  return Atomics.load(blocksTaken, 0) * BLOCK < onTape.size;
}

class PartWalk {
  readonly #all = new AccountSums();
  readonly #onDay: AccountSums | undefined;
  readonly #fold: Fold;
  readonly #foldOnDay: Fold | undefined;
  readonly #named = noThingNames();
  readonly #setUp = noThingNames();
  readonly #pointing: Pointing[] = [];

  constructor({ prices, day }: PartPlan) {
    this.#onDay = day === undefined ? undefined : new AccountSums();
    this.#fold = new Fold(this.#all, prices, NOTHING_POINTED_AT);
    if (this.#onDay !== undefined) {
      this.#foldOnDay = new Fold(this.#onDay, prices, NOTHING_POINTED_AT, day);
    }
  }

  /** Takes blocks of records as long as there are any. */
  takeBlocks(records: Pick<TapeRecords, 'size' | 'onTape'>, work: PartWork): boolean {
    for (;;) {
      const start = Atomics.add(work.blocksTaken, 0, 1) * BLOCK;
      if (start >= records.size) return true;
      const end = Math.min(start + BLOCK, records.size);
      for (let place = start; place < end; place += 1) {
        const record = records.onTape(place);
        if (record !== undefined && !this.takeAt(place, record, work)) return false;
      }
    }
  }

  takeAt(place: number, record: BookRecord, { overruled }: PartWork): boolean {
    return this.#take(record, overruled[place] === 0);
  }

  /** False where the record makes no sense in itself. */
  #take(record: BookRecord, counts: boolean): boolean {
    if (mayLackSense(record) && !makesSense(record)) return false;
    if (!isMovement(record)) addSetUp(this.#setUp, record);
    if (!counts) return true;
    eachNamed(record, this.#onNamed);
    if (record.kind === 'bounced' || record.kind === 'debit-returned') {
      // The record is one object that is filled again.
      this.#pointing.push({ ...record });
    } else if (isMovement(record)) {
      this.#fold.post(record);
      this.#foldOnDay?.post(record);
    }
    return true;
  }

  readonly #onNamed: OnNamed = (thing, id) => {
    this.#named[thing].add(id);
  };

  sums(): Omit<PartSums, 'pointedAt'> {
    return {
      all: this.#all,
      onDay: this.#onDay,
      named: this.#named,
      setUp: this.#setUp,
      pointing: this.#pointing,
    };
  }
}

function makesSense(record: BookRecord): boolean {
  const findings = senseFindings(record, { line: 0 });
  return !findings.some(({ severity }) => severity === 'error');
}

function pointedAtOf(record: BookRecord): PointedAt | undefined {
  if (record.kind === 'payment') {
    return { kind: record.kind, seller: record.seller, cents: record.cents };
  }
  return record.kind === 'debit' ? { kind: record.kind, cents: record.cents } : undefined;
}

/** What is posted here points at nothing. */
const NOTHING_POINTED_AT = { paymentOf: () => undefined, debitOf: () => undefined };
