import { canonicalText } from '../../base/canonical-text.ts';
import { daysBetween } from '../../base/day.ts';
import { byWritten, isMovement, type MovementRecord } from '../../records/record.ts';
import { errorModel } from './error-model.ts';
import type { Suggest } from './hypothesis.ts';
import type { Situation } from './situation.ts';

/** A record that is there twice or is not ours; an edit or a removal that should not have been. */
export function tooMany(situation: Situation, suggest: Suggest): void {
  const twins = twinsOf(situation.entries);
  for (const record of situation.entries) {
    const effect = situation.effects.change(record, undefined);
    if (effect.places.length === 0) continue;
    const twin = twins.get(record);
    if (twin !== undefined) {
      // The later of two is more often the double; either way the same balances come out.
      const share = byWritten(record, twin) > 0 ? 0.7 : 0.3;
      const chance = errorModel.doubled.rate * share;
      suggest(effect, 1, { sort: 'doubled', chance, record, twin });
    } else {
      suggest(effect, 1, { sort: 'not-ours', chance: errorModel['not-ours'].rate, record });
    }
  }
  changedWrongly(situation, suggest);
}

/** Days between two records that may be one and the same. */
const TWIN_DAYS = 3;

/** For each record, the nearest other one that says the same; a record has at most one. */
function twinsOf(entries: readonly MovementRecord[]): Map<MovementRecord, MovementRecord> {
  const groups = new Map<string, MovementRecord[]>();
  for (const record of entries) {
    const key = contentKey(record);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [record]);
    else group.push(record);
  }
  const twins = new Map<MovementRecord, MovementRecord>();
  for (const group of groups.values()) {
    if (group.length < 2) continue;
    for (const [at, record] of group.entries()) {
      const twin = [group[at - 1], group[at + 1]]
        .filter((each) => each !== undefined)
        .sort((a, b) => gap(record, a) - gap(record, b))[0];
      if (twin !== undefined && gap(record, twin) <= TWIN_DAYS) twins.set(record, twin);
    }
  }
  return twins;
}

function gap(a: MovementRecord, b: MovementRecord): number {
  return Math.abs(daysBetween(a.date, b.date));
}

/** What a record says, without who wrote it when, the slip it was copied from, and its note. */
export function contentKey(record: MovementRecord): string {
  if (record.kind === 'payment') return `payment ${record.seller} ${record.tender} ${record.cents}`;
  const { id, at, by, note, replaces, late, date, ...content } = record;
  const kept = Object.fromEntries(
    Object.entries(content).filter(([field]) => !ABOUT_PAPER.has(field)),
  );
  return canonicalText(kept);
}

const ABOUT_PAPER: ReadonlySet<string> = new Set(['slip', 'receipt', 'counters', 'depot', 'lots']);

function changedWrongly(situation: Situation, suggest: Suggest): void {
  const { standing } = situation.ledger;
  const edited = errorModel['edited-wrongly'].rate;
  for (const record of situation.entries) {
    const before = record.replaces === undefined ? undefined : standing.get(record.replaces);
    if (before === undefined || !isMovement(before)) continue;
    const becomes = { ...before, id: record.id, replaces: record.replaces } as MovementRecord;
    const effect = situation.effects.change(record, becomes);
    suggest(effect, 1, { sort: 'edited-wrongly', chance: edited, record, becomes });
  }
  const removed = errorModel['removed-wrongly'].rate;
  for (const removal of standing.records()) {
    if (removal.kind !== 'void') continue;
    const record = standing.get(removal.voids);
    if (record === undefined || !isMovement(record) || record.replaces !== undefined) continue;
    if (standing.supersededBy(record.id) !== removal) continue;
    const effect = situation.effects.whole(record);
    const hypothesis = { chance: removed, record, removal: removal.id };
    suggest(effect, 1, { sort: 'removed-wrongly', ...hypothesis });
  }
}
