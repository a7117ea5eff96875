import type { Ledger } from '../ledger/ledger.ts';

/**
 * Two adults count, and not of one household: common practice in cash handling (California State
 * PTA Toolkit, Handling PTA Funds). A group that is short of people may still go on; it is warned.
 */
export type CountersNotice =
  | 'two'
  | 'nobody'
  | 'one'
  | 'same-person'
  | 'same-family'
  | 'same-last-name';

/** What to say about the names of the people who counted. */
export function countersNotice(ledger: Ledger, first: string, second: string): CountersNotice {
  const [one, other] = [plain(first), plain(second)];
  if (one === '' && other === '') return 'nobody';
  if (one === '' || other === '') return 'one';
  if (one === other) return 'same-person';
  const families = familiesNamed(ledger, other);
  // Not Set.intersection: phones of a few years ago do not have it.
  const share = familiesNamed(ledger, one).some((family) => families.includes(family));
  if (share) return 'same-family';
  const last = lastName(one);
  return last !== '' && last === lastName(other) ? 'same-last-name' : 'two';
}

/** Families known under a name: that of the adult, or of the account. */
function familiesNamed(ledger: Ledger, name: string): string[] {
  const families = [...ledger.setup.families.values()];
  const named = families.filter(
    (family) => plain(family.name) === name || plain(family.family) === name,
  );
  return named.map((family) => family.family);
}

function plain(name: string): string {
  return name.normalize('NFKC').trim().replace(/\s+/gu, ' ').toLowerCase();
}

/** The last of two or more words; an initial alone says nothing about a household. */
function lastName(name: string): string {
  const words = name.split(' ');
  const last = (words.length > 1 ? words.at(-1) : '') ?? '';
  return last.replace('.', '').length > 1 ? last : '';
}
