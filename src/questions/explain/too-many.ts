import { canonicalText } from '../../base/canonical-text.ts';
import { daysBetween } from '../../base/day.ts';
import { byWritten, isMovement, type MovementRecord } from '../../records/record.ts';
import { asMovement } from './as-record.ts';
import { errorModel } from './error-model.ts';
import type { Taking } from './hypothesis.ts';
import type { Situation } from './situation.ts';
import { isPassedOver } from './taking.ts';

/** A record that is there twice or is not ours; an edit or a removal that should not have been. */
export function tooMany(situation: Situation, taking: Taking): void {
  const twins = new Twins(situation.entries);
  for (const record of situation.entries) {
    if (situation.isApart(record) || isPassedOver(situation, taking, record)) continue;
    if (taking.isWhole && situation.isLineSettled(record)) continue;
    const effect = situation.effects.change(record, undefined);
    if (!taking.fits(effect, 1)) continue;
    const twin = twins.of(record);
    if (twin !== undefined) {
      // The later of two is more often the double; either way the same balances come out.
      const share = byWritten(record, twin) > 0 ? 0.7 : 0.3;
      const chance = errorModel.doubled.rate * share;
      taking.take(effect, 1, { sort: 'doubled', chance, record, twin });
    } else {
      taking.take(effect, 1, { sort: 'not-ours', chance: errorModel['not-ours'].rate, record });
    }
  }
  changedWrongly(situation, taking);
}

/** Days between two records that may be one and the same. */
const TWIN_DAYS = 3;

/** Finds for a record the nearest other one that says the same. */
class Twins {
  readonly #entries: readonly MovementRecord[];
  #alike: Map<string, MovementRecord[]> | undefined;

  constructor(entries: readonly MovementRecord[]) {
    this.#entries = entries;
  }

  of(record: MovementRecord): MovementRecord | undefined {
    this.#alike ??= this.#grouped();
    const alike = this.#alike.get(roughKey(record)) ?? [];
    if (alike.length < 2) return undefined;
    const key = contentKey(record);
    const near = alike.filter((each) => each !== record && gap(record, each) <= TWIN_DAYS);
    const twins = near.filter((each) => contentKey(each) === key);
    return twins.sort((a, b) => gap(record, a) - gap(record, b))[0];
  }

  #grouped(): Map<string, MovementRecord[]> {
    const groups = new Map<string, MovementRecord[]>();
    for (const record of this.#entries) {
      const key = roughKey(record);
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [record]);
      else group.push(record);
    }
    return groups;
  }
}

/** Equal for records that say the same; cheap, so that few have to be compared in full. */
function roughKey(record: MovementRecord): string {
  const who = 'seller' in record ? record.seller : 'stall' in record ? record.stall : '';
  const amount = 'cents' in record ? record.cents : 0;
  const lines = 'lines' in record && record.kind !== 'shareout' ? record.lines : undefined;
  let units = 0;
  for (const product in lines) units += lines[product] ?? 0;
  return `${record.kind} ${who} ${amount} ${units}`;
}

function gap(a: MovementRecord, b: MovementRecord): number {
  return Math.abs(daysBetween(a.date, b.date));
}

/** What a record says, without who wrote it when, the slip it was copied from, and its note. */
function contentKey(record: MovementRecord): string {
  if (record.kind === 'payment') return `payment ${record.seller} ${record.tender} ${record.cents}`;
  const { id, at, by, note, replaces, late, date, ...content } = record;
  const kept = Object.fromEntries(
    Object.entries(content).filter(([field]) => !ABOUT_PAPER.has(field)),
  );
  return canonicalText(kept);
}

const ABOUT_PAPER: ReadonlySet<string> = new Set(['slip', 'receipt', 'counters', 'depot', 'lots']);

function changedWrongly(situation: Situation, taking: Taking): void {
  const { standing } = situation.ledger;
  const edited = errorModel['edited-wrongly'].rate;
  for (const record of situation.entries) {
    const before = record.replaces === undefined ? undefined : standing.get(record.replaces);
    if (before === undefined || !isMovement(before)) continue;
    const becomes = asMovement({ ...before, id: record.id, replaces: record.replaces });
    const effect = situation.effects.change(record, becomes);
    taking.take(effect, 1, { sort: 'edited-wrongly', chance: edited, record, becomes });
  }
  const removed = errorModel['removed-wrongly'].rate;
  for (const removal of standing.records()) {
    if (removal.kind !== 'void') continue;
    const record = standing.get(removal.voids);
    if (record === undefined || !isMovement(record) || record.replaces !== undefined) continue;
    if (standing.supersededBy(record.id) !== removal) continue;
    const effect = situation.effects.whole(record);
    const hypothesis = { chance: removed, record, removal: removal.id };
    taking.take(effect, 1, { sort: 'removed-wrongly', ...hypothesis });
  }
}
