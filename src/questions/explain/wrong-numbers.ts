import type { MovementRecord } from '../../records/record.ts';
import { type Truth, truthsBehind } from '../../solvers/gap/keyed-number.ts';
import { denominations } from '../denominations.ts';
import { errorModel } from './error-model.ts';
import type { Taking } from './hypothesis.ts';
import { type NumberField, withNumber } from './number-fields.ts';
import type { Situation } from './situation.ts';
import { isPassedOver } from './taking.ts';

/** One number of a record is wrong: its digits, its unit, its count, or it was left out. */
export function wrongNumbers(situation: Situation, taking: Taking): void {
  const known = new Map<number, readonly Truth[]>();
  const truthsOf = (value: number): readonly Truth[] => {
    const truths = known.get(value) ?? (value > 0 ? truthsBehind(value) : []);
    known.set(value, truths);
    return truths;
  };
  for (const record of situation.entries) {
    if (situation.isApart(record) || isPassedOver(situation, taking, record)) continue;
    for (const field of situation.fieldsOf(record)) {
      if (situation.isSettledProduct(record, field)) continue;
      const unit = situation.effects.unit(record, field);
      const times = taking.timesOf(unit);
      if (times === 0) continue;
      const to = times === undefined ? undefined : field.value + times;
      oneNumber(situation, record, field, truthsOf(field.value), (sort, share, truth) => {
        if (to !== undefined && truth !== to) return;
        const chance = errorModel[sort].rate * share;
        taking.take(unit, truth - field.value, { sort, chance, record, field, to: truth });
      });
    }
    linesLeftOut(situation, record, taking);
    linesSwapped(situation, record, taking);
  }
}

function oneNumber(
  situation: Situation,
  record: MovementRecord,
  field: NumberField,
  truths: readonly Truth[],
  on: On,
): void {
  for (const { value, slip, share } of truths) on(slip, share, value);
  if (field.product !== undefined) goodsNumber(situation, record, field, field.product, on);
  else moneyNumber(situation, record, field, on);
  if (field.value === 0) leftOutNumber(situation, record, field, on);
}

type On = (sort: keyof typeof errorModel, share: number, to: number) => void;

/** Physical counts that may be off by one or two; a shared-out number was worked out. */
const COUNTED: ReadonlySet<string> = new Set(['delivery', 'handover', 'return', 'stall-close']);
const MISCOUNTS: readonly (readonly [by: number, share: number])[] = [
  [1, 0.42],
  [-1, 0.42],
  [2, 0.08],
  [-2, 0.08],
];

function goodsNumber(
  situation: Situation,
  record: MovementRecord,
  field: NumberField,
  product: string,
  on: On,
): void {
  const { value } = field;
  const units = situation.caseUnits(product, record.date);
  if (units > 1 && value > 0) {
    on('cases-for-singles', 0.5, value * units);
    if (value % units === 0) on('cases-for-singles', 0.5, value / units);
  }
  if (COUNTED.has(record.kind)) {
    for (const [by, share] of MISCOUNTS) if (value + by > 0) on('miscounted', share, value + by);
  }
  if (value > 0 && Object.keys(linesOf(record)).length > 1) on('line-too-many', 1, 0);
}

function linesOf(record: MovementRecord): Readonly<Record<string, unknown>> {
  if ('lines' in record && record.lines !== undefined) return record.lines;
  return record.kind === 'stall-close' ? record.out : {};
}

const FREE_AMOUNTS: ReadonlySet<string> = new Set(['payment', 'refund', 'deposit', 'debit']);

function moneyNumber(
  situation: Situation,
  record: MovementRecord,
  field: NumberField,
  on: On,
): void {
  if (record.kind === 'debit' && record.announced !== undefined) {
    if (record.announced !== record.cents) on('not-as-announced', 1, record.announced);
  }
  if (record.kind === 'stall-close') stallMoney(situation, record, field, on);
  if (!FREE_AMOUNTS.has(record.kind)) return;
  for (const by of stepsTo(situation, record, field)) {
    if (field.value + by > 0) on('other-amount', 1, field.value + by);
  }
}

/** The float was forgotten, or the cash does not follow from its tally. */
function stallMoney(
  situation: Situation,
  record: MovementRecord & { kind: 'stall-close' },
  field: NumberField,
  on: On,
): void {
  if (field.part !== 'cash') return;
  cashMiscounted(situation, field, on);
  if (record.float > 0) {
    on('float-left-in', 0.5, record.cash + record.float);
    if (record.cash > record.float) on('float-left-in', 0.5, record.cash - record.float);
  }
  let tallied = 0;
  for (const value in record.tally) tallied += Number(value) * (record.tally[value] ?? 0);
  if (record.tally !== undefined && tallied !== record.cash) on('number-left-out', 100, tallied);
}

/** One or two of a note or coin were counted too many or too few. */
function cashMiscounted(situation: Situation, { value }: NumberField, on: On): void {
  const all = denominations(situation.ledger.setup.season?.currency ?? '');
  for (const worth of all) {
    for (const [by, share] of MISCOUNTS) {
      const to = value + by * worth;
      if (to > 0) on('cash-miscounted', share / all.length, to);
    }
  }
}

const MAY_BE_FORGOTTEN: ReadonlySet<string> = new Set([
  'cash',
  'cards',
  'cheques',
  'float',
  'paidout',
  'back',
  'damaged',
  'fee',
]);

function leftOutNumber(
  situation: Situation,
  record: MovementRecord,
  field: NumberField,
  on: On,
): void {
  if (!MAY_BE_FORGOTTEN.has(field.part)) return;
  for (const by of stepsTo(situation, record, field)) if (by > 0) on('number-left-out', 1, by);
}

/** By how much a number must change so that at least one differing balance comes out even. */
function stepsTo(situation: Situation, record: MovementRecord, field: NumberField): Set<number> {
  const steps = new Set<number>();
  const { places, amounts } = situation.effects.unit(record, field);
  for (let at = 0; at < places.length; at += 1) {
    const step = situation.offAt(places[at] ?? 0) / (amounts[at] ?? 1);
    if (step !== 0 && Number.isSafeInteger(step)) steps.add(step);
  }
  return steps;
}

/** Kinds whose `lines` may lack a product. */
const WITH_LINES: ReadonlySet<string> = new Set([
  'delivery',
  'swap-in',
  'swap-out',
  'handover',
  'return',
  'pass',
  'gift',
]);

function linesLeftOut(situation: Situation, record: MovementRecord, taking: Taking): void {
  const parts = record.kind === 'stall-close' ? ['back', 'out', 'damaged'] : ['lines'];
  if (record.kind !== 'stall-close' && !WITH_LINES.has(record.kind)) return;
  for (const product of productsLeftOut(situation, record)) {
    for (const part of parts) {
      if (Object.hasOwn(Reflect.get(record, part) ?? {}, product)) continue;
      const field = { part, product, value: 0 };
      const unit = situation.effects.unit(record, field);
      if (taking.timesOf(unit) === 0) continue;
      const chance = errorModel['line-left-out'].rate;
      for (const to of stepsTo(situation, record, field)) {
        if (to <= 0) continue;
        taking.take(unit, to, { sort: 'line-left-out', chance, record, field, to });
      }
    }
  }
}

/** Products that differ; where a stall's money does, also those that it took along. */
function productsLeftOut(situation: Situation, record: MovementRecord): Iterable<string> {
  if (record.kind !== 'stall-close' || !situation.isOff('money', 'overshort')) {
    return situation.hotProducts;
  }
  return new Set([...situation.hotProducts, ...Object.keys(record.out)]);
}

/** The numbers of two lines stand in each other's place. */
function linesSwapped(situation: Situation, record: MovementRecord, taking: Taking): void {
  if (!WITH_LINES.has(record.kind)) return;
  if (situation.hotProducts.size < 2) return;
  const hot = situation
    .fieldsOf(record)
    .filter(({ product }) => situation.hotProducts.has(product ?? ''));
  for (const one of hot) {
    for (const two of hot) {
      if ((one.product ?? '') >= (two.product ?? '') || one.value === two.value) continue;
      const becomes = withNumber(withNumber(record, one, two.value), two, one.value);
      const pairs = (hot.length * (hot.length - 1)) / 2;
      const chance = errorModel['lines-swapped'].rate / pairs;
      const effect = situation.effects.change(record, becomes);
      taking.take(effect, 1, { sort: 'lines-swapped', chance, record, becomes });
    }
  }
}
