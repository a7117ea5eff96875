import type { QuickRecords } from '../intake/quick/quick-records.ts';
import { mayLackSense, senseFindings } from '../intake/sense.ts';
import { AccountSums } from '../ledger/account-sums.ts';
import { Fold } from '../ledger/fold.ts';
import type { PriceSteps } from '../ledger/prices.ts';
import { type BookRecord, isMovement, type RecordOf } from '../records/record.ts';
import { eachNamed, type OnNamed } from './references.ts';
import { addSetUp, noThingNames, type ThingNames } from './set-up-by.ts';

/** What a part has to know of the whole book before it can be added up; plain data. */
export interface PartPlan {
  readonly prices: PriceSteps;
  /** By place in this part: 1 where the record does not count. */
  readonly overruled: Uint8Array;
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

/** What the records of a part come to, but for those that point at others. */
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
 * Adds up the records of one part of a book, by the ledger's own rules.
 * @returns undefined where a record is not surely one that nothing refuses
 */
export function sumPart(records: QuickRecords, plan: PartPlan): PartSums | undefined {
  const walk = new PartWalk(plan);
  const { overruled } = plan;
  for (let place = 0; place < records.size; place += 1) {
    if (!walk.take(records.at(place), overruled[place] === 0)) return undefined;
  }
  const pointedAt = Array.from(plan.pointedAt, (place) => pointedAtOf(records.at(place)));
  return { ...walk.sums(), pointedAt };
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

  /** False where the record makes no sense in itself. */
  take(record: BookRecord, counts: boolean): boolean {
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
