import Schema from 'typebox/schema';
import { describe, expect, it } from 'vitest';
import { movementKinds, setupKinds } from '../src/records/record.ts';
import { recordSchemas } from '../src/records/schema.ts';
import { makeSeason } from './season-maker.ts';

describe('a made season', () => {
  it('is the same for the same seed, and another for another', () => {
    expect(makeSeason(7)).toEqual(makeSeason(7));
    expect(makeSeason(7)).not.toEqual(makeSeason(8));
  });

  it.each([1, 2, 3, 4, 5])(
    'has every kind of record, each true to its schema (seed %i)',
    (seed) => {
      const season = makeSeason(seed);
      const kinds = new Set<string>(season.map((record) => record.kind));
      expect([...kinds].sort()).toEqual([...setupKinds, ...movementKinds, 'void'].sort());
      for (const record of season) {
        const [fits, errors] = Schema.Errors(recordSchemas[record.kind], record);
        expect(fits, `seed ${seed} ${JSON.stringify(record)} ${JSON.stringify(errors)}`).toBe(true);
      }
    },
  );

  it('has what people do to records', () => {
    const seasons = Array.from({ length: 20 }, (_, seed) => makeSeason(seed)).flat();
    const byId = new Map(seasons.map((record) => [record.id, record]));
    const edits = seasons.filter((record) => record.replaces !== undefined);
    const editsOfEdits = edits.filter((edit) => byId.get(edit.replaces ?? '')?.replaces);
    const otherKind = edits.filter((edit) => byId.get(edit.replaces ?? '')?.kind !== edit.kind);
    const claims = edits.map((edit) => edit.replaces);
    const conflicts = claims.length - new Set(claims).size;
    const removals = seasons.filter((record) => record.kind === 'void');
    const ofRemovals = removals.filter((removal) => byId.get(removal.voids)?.kind === 'void');
    for (const found of [editsOfEdits, otherKind, ofRemovals]) {
      expect(found.length).toBeGreaterThan(10);
    }
    expect(conflicts).toBeGreaterThan(10);
  });

  it('has clocks that are wrong: what was written later may say it was written earlier', () => {
    const season = makeSeason(3);
    const backwards = season.filter((record, index) => record.at < (season[index - 1]?.at ?? ''));
    expect(backwards.length).toBeGreaterThan(10);
  });
});
